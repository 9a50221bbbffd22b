package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sensorrounds.condition.ReaderQuality.Of;
import sensorrounds.visit.Mount;

class TechnicianEffectsTest {
    private static final ConditionSettings SETTINGS = ConditionSettings.defaults();

    private static WakeCells.Key pair(String reader, String technician) {
        return new WakeCells.Key(reader, technician, false, false);
    }

    /** So many reads of which a share answers at the first try and the others at the second. */
    private static void reads(WakeCells cells, String reader, String technician, double chance, int reads) {
        int first = (int) Math.round(chance * reads);
        cells.count(pair(reader, technician), 1, true, first);
        long second = Math.round(chance * (reads - first));
        cells.count(pair(reader, technician), 2, true, second);
        cells.count(pair(reader, technician), 3, true, reads - first - second);
    }

    private static int tries(SplittableRandom dice, double p) {
        int tries = 1;
        while (dice.nextDouble() >= p) {
            tries++;
        }
        return tries;
    }

    private static ReaderQuality line(WakeModel model, Of of, String id) {
        return model.qualities().stream()
                .filter(q -> q.of() == of && id.equals(of == Of.TECHNICIAN ? q.technicianId() : q.readerId()))
                .findFirst()
                .orElseThrow();
    }

    private static double chance(WakeModel model, String reader, String technician) {
        return model.chanceOf(new WakeModel.Hand(reader, technician), Mount.SINGLE, false);
    }

    /** Eight technicians pass eight readers round; a factor on the odds of the first of each. */
    private static WakeCells passedRound(double slowReader, double slowTechnician, int reads) {
        WakeCells cells = new WakeCells(0);
        for (int r = 0; r < 8; r++) {
            for (int t = 0; t < 8; t++) {
                double odds = 6 * (r == 0 ? slowReader : 1) * (t == 0 ? slowTechnician : 1) * (1 + 0.05 * r);
                reads(cells, "r" + r, "t" + t, odds / (1 + odds), reads);
            }
        }
        return cells;
    }

    @Test
    void aSlowTechnicianIsToldFromOrdinaryReaders() {
        WakeModel model = WakeModel.fit(passedRound(1, 0.2, 200), SETTINGS);
        assertThat(model.qualities().stream().filter(ReaderQuality::slow))
                .containsExactly(line(model, Of.TECHNICIAN, "t0"));
        // Odds 6 x 0.2, a chance of .545; shrunk a little, and all others as they are.
        assertThat(chance(model, "r0", "t0")).isCloseTo(1.2 / 2.2, within(0.03));
        assertThat(chance(model, "r0", "t3")).isCloseTo(6 / 7.0, within(0.02));
        assertThat(model.qualities()).noneMatch(q -> q.of() == Of.PAIR);
    }

    @Test
    void aSlowReaderIsToldFromTheTechniciansWhoUseIt() {
        WakeModel model = WakeModel.fit(passedRound(0.2, 1, 200), SETTINGS);
        assertThat(model.qualities().stream().filter(ReaderQuality::slow))
                .containsExactly(line(model, Of.READER, "r0"));
        assertThat(chance(model, "r0", "t3")).isCloseTo(1.2 / 2.2, within(0.03));
        assertThat(chance(model, "r1", "t0")).isCloseTo(6.3 / 7.3, within(0.02));
    }

    /** Nobody else uses the reader and the technician uses no other: the pair is slow, and the technician is not judged. */
    @Test
    void aTechnicianWhoseReaderNobodyElseUsesIsOneWithIt() {
        WakeCells cells = passedRound(1, 1, 200);
        reads(cells, "own", "alone", 0.5, 400);
        WakeModel model = WakeModel.fit(cells, SETTINGS);
        ReaderQuality pair = line(model, Of.PAIR, "own");
        assertThat(pair.technicianId()).isEqualTo("alone");
        assertThat(pair.slow()).isTrue();
        assertThat(model.qualities().stream().filter(q -> q.of() == Of.TECHNICIAN))
                .noneMatch(q -> q.technicianId().equals("alone"))
                .hasSize(8);
        assertThat(chance(model, "own", "alone")).isCloseTo(0.5, within(0.02));
    }

    /** The same technician wakes sensors at once with another reader, so it is the reader. */
    @Test
    void aSlowReaderOfATechnicianWithAnOrdinaryOneIsNoPair() {
        WakeCells cells = passedRound(1, 1, 200);
        reads(cells, "own", "alone", 0.5, 400);
        reads(cells, "second", "alone", 0.86, 400);
        WakeModel model = WakeModel.fit(cells, SETTINGS);
        assertThat(line(model, Of.READER, "own").slow()).isTrue();
        assertThat(line(model, Of.READER, "own").technicianId()).isNull();
        assertThat(line(model, Of.PAIR, "second").slow()).isFalse();
    }

    /** Two technicians share one slow reader and use no other: neither is named, for both may be sound. */
    @Test
    void techniciansWhoAreAlikeOnOneSlowReaderAreNotNamed() {
        WakeCells cells = passedRound(1, 1, 200);
        reads(cells, "slow", "a", 0.5, 300);
        reads(cells, "slow", "b", 0.5, 300);
        WakeModel model = WakeModel.fit(cells, SETTINGS);
        assertThat(line(model, Of.TECHNICIAN, "a").slow()).isFalse();
        assertThat(line(model, Of.TECHNICIAN, "b").slow()).isFalse();
        assertThat(chance(model, "slow", "a")).isCloseTo(0.5, within(0.02));
    }

    @Test
    void threeReadsNameNobody() {
        WakeCells cells = passedRound(1, 1, 200);
        cells.count(pair("r0", "new"), 20, false, 3);
        WakeModel model = WakeModel.fit(cells, SETTINGS);
        assertThat(model.qualities()).noneMatch(q -> "new".equals(q.technicianId()));
        assertThat(chance(model, "r0", "new")).isGreaterThan(0.7);
    }

    @Test
    void withoutNamesOfTechniciansNothingChanges() {
        WakeModel model = Histories.ordinaryModel();
        assertThat(model.technicianDeviation()).isNaN();
        assertThat(model.qualities()).allMatch(q -> q.of() == Of.READER && q.technicianId() == null);
    }

    /** Seeded simulation: 20 readers, 40 technicians of spread 0.6, everybody with every reader. */
    @Test
    void theSpreadOfTechniciansIsFoundAgain() {
        SplittableRandom dice = new SplittableRandom(811);
        java.util.Random normal = new java.util.Random(811);
        double[] readers = new double[20];
        double[] technicians = new double[40];
        for (int i = 0; i < 20; i++) {
            readers[i] = 2 + 0.3 * normal.nextGaussian();
        }
        for (int i = 0; i < 40; i++) {
            technicians[i] = 0.6 * normal.nextGaussian();
        }
        WakeCells cells = new WakeCells(0);
        for (int r = 0; r < 20; r++) {
            for (int t = 0; t < 40; t++) {
                double p = Odds.chance(readers[r] + technicians[t]);
                for (int i = 0; i < 60; i++) {
                    cells.count(pair("r" + r, "t" + t), tries(dice, p), true, 1);
                }
            }
        }
        WakeModel model = WakeModel.fit(cells, SETTINGS);
        double mean = 0;
        double squares = 0;
        for (double t : technicians) {
            mean += t / 40;
            squares += t * t / 40;
        }
        assertThat(model.technicianDeviation()).isCloseTo(Math.sqrt(squares - mean * mean), within(0.1));
        int held = 0;
        for (int t = 0; t < 40; t++) {
            ReaderQuality q = line(model, Of.TECHNICIAN, "t" + t);
            // A level that all technicians share is the readers'.
            double truth = Odds.chance(Odds.log(model.overallChance()) + technicians[t] - mean);
            held += q.chanceLower() <= truth && truth <= q.chanceUpper() ? 1 : 0;
        }
        assertThat(held).isGreaterThanOrEqualTo(34);
    }
}
