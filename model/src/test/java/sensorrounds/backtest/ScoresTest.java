package sensorrounds.backtest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.backtest.Plant.NEVER;
import static sensorrounds.backtest.Plant.judged;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.cox.CoxFit;
import sensorrounds.cox.CoxFitter;
import sensorrounds.cox.CoxSample;
import sensorrounds.reference.ReferenceCase;

class ScoresTest {
    private static ScoreRow score(List<Judged> judged, Horizon horizon) {
        return Scores.row(Plant.CUT, List.of(KnownBy.of(judged, horizon)), horizon);
    }

    /**
     * Case brier-veteran of the references (Veterans' lung cancer, Cox model on three covariates; riskRegression 2022): its
     * exact times as intervals of a day, its predictions as forecasts of one morning. The score of the backtest is that of
     * the case, and so is the concordance (Uno).
     */
    @ParameterizedTest
    @EnumSource(
            value = Horizon.class,
            names = {"HALF_YEAR", "YEAR"})
    void theBrierScoreOfVeteransIsThatOfTheReference(Horizon horizon) {
        ReferenceCase data = ReferenceCase.load("accuracy/discrimination.json", "c-veteran");
        ReferenceCase reference = ReferenceCase.load("accuracy/discrimination.json", "brier-veteran");
        double[] time = data.data("time");
        double[] status = data.data("status");
        boolean[] failed = new boolean[time.length];
        double[][] x = new double[time.length][];
        for (int i = 0; i < time.length; i++) {
            failed[i] = status[i] == 1;
            x[i] = new double[] {data.data("karno")[i], data.data("age")[i], data.data("trt")[i]};
        }
        CoxFit fit = CoxFitter.withDefaults()
                .fit(CoxSample.of(List.of("karno", "age", "trt"), new double[time.length], time, failed, x));
        List<Judged> judged = new ArrayList<>();
        for (int i = 0; i < time.length; i++) {
            double chance = 1 - fit.hazard(x[i]).survival(horizon.days()).value();
            judged.add(
                    failed[i]
                            ? judged(i, chance, 0.5, (long) time[i] - 1, time[i])
                            : judged(i, chance, 0.5, (long) time[i], NEVER));
        }
        int at = Arrays.binarySearch(reference.expected("times"), horizon.days());
        ScoreRow score = score(judged, horizon);
        assertThat(score.brier()).isCloseTo(reference.expected("brier")[at], within(1e-7));
        double uno = reference.expected("uno_c")[Arrays.binarySearch(reference.expected("uno_tau"), horizon.days())];
        assertThat(score.concordance()).isCloseTo(uno, within(1e-7));
    }

    @Test
    void aSeerScoresPerfectlyAndWhoKnowsNothingByChance() {
        Random dice = new Random(1);
        List<Judged> seen = new ArrayList<>();
        List<Judged> blind = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            boolean fails = i % 8 == 0;
            long day = 10 + dice.nextInt(300);
            seen.add(judged(i, fails ? 1 : 0, 0.125, fails ? day : 400, fails ? day + 1 : NEVER));
            blind.add(judged(i, 0.125, 0.125, fails ? day : 400, fails ? day + 1 : NEVER));
        }
        ScoreRow perfect = score(seen, Horizon.YEAR);
        assertThat(perfect.brier()).isZero();
        // Two failures one of which came first had equal chances: half a hit; all other pairs are right.
        double failures = 50;
        double pairs = failures * 350 + failures * (failures - 1) / 2;
        double right = failures * 350 + failures * (failures - 1) / 4;
        assertThat(perfect.concordance()).isCloseTo(right / pairs, within(0.002));
        assertThat(perfect.ratio().value()).isEqualTo(1);
        assertThat(perfect.skill()).isEqualTo(1);
        ScoreRow useless = score(blind, Horizon.YEAR);
        assertThat(useless.brier()).isCloseTo(0.125 * 0.875, within(1e-12));
        assertThat(useless.concordance()).isEqualTo(0.5);
        assertThat(useless.skill()).isZero();
        assertThat(useless.ratio().value()).isCloseTo(1, within(1e-12));
    }

    /** By hand: an interval from day 300 to 400 lies with 65 of its 100 days before day 365. */
    /** By hand: the hazard -log(1 - p) of each times exp(1.96 x 0.2) or exp(-1.96 x 0.2). */
    @Test
    void theErrorOfTheFitWidensWhatWasExpected() {
        ScoreRow score = score(
                List.of(judged(1, 0.5, 0.5, 300, 310), judged(2, 0.2, 0.5, 500, NEVER), judged(3, 1, 0.5, 3, 9)),
                Horizon.YEAR);
        double up = Math.exp(1.959963984540054 * 0.2);
        assertThat(score.expected()).isCloseTo(1.7, within(1e-12));
        assertThat(score.expectedLimits().upper()).isCloseTo(3 - Math.pow(0.5, up) - Math.pow(0.8, up), within(1e-12));
        assertThat(score.expectedLimits().lower())
                .isCloseTo(3 - Math.pow(0.5, 1 / up) - Math.pow(0.8, 1 / up), within(1e-12));
        assertThat(score.withinFit()).isTrue();
    }

    @Test
    void anIntervalOverTheEndOfTheHorizonCountsInPart() {
        List<Judged> judged = List.of(judged(1, 0.4, 0.5, 300, 400), judged(2, 0.2, 0.5, 500, NEVER));
        ScoreRow score = score(judged, Horizon.YEAR);
        assertThat(score.failures()).isCloseTo(0.65, within(1e-12));
        assertThat(score.known()).isEqualTo(2);
        double brier = (0.65 * 0.36 + 0.35 * 0.16 + 0.04) / 2;
        assertThat(score.brier()).isCloseTo(brier, within(1e-12));
        assertThat(score.ratio().value()).isCloseTo(0.65 / 0.6, within(1e-12));
    }

    /**
     * By hand: two of four were never heard again, so each that was stands for two, those that had failed by the cut as well.
     */
    @Test
    void sensorsNeverHeardAgainAreStoodForByTheOthers() {
        List<Judged> judged = List.of(
                judged(1, 0.5, 0.5, -100, -2),
                judged(2, 0.5, 0.5, 400, NEVER),
                judged(3, 0.5, 0.5, -7, NEVER),
                judged(4, 0.5, 0.5, 0, NEVER));
        KnownBy known = KnownBy.of(judged, Horizon.YEAR);
        assertThat(known.entries()).extracting(KnownBy.Entry::weight).containsExactly(2.0, 2.0);
        assertThat(known.entries()).extracting(KnownBy.Entry::failed).containsExactly(true, false);
    }

    @Test
    void whereNobodyWasSeenPastTheHorizonThereIsNoFigure() {
        ScoreRow score = score(List.of(judged(1, 0.5, 0.5, 100, 200)), Horizon.YEAR);
        assertThat(score.known()).isZero();
        assertThat(score.brier()).isNaN();
        assertThat(score.ratio().value()).isNaN();
    }

    /**
     * 40,000 lives with the true chances as forecasts: losses that have nothing to do with failing leave the scores where the
     * known outcomes put them; counting only what is known by chance would not. Seed 3.
     */
    @Test
    void lossesDoNotMoveTheScores() {
        Random dice = new Random(3);
        List<Judged> whole = new ArrayList<>();
        List<Judged> lost = new ArrayList<>();
        for (int i = 0; i < 40_000; i++) {
            double chance = 0.05 + 0.4 * dice.nextDouble();
            double rate = -Math.log1p(-chance) / 365;
            double fails = -Math.log(dice.nextDouble()) / rate;
            long before = (long) Math.floor(fails);
            whole.add(judged(i, chance, 0.2, Math.min(before, 2000), fails < 2000 ? before + 1 : NEVER));
            double seen = -Math.log(dice.nextDouble()) * 500;
            boolean known = before + 1 <= seen && fails < 2000;
            lost.add(
                    judged(i, chance, 0.2, known ? before : (long) Math.min(before, seen), known ? before + 1 : NEVER));
        }
        ScoreRow truth = score(whole, Horizon.YEAR);
        ScoreRow kept = score(lost, Horizon.YEAR);
        assertThat(truth.ratio().value()).isCloseTo(1, within(0.02));
        assertThat(kept.ratio().value()).isCloseTo(1, within(0.03));
        assertThat(kept.brier()).isCloseTo(truth.brier(), within(0.003));
        assertThat(kept.failures() / kept.known()).isGreaterThan(1.15 * truth.failures() / truth.known());
    }

    @Test
    void limitsOfFewFailuresAreThoseOfAPoissonCount() {
        List<Judged> none = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            none.add(judged(i, 0.02, 0.02, 400, NEVER));
        }
        ScoreRow score = score(none, Horizon.YEAR);
        assertThat(score.ratio().value()).isZero();
        assertThat(score.ratio().lower()).isZero();
        // Garwood (1936): no event seen is compatible with 3.69 expected; here 2.
        assertThat(score.ratio().upper()).isCloseTo(3.689 / 2, within(0.001));
    }
}
