package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sensorrounds.recurrence.GammaPoissonFit.Cell;
import sensorrounds.recurrence.GroupedRatesFit.Fit;
import sensorrounds.recurrence.GroupedRatesFit.Group;

class GroupedRatesTest {
    private static List<Cell> counts(long... units) {
        List<Cell> cells = new ArrayList<>();
        for (int y = 0; y < units.length; y++) {
            if (units[y] > 0) {
                cells.add(new Cell(y, 1, units[y]));
            }
        }
        return cells;
    }

    /** Claims in a year of 9,461 policies: Thyrion (1960), ASTIN Bull. 1:142. */
    private static final List<Cell> CLAIMS = counts(7840, 1317, 239, 42, 14, 4, 4, 1);

    /** Spells of illness of 602 children in Thailand: Böhning (2000), Computer-Assisted Analysis of Mixtures (from memory). */
    private static final List<Cell> SPELLS =
            counts(120, 64, 69, 72, 54, 35, 36, 25, 25, 19, 18, 18, 13, 4, 3, 6, 6, 5, 1, 3, 1, 2, 0, 1, 2);

    /**
     * Simar (1976) gave a law on points for these counts; its maximum, as corrected since (Böhning 1995, J. Statist. Plann.
     * Inference 47:5): 0, 0.3356 and 2.545 with shares .418, .573 and .009, log-likelihood -5340.704 (from memory). The point
     * at 0 is approached from above, and those near 0.34 are not merged.
     */
    @Test
    void pointsReachTheMaximumOverAllLawsOfRates() {
        Fit fit = last(GroupedRatesFit.points(CLAIMS, 8));
        assertThat(fit.logLikelihood()).isCloseTo(-5340.704, within(1e-3));
        assertThat(fit.gradient()).isLessThan(1e-6);
        assertThat(share(fit, 0, 0.1)).isCloseTo(0.418, within(0.02));
        assertThat(share(fit, 0.1, 1)).isCloseTo(0.573, within(0.02));
        assertThat(share(fit, 1, 9)).isCloseTo(0.0087, within(0.0005));
        assertThat(last(fit.groups()).mean()).isCloseTo(2.545, within(0.03));
        assertThat(fit.mean()).isCloseTo(2028 / 9461.0, within(1e-6));
    }

    private static <T> T last(List<T> all) {
        return all.get(all.size() - 1);
    }

    private static double share(Fit fit, double from, double to) {
        return fit.groups().stream()
                .filter(g -> g.mean() >= from && g.mean() < to)
                .mapToDouble(Group::share)
                .sum();
    }

    /** Böhning (2000): .143, 2.817, 8.164 and 16.16 with shares .197, .480, .269 and .054, log-likelihood -1553.81 (from memory). */
    @Test
    void fourPointsForTheSpellsOfIllness() {
        Fit fit = last(GroupedRatesFit.points(SPELLS, 8));
        assertThat(fit.logLikelihood()).isCloseTo(-1553.81, within(0.005));
        assertThat(fit.groups()).hasSize(4);
        double[][] published = {{.143, .197}, {2.817, .480}, {8.164, .269}, {16.156, .054}};
        for (int g = 0; g < 4; g++) {
            assertThat(fit.groups().get(g).mean()).isCloseTo(published[g][0], within(5e-4));
            assertThat(fit.groups().get(g).share()).isCloseTo(published[g][1], within(5e-4));
        }
    }

    /** Efron and Hastie (2016), Computer Age Statistical Inference, section 6.1: shape .702, scale .306 for the claims. */
    @Test
    void oneGroupIsTheGammaLaw() {
        GammaPoissonFit.Fit gamma = GammaPoissonFit.fit(CLAIMS);
        assertThat(gamma.shape()).isCloseTo(0.702, within(5e-4));
        assertThat(gamma.mean() / gamma.shape()).isCloseTo(0.306, within(5e-4));
        // The second group finds nothing to gain, so the first is as it was.
        Fit one = new Fit(gamma.shape(), List.of(new Group(gamma.mean(), 1)), gamma.logLikelihood(), Double.NaN);
        Fit two = GroupedRatesFit.withOneMore(CLAIMS, one, 50);
        assertThat(two.logLikelihood()).isBetween(gamma.logLikelihood(), gamma.logLikelihood() + 8);
    }

    @Test
    void twoGroupsAreFoundAgain() {
        SplittableRandom dice = new SplittableRandom(42);
        SortedMap<Long, Long> drawn = new TreeMap<>();
        for (int i = 0; i < 20_000; i++) {
            double rate = dice.nextDouble() < 0.15 ? 3 : 0.3;
            int years = dice.nextInt(1, 5);
            long y = 0;
            for (double t = -Math.log(1 - dice.nextDouble()); t < rate * years; t -= Math.log(1 - dice.nextDouble())) {
                y++;
            }
            drawn.merge(10 * y + years, 1L, Long::sum);
        }
        List<Cell> cells = new ArrayList<>();
        drawn.forEach((k, n) -> cells.add(new Cell((int) (k / 10), k % 10, n)));
        GammaPoissonFit.Fit gamma = GammaPoissonFit.fit(cells);
        Fit two = GroupedRatesFit.withOneMore(
                cells,
                new Fit(gamma.shape(), List.of(new Group(gamma.mean(), 1)), gamma.logLikelihood(), Double.NaN),
                50);
        assertThat(two.groups().get(0).mean()).isCloseTo(0.3, within(0.02));
        assertThat(two.groups().get(1).mean()).isCloseTo(3, within(0.1));
        assertThat(two.groups().get(1).share()).isCloseTo(0.15, within(0.01));
        assertThat(two.shape()).as("as near to points as is reckoned with").isGreaterThan(30);
        assertThat(two.logLikelihood()).isGreaterThan(gamma.logLikelihood() + 100);
    }

    @Test
    void countsWithoutAnEventAreRefused() {
        assertThatThrownBy(() -> GroupedRatesFit.points(counts(7), 3)).hasMessageContaining("needs an event");
    }
}
