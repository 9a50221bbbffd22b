package sensorrounds.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ConcordanceTest {
    private static final int N = 150;

    private static FollowUp units(long seed) {
        Random random = new Random(seed);
        double[] entry = new double[N];
        double[] exit = new double[N];
        boolean[] failed = new boolean[N];
        double[] weight = new double[N];
        for (int i = 0; i < N; i++) {
            entry[i] = random.nextInt(10);
            exit[i] = entry[i] + 1 + random.nextInt(12);
            failed[i] = random.nextInt(5) < 3;
            weight[i] = 1 + random.nextInt(3);
        }
        return FollowUp.of(entry, exit, failed).withWeights(weight);
    }

    private static double[] risks(long seed) {
        Random random = new Random(seed);
        return IntStream.range(0, N).mapToDouble(i -> random.nextInt(8)).toArray();
    }

    /** All pairs, one by one: in the right order, in the wrong one, tied. */
    private static double[] allPairs(FollowUp units, double[] risk, int without) {
        double[] pairs = new double[3];
        for (int i = 0; i < units.size(); i++) {
            for (int j = 0; j < units.size(); j++) {
                double t = units.exit(i);
                boolean livedOn = units.exit(j) > t || (units.exit(j) == t && !units.failed(j));
                if (i != without && j != without && units.failed(i) && units.entry(j) < t && livedOn) {
                    int kind = risk[i] > risk[j] ? 0 : risk[i] < risk[j] ? 1 : 2;
                    pairs[kind] += units.weight(i) * units.weight(j);
                }
            }
        }
        return pairs;
    }

    @Test
    void sortingCountsWhatListingAllPairsCounts() {
        for (int seed = 0; seed < 20; seed++) {
            FollowUp units = units(seed);
            double[] risk = risks(100 + seed);
            double[] pairs = allPairs(units, risk, -1);
            Concordance actual = Concordance.harrell(units, risk);
            assertThat(actual.concordant()).isEqualTo(pairs[0]);
            assertThat(actual.discordant()).isEqualTo(pairs[1]);
            assertThat(actual.tiedRisk()).isEqualTo(pairs[2]);
        }
    }

    @Test
    void theErrorIsThatOfLeavingUnitsOutOneByOne() {
        FollowUp units =
                units(3).withWeights(IntStream.range(0, N).mapToDouble(i -> 1).toArray());
        double[] risk = risks(4);
        Concordance whole = Concordance.harrell(units, risk);
        double square = 0;
        for (int i = 0; i < N; i++) {
            double[] pairs = allPairs(units, risk, i);
            double moved = (pairs[0] + pairs[2] / 2) / (pairs[0] + pairs[1] + pairs[2]) - whole.value();
            square += moved * moved;
        }
        // The jackknife in the infinitesimal and the one that leaves out whole units differ by terms of order 1/n.
        assertThat(whole.standardError()).isCloseTo(Math.sqrt(square), within(0.03 * Math.sqrt(square)));
    }

    @Test
    void aWeightIsARepetition() {
        FollowUp units = units(5);
        double[] risk = risks(6);
        int[] rows = IntStream.range(0, N)
                .flatMap(i -> IntStream.range(0, (int) units.weight(i)).map(k -> i))
                .toArray();
        boolean[] failed = new boolean[rows.length];
        for (int r = 0; r < rows.length; r++) {
            failed[r] = units.failed(rows[r]);
        }
        FollowUp repeated = FollowUp.of(
                IntStream.of(rows).mapToDouble(units::entry).toArray(),
                IntStream.of(rows).mapToDouble(units::exit).toArray(),
                failed);
        double[] repeatedRisk = IntStream.of(rows).mapToDouble(i -> risk[i]).toArray();
        Concordance a = Concordance.harrell(units, risk);
        Concordance b = Concordance.harrell(repeated, repeatedRisk);
        assertThat(a.value()).isEqualTo(b.value());
        assertThat(a.standardError()).isCloseTo(b.standardError(), within(1e-12));
        assertThat(a.tiedAge()).isEqualTo(b.tiedAge());
        assertThat(a.tiedBoth()).isEqualTo(b.tiedBoth());
        Concordance unoA = Concordance.uno(units, risk, 15);
        Concordance unoB = Concordance.uno(repeated, repeatedRisk, 15);
        assertThat(unoA.value()).isCloseTo(unoB.value(), within(1e-12));
        assertThat(unoA.standardError()).isCloseTo(unoB.standardError(), within(1e-12));
    }

    @Test
    void aPerfectOrderIsOneItsReverseZeroAndOneRiskForAllAHalf() {
        FollowUp units = FollowUp.of(new double[4], new double[] {1, 2, 3, 4}, new boolean[] {true, true, false, true});
        assertThat(Concordance.harrell(units, new double[] {4, 3, 2, 1}).value())
                .isEqualTo(1);
        assertThat(Concordance.harrell(units, new double[] {1, 2, 3, 4}).value())
                .isZero();
        assertThat(Concordance.harrell(units, new double[] {7, 7, 7, 7}).value())
                .isEqualTo(0.5);
    }

    @Test
    void withoutLossesUnosIsHarrellsOfFailuresBeforeTau() {
        FollowUp all =
                FollowUp.of(new double[5], new double[] {1, 2, 3, 4, 5}, new boolean[] {true, true, true, true, true});
        double[] risk = {3, 5, 1, 4, 2};
        assertThat(Concordance.uno(all, risk, 9).value())
                .isEqualTo(Concordance.harrell(all, risk).value());
    }

    /** Exponential lives with log hazard x: the chance that of two the one at higher risk fails first has no loss in it. */
    @Test
    void unosDoesNotDependOnTheLosses() {
        Random random = new Random(9);
        int n = 6000;
        double[] life = new double[n];
        double[] risk = new double[n];
        double[] exit = new double[n];
        boolean[] whole = new boolean[n];
        boolean[] failed = new boolean[n];
        double[] end = new double[n];
        for (int i = 0; i < n; i++) {
            risk[i] = 1.5 * random.nextGaussian();
            life[i] = -Math.log(1 - random.nextDouble()) / Math.exp(risk[i]);
            double lost = -Math.log(1 - random.nextDouble()) / 1.2;
            exit[i] = Math.min(life[i], lost);
            failed[i] = life[i] <= lost;
            whole[i] = true;
            end[i] = life[i];
        }
        double truth = Concordance.uno(FollowUp.of(new double[n], end, whole), risk, 1.5)
                .value();
        FollowUp seen = FollowUp.of(new double[n], exit, failed);
        assertThat(Concordance.uno(seen, risk, 1.5).value()).isCloseTo(truth, within(0.005));
        assertThat(Concordance.harrell(seen, risk).value()).isGreaterThan(truth + 0.01);
    }

    @Test
    void inputsThatBreakIt() {
        FollowUp censored = FollowUp.of(new double[2], new double[] {1, 2}, new boolean[2]);
        assertThat(Concordance.harrell(censored, new double[] {1, 2}).value()).isNaN();
        assertThatThrownBy(() -> Concordance.harrell(censored, new double[] {1}))
                .hasMessageContaining("1 risks for 2 units");
        assertThatThrownBy(() -> Concordance.harrell(censored, new double[] {1, Double.NaN}))
                .hasMessageContaining("unit 1: NaN");
        // Everybody in sight is lost at 1; the failure at 5 is of a unit that came later.
        FollowUp gap = FollowUp.of(new double[] {0, 3}, new double[] {1, 5}, new boolean[] {false, true});
        assertThatThrownBy(() -> Concordance.uno(gap, new double[] {1, 2}, 9))
                .hasMessageContaining("failure at age 5.0")
                .hasMessageContaining("earlier tau");
    }
}
