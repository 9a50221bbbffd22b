package sensorrounds.causes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.causes.Lives.Cause;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.KaplanMeierFit;
import sensorrounds.survival.Lifetime;

class AalenJohansenTest {
    private static final List<Cause> CAUSES = List.of(Cause.BATTERY, Cause.DAMAGE);

    private static Incidence<Cause> fit(List<EndedLife<Cause>> lives) {
        return AalenJohansen.withDefaults().fit(CauseSample.of(CAUSES, lives));
    }

    @Test
    void withOneCauseItIsKaplanMeierAndGreenwood() {
        List<EndedLife<Cause>> lives = Lives.competing(1, 500).stream()
                .map(l -> l.cause() == Cause.DAMAGE ? EndedLife.<Cause>censored(l.entry(), l.exit()) : l)
                .toList();
        Incidence<Cause> incidence = fit(lives);
        KaplanMeierFit survival =
                KaplanMeier.withDefaults().fit(CauseSample.of(CAUSES, lives).failing(c -> true));
        for (KaplanMeierFit.Step step : survival.steps()) {
            assertThat(incidence.of(Cause.BATTERY).at(step.age())).isCloseTo(1 - step.survival(), within(1e-13));
            assertThat(incidence.eventFree().at(step.age())).isCloseTo(step.survival(), within(1e-13));
            if (step.survival() > 0) {
                assertThat(incidence.errorOf(Cause.BATTERY).at(step.age()))
                        .isCloseTo(step.standardError(), within(1e-12));
                assertThat(incidence.eventFreeError().at(step.age())).isCloseTo(step.standardError(), within(1e-12));
            }
            assertThat(incidence.of(Cause.DAMAGE).at(step.age())).isZero();
            assertThat(incidence.hazardOf(Cause.BATTERY).at(step.age()))
                    .isCloseTo(step.cumulativeHazard(), within(1e-12));
            assertThat(incidence.hazardErrorOf(Cause.BATTERY).at(step.age()))
                    .isCloseTo(step.cumulativeHazardError(), within(1e-12));
        }
    }

    @Test
    void allSharesAddToOne() {
        for (Incidence.Step step : fit(Lives.competing(2, 3000)).steps()) {
            assertThat(step.eventFree() + step.incidence()[0] + step.incidence()[1])
                    .isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void aWeightIsARepetitionAndTheOrderOfInputDoesNotMatter() {
        List<EndedLife<Cause>> once = Lives.competing(3, 400);
        List<EndedLife<Cause>> thrice = new ArrayList<>();
        List<EndedLife<Cause>> weighted = new ArrayList<>();
        for (EndedLife<Cause> life : once) {
            thrice.addAll(Collections.nCopies(3, life));
            weighted.add(new EndedLife<>(life.entry(), life.exit(), life.cause(), 3));
        }
        Collections.shuffle(thrice, new Random(4));
        Incidence<Cause> a = fit(thrice);
        Incidence<Cause> b = fit(weighted);
        double age = 5 * Lives.YEAR;
        assertThat(b.of(Cause.BATTERY).at(age)).isCloseTo(a.of(Cause.BATTERY).at(age), within(1e-13));
        assertThat(b.errorOf(Cause.BATTERY).at(age))
                .isCloseTo(a.errorOf(Cause.BATTERY).at(age), within(1e-13));
    }

    /**
     * Truth by quadrature: the integral of h(t) exp(-(t/7)^2.5 - .05 t) over 0-5 years, with h the hazard of the cause.
     */
    @Test
    void delayedEntryIsNeededToFindTheTruth() {
        double battery = 0;
        double damage = 0;
        int steps = 100_000;
        for (int i = 0; i < steps; i++) {
            double t = 5 * (i + 0.5) / steps;
            double free = Math.exp(-Math.pow(t / 7, 2.5) - 0.05 * t);
            battery += 2.5 / 7 * Math.pow(t / 7, 1.5) * free * 5 / steps;
            damage += 0.05 * free * 5 / steps;
        }
        double age = 5 * Lives.YEAR;
        int covered = 0;
        double meanBattery = 0;
        double meanDamage = 0;
        int fleets = 200;
        for (int seed = 0; seed < fleets; seed++) {
            Incidence<Cause> right = fit(Lives.competing(seed, 2000));
            Estimate ofBattery = right.at(Cause.BATTERY, age);
            Estimate ofDamage = right.at(Cause.DAMAGE, age);
            covered += ofBattery.lower() <= battery && battery <= ofBattery.upper() ? 1 : 0;
            covered += ofDamage.lower() <= damage && damage <= ofDamage.upper() ? 1 : 0;
            meanBattery += ofBattery.value() / fleets;
            meanDamage += ofDamage.value() / fleets;
        }
        // 380 of 400 with a spread of 4.4; three spreads on either side. Errors of the means are some .002.
        assertThat(covered).isBetween(366, 394);
        assertThat(meanBattery).isCloseTo(battery, within(0.006));
        assertThat(meanDamage).isCloseTo(damage, within(0.006));
        List<EndedLife<Cause>> lives = Lives.competing(20261125, 40_000);
        Incidence<Cause> wrong = fit(lives.stream()
                .map(l -> new EndedLife<>(0, l.exit(), l.cause(), l.weight()))
                .toList());
        assertThat(wrong.of(Cause.BATTERY).at(age)).isLessThan(battery - 0.05);
        assertThat(wrong.of(Cause.DAMAGE).at(age)).isLessThan(damage - 0.05);
    }

    @Test
    void limitsCoverTheTruthAsOftenAsStated() {
        // Damage at a constant .05 against nothing else but a look away at 3 years: F(2) = 1 - exp(-.1).
        int covered = 0;
        int fleets = 1000;
        for (int seed = 0; seed < fleets; seed++) {
            Random random = new Random(seed);
            List<EndedLife<Cause>> lives = new ArrayList<>();
            for (int i = 0; i < 200; i++) {
                double damage = -Math.log(1 - random.nextDouble()) / 0.05;
                double battery = -Math.log(1 - random.nextDouble()) / 0.1;
                double end = Math.min(3 * random.nextDouble() + 1, Math.min(damage, battery));
                lives.add(
                        end == damage
                                ? EndedLife.by(Cause.DAMAGE, 0, end)
                                : end == battery ? EndedLife.by(Cause.BATTERY, 0, end) : EndedLife.censored(0, end));
            }
            Estimate estimate = fit(lives).at(Cause.DAMAGE, 2);
            double truth = 0.05 / 0.15 * (1 - Math.exp(-0.3));
            covered += estimate.lower() <= truth && truth <= estimate.upper() ? 1 : 0;
        }
        // 950 with a spread of 7; the limits are approximate on top.
        assertThat(covered).isBetween(925, 975);
    }

    @Test
    void inputsThatBreakIt() {
        assertThatThrownBy(() -> CauseSample.of(List.of(Cause.BATTERY), List.of(EndedLife.by(Cause.DAMAGE, 0, 5))))
                .hasMessageContaining("ended at 5.0 by DAMAGE")
                .hasMessageContaining("declare it");
        assertThatThrownBy(() -> CauseSample.of(List.of(Cause.BATTERY, Cause.BATTERY), List.of()))
                .hasMessageContaining("each once");
        assertThatThrownBy(() -> EndedLife.by(Cause.BATTERY, 5, 5)).hasMessageContaining("entry < exit");
        assertThatThrownBy(() -> EndedLife.<Cause>by(null, 0, 5)).hasMessageContaining("by a cause");
        Incidence<Cause> none = fit(List.of());
        assertThat(none.of(Cause.BATTERY).at(0)).isZero();
        assertThatThrownBy(() -> none.of(Cause.BATTERY).at(1)).hasMessageContaining("known from age");
        assertThatThrownBy(() -> none.of(Cause.PREVENTIVE)).hasMessageContaining("not among the causes");
        Incidence<Cause> one = fit(List.of(EndedLife.by(Cause.BATTERY, 0, 4)));
        assertThat(one.of(Cause.BATTERY).at(4)).isEqualTo(1);
        assertThat(one.at(Cause.BATTERY, 4).upper()).isNaN();
    }

    @Test
    void aLifeKnownToAnIntervalEndsInItsMiddle() {
        assertThat(EndedLife.of(Lifetime.interval(10, 20, 31), Cause.BATTERY).exit())
                .isEqualTo(25.5);
        assertThat(EndedLife.of(Lifetime.censored(10, 20), Cause.PREVENTIVE).exit())
                .isEqualTo(20);
    }
}
