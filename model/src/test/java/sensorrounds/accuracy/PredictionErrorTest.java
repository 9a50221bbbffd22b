package sensorrounds.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Brier score and area under the curve: by hand, against known outcomes, and on inputs that break them. */
class PredictionErrorTest {
    /**
     * On paper: lost at 2 with five in sight, so G(2) = 4/5. At age 3: failed at 1 (weight 1, predicted .5), failed at 3
     * (weight 5/4, .6), alive past 3 (weight 5/4, .8 and .9), lost at 2 (weight 0).
     */
    @Test
    void sixUnitsByHand() {
        FollowUp units = FollowUp.of(
                new double[6], new double[] {1, 2, 3, 4, 5, 6}, new boolean[] {true, false, true, false, true, false});
        double[] survival = {0.5, 0.1, 0.6, 0.8, 0.9, 0.7};
        BrierScore brier = BrierScore.at(3, units, survival);
        assertThat(brier.score()).isCloseTo((0.25 + 1.25 * (0.36 + 0.04 + 0.01 + 0.09)) / 6, within(1e-15));
        // Kaplan-Meier at 3: 5/6 x 3/4 = 5/8.
        double s = 0.625;
        assertThat(brier.nullScore()).isCloseTo((s * s + 1.25 * (s * s + 3 * (1 - s) * (1 - s))) / 6, within(1e-15));
        double[] risk = {0.5, 0.9, 0.3, 0.2, 0.4, 0.3};
        // Failed .5 (weight 1) beats all three; failed .3 (weight 5/4) beats .2, loses to .4, ties with .3.
        assertThat(AreaUnderCurve.at(3, units, risk).value()).isCloseTo((3 + 1.25 * 1.5) / (3 * 2.25), within(1e-15));
    }

    @Test
    void withoutLossesItIsTheMeanSquareWithItsOwnError() {
        double[] exit = {1, 2, 3, 4};
        FollowUp units = FollowUp.of(new double[4], exit, new boolean[] {true, true, true, true});
        double[] survival = {0.2, 0.4, 0.9, 0.5};
        double[] squares = {0.04, 0.16, 0.01, 0.25};
        BrierScore brier = BrierScore.at(2, units, survival);
        double mean =
                IntStream.range(0, 4).mapToDouble(i -> squares[i]).average().orElseThrow();
        double variance = IntStream.range(0, 4)
                        .mapToDouble(i -> (squares[i] - mean) * (squares[i] - mean))
                        .sum()
                / 3;
        assertThat(brier.score()).isCloseTo(mean, within(1e-15));
        assertThat(brier.standardError()).isCloseTo(Math.sqrt(variance / 4), within(1e-15));
    }

    /** Weibull lives of which all outcomes are known beside what a fleet with late entry and losses would show. */
    private static final class KnownFleet {
        private static final double AGE = 5;
        private final FollowUp seen;
        private final FollowUp entryIgnored;
        private final double[] survival;
        private final double truth;
        private final double trueArea;
        private final double[] risk;

        KnownFleet(long seed, int n) {
            Random random = new Random(seed);
            double[] entry = new double[n];
            double[] exit = new double[n];
            double[] life = new double[n];
            boolean[] failed = new boolean[n];
            boolean[] whole = new boolean[n];
            survival = new double[n];
            risk = new double[n];
            double square = 0;
            int judged = 0;
            for (int i = 0; i < n; ) {
                double x = random.nextGaussian();
                double scale = 7 * Math.exp(-0.5 * x);
                double t = scale * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 2.5);
                double e = 6 * random.nextDouble();
                double lost = 8 * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 3.0);
                if (t <= e || lost <= e) {
                    continue;
                }
                entry[i] = e;
                exit[i] = Math.min(t, lost);
                failed[i] = t <= lost;
                life[i] = t;
                whole[i] = true;
                double alive = Math.exp(Math.pow(e / scale, 2.5) - Math.pow(AGE / scale, 2.5));
                survival[i] = Math.min(1, alive);
                risk[i] = -survival[i];
                if (e < AGE) {
                    double off = (t > AGE ? 1 : 0) - alive;
                    square += off * off;
                    judged++;
                }
                i++;
            }
            seen = FollowUp.of(entry, exit, failed);
            entryIgnored = FollowUp.of(new double[n], exit, failed);
            truth = square / judged;
            trueArea = AreaUnderCurve.at(AGE, FollowUp.of(entry, life, whole), risk)
                    .value();
        }
    }

    @Test
    void entryWeightsFindTheScoreOfKnownOutcomes() {
        KnownFleet fleet = new KnownFleet(20261125, 40_000);
        BrierScore right = BrierScore.at(KnownFleet.AGE, fleet.seen, fleet.survival);
        assertThat(right.score()).isCloseTo(fleet.truth, within(0.003));
        assertThat(right.leftOut()).isGreaterThan(0);
        AreaUnderCurve area = AreaUnderCurve.at(KnownFleet.AGE, fleet.seen, fleet.risk);
        assertThat(area.value()).isCloseTo(fleet.trueArea, within(0.008));
        BrierScore wrong = BrierScore.at(KnownFleet.AGE, fleet.entryIgnored, fleet.survival);
        assertThat(Math.abs(wrong.score() - fleet.truth)).isGreaterThan(0.01);
    }

    @Test
    void limitsCoverTheKnownScoreAsOftenAsStated() {
        int brier = 0;
        int area = 0;
        int fleets = 300;
        KnownFleet whole = new KnownFleet(77, 400_000);
        double truth = whole.truth;
        double trueArea = whole.trueArea;
        for (int seed = 0; seed < fleets; seed++) {
            KnownFleet fleet = new KnownFleet(1000 + seed, 400);
            BrierScore score = BrierScore.at(KnownFleet.AGE, fleet.seen, fleet.survival);
            brier += Math.abs(score.score() - truth) <= 1.96 * score.standardError() ? 1 : 0;
            AreaUnderCurve curve = AreaUnderCurve.at(KnownFleet.AGE, fleet.seen, fleet.risk);
            area += Math.abs(curve.value() - trueArea) <= 1.96 * curve.standardError() ? 1 : 0;
        }
        // 285 of 300 with a spread of 3.8; plain limits of a skewed score fall a little short.
        assertThat(brier).isBetween(270, 297);
        assertThat(area).isBetween(270, 297);
    }

    @Test
    void aWeightIsARepetition() {
        double[] exit = {1, 2, 3, 4, 5};
        boolean[] failed = {true, false, true, true, false};
        double[] survival = {0.5, 0.6, 0.3, 0.8, 0.9};
        double[] twice = {1, 1, 2, 2, 3, 3, 4, 4, 5, 5};
        boolean[] failedTwice = {true, true, false, false, true, true, true, true, false, false};
        double[] survivalTwice = {0.5, 0.5, 0.6, 0.6, 0.3, 0.3, 0.8, 0.8, 0.9, 0.9};
        FollowUp weighted = FollowUp.of(new double[5], exit, failed).withWeights(new double[] {2, 2, 2, 2, 2});
        FollowUp repeated = FollowUp.of(new double[10], twice, failedTwice);
        BrierScore a = BrierScore.at(3, weighted, survival);
        BrierScore b = BrierScore.at(3, repeated, survivalTwice);
        assertThat(a.score()).isCloseTo(b.score(), within(1e-15));
        assertThat(a.standardError()).isCloseTo(b.standardError(), within(1e-15));
        AreaUnderCurve c = AreaUnderCurve.at(3, weighted, survival);
        AreaUnderCurve d = AreaUnderCurve.at(3, repeated, survivalTwice);
        assertThat(c.value()).isCloseTo(d.value(), within(1e-15));
        assertThat(c.standardError()).isCloseTo(d.standardError(), within(1e-15));
    }

    @Test
    void inputsThatBreakIt() {
        FollowUp units = FollowUp.of(new double[2], new double[] {3, 4}, new boolean[] {true, false});
        assertThatThrownBy(() -> BrierScore.at(9, units, new double[] {0.5, 0.5}))
                .hasMessageContaining("the last was seen at 4.0");
        assertThatThrownBy(() -> BrierScore.at(2, units, new double[] {0.5, 1.5}))
                .hasMessageContaining("unit 1")
                .hasMessageContaining("1.5");
        assertThat(AreaUnderCurve.at(2, units, new double[] {1, 2}).value()).isNaN();
        FollowUp gap = FollowUp.of(new double[] {0, 3}, new double[] {1, 5}, new boolean[] {false, true});
        assertThatThrownBy(() -> BrierScore.at(4, gap, new double[] {0.5, 0.5}))
                .hasMessageContaining("by age 1.0 everybody");
        assertThatThrownBy(() -> FollowUp.of(new double[] {2}, new double[] {2}, new boolean[] {true}))
                .hasMessageContaining("unit 0");
    }
}
