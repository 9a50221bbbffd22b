package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.OriginBasis;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;

class WakeModelTest {
    private static final ConditionSettings SETTINGS = ConditionSettings.defaults();

    private static WakeCells.Key ordinary(String reader) {
        return new WakeCells.Key(reader, false, false);
    }

    @Test
    void cellsCountReadsByReaderMountAndCold() {
        WakeCells cells = new WakeCells(0)
                .add(Histories.history(Histories.life(
                        "2RI",
                        Histories.read("2026-01-10", "2RI", "reader-a", ReadOutcome.OK, 4, null, -3.0),
                        Histories.read("2026-02-10", "2RI", "reader-a", ReadOutcome.OK, 1, null, 0.0),
                        Histories.read("2026-03-10", "2RI", null, ReadOutcome.OK, 2, null, null))));
        assertThat(cells.keys())
                .containsExactly(
                        new WakeCells.Key("", "tech-1", true, false),
                        new WakeCells.Key("reader-a", "tech-1", true, false),
                        new WakeCells.Key("reader-a", "tech-1", true, true));
        assertThat(cells.tries(new WakeCells.Key("reader-a", "tech-1", true, true), 20))
                .isEqualTo(new WakeCells.Tries(1, 3));
        // With two tries counted per read, the sensor that answered at the fourth is two failures and no success.
        assertThat(cells.tries(new WakeCells.Key("reader-a", "tech-1", true, true), 2))
                .isEqualTo(new WakeCells.Tries(0, 2));
    }

    @Test
    void silenceCountsOnlyOfSensorsThatAnsweredLater() {
        WakeCells cells = new WakeCells(0)
                .add(Histories.history(
                        Histories.life(
                                "1L",
                                Histories.answer("2026-01-10", "1L", 1),
                                Histories.silent("2026-02-10", "1L", 3),
                                Histories.answer("2026-03-10", "1L", 1)),
                        Histories.life(
                                "1R",
                                "2019-03-01",
                                OriginBasis.VEHICLE_FIRST_USE,
                                LifeEnd.FAILED,
                                "2026-03-10",
                                Histories.answer("2026-01-10", "1R", 1),
                                Histories.silent("2026-02-10", "1R", 5),
                                Histories.silent("2026-03-10", "1R", 5))));
        assertThat(cells.tries(new WakeCells.Key(Histories.READER, "tech-1", false, false), 20))
                .isEqualTo(new WakeCells.Tries(3, 3));
    }

    @Test
    void readsWithoutACountOfTriesSayNothing() {
        WakeCells cells = new WakeCells(0)
                .add(Histories.history(Histories.life(
                        "1L",
                        Histories.read("2026-01-10", "1L", "reader-a", ReadOutcome.OK, null, null, 5.0),
                        Histories.read("2026-02-10", "1L", "reader-a", ReadOutcome.NOT_TRIED, null, null, 5.0))));
        assertThat(cells.keys()).isEmpty();
        WakeModel model = WakeModel.fit(cells, SETTINGS);
        assertThat(model.status()).isEqualTo(WakeModel.Status.NO_READS);
        assertThat(model.note()).contains("no read with a count of tries");
        assertThat(model.chance("reader-a", Mount.SINGLE, false)).isNaN();
    }

    @Test
    void visitsAtWhichTheReaderHeardNothingAreLeftOut() {
        var life =
                Histories.life("1L", Histories.silent("2026-01-10", "1L", 3), Histories.answer("2026-02-10", "1L", 1));
        var history = Histories.history(
                List.of(life),
                List.of(),
                List.of(),
                List.of(Histories.finding(Finding.Kind.READER_HEARD_NOTHING, null, "2026-01-10")));
        assertThat(new WakeCells(0).add(history).tries(new WakeCells.Key(Histories.READER, "tech-1", false, false), 20))
                .isEqualTo(new WakeCells.Tries(1, 0));
    }

    @Test
    void anySplitMergedInAnyOrderGivesTheSameCells() {
        WakeCells a = new WakeCells(0).count(ordinary("a"), 2, true, 3).count(ordinary("b"), 30, false, 1);
        WakeCells b = new WakeCells(0).count(ordinary("a"), 1, true, 5);
        WakeCells whole = new WakeCells(0)
                .count(ordinary("a"), 1, true, 5)
                .count(ordinary("b"), 30, false, 1)
                .count(ordinary("a"), 2, true, 3);
        assertThat(new WakeCells(0).merge(a).merge(b)).isEqualTo(whole);
        assertThat(new WakeCells(0).merge(b).merge(a)).isEqualTo(whole);
        assertThat(new WakeCells(0).merge(a)).isNotEqualTo(whole);
        assertThat(whole.triesSpent(ordinary("b"))).isEqualTo(30);
        assertThatThrownBy(() -> new WakeCells(5).merge(a)).hasMessageContaining("do not add up");
    }

    /** By hand: few readers, so the prior is Beta(10 m, 10 (1 - m)) with m = (97 + .85 20) / (100 + 20) = .95. */
    @Test
    void fewReadersAreShrunkToTheirAverageByADeclaredWeight() {
        WakeCells cells = new WakeCells(0)
                .count(ordinary("a"), 1, true, 94)
                .count(ordinary("b"), 1, true, 1)
                .count(ordinary("b"), 2, true, 2)
                .count(ordinary("b"), 1, false, 1);
        WakeModel model = WakeModel.fit(cells, SETTINGS);
        double mean = (97 + 0.85 * 20) / (100 + 20);
        assertThat(model.status()).isEqualTo(WakeModel.Status.DECLARED_SPREAD);
        assertThat(model.overallChance()).isCloseTo(mean, within(1e-14));
        assertThat(model.chance("b", Mount.SINGLE, false)).isCloseTo((10 * mean + 3) / (10 + 6), within(1e-14));
        assertThat(model.chance(null, Mount.SINGLE, false)).isCloseTo(mean, within(1e-14));
        assertThat(model.qualities().get(1).meanAttempts()).isCloseTo(6 / 4.0, within(1e-14));
    }

    @Test
    void threeReadsNeverMakeASlowReader() {
        WakeCells cells = new WakeCells(0).count(ordinary("new"), 20, false, 3);
        for (String r : List.of("a", "b", "c", "d", "e", "f")) {
            cells.count(ordinary(r), 1, true, 950).count(ordinary(r), 2, true, 50);
        }
        WakeModel model = WakeModel.fit(cells, SETTINGS);
        assertThat(model.qualities()).noneMatch(ReaderQuality::slow);
        assertThat(model.chance("new", Mount.SINGLE, false)).isGreaterThan(0.5);
    }

    @Test
    void aSlowReaderIsNamedAndItsLimitsHoldItsShare() {
        WakeModel model = Histories.ordinaryModel();
        assertThat(model.status()).isEqualTo(WakeModel.Status.FITTED);
        assertThat(model.qualities().stream().filter(ReaderQuality::slow).map(ReaderQuality::readerId))
                .containsExactly("reader-slow");
        ReaderQuality slow = model.qualities().get(5);
        assertThat(slow.chance()).isCloseTo(0.45, within(0.005));
        assertThat(slow.chanceLower()).isLessThan(0.45);
        assertThat(slow.chanceUpper()).isGreaterThan(0.45);
        assertThat(model.chance(Histories.READER, Mount.SINGLE, false)).isCloseTo(0.9, within(0.005));
    }

    /** Odds of inner wheels a third of the others', of the cold a half, in every reader alike. */
    @Test
    void innerWheelsAndColdMultiplyTheOdds() {
        WakeCells cells = new WakeCells(0);
        for (int i = 0; i < 6; i++) {
            double odds = 6 + i;
            for (boolean inner : new boolean[] {false, true}) {
                for (boolean cold : new boolean[] {false, true}) {
                    double p = Odds.chance(Math.log(odds) - (inner ? Math.log(3) : 0) - (cold ? Math.log(2) : 0));
                    WakeCells.Key key = new WakeCells.Key("r" + i, inner, cold);
                    long first = Math.round(1e6 * p);
                    long second = Math.round((1_000_000 - first) * p);
                    cells.count(key, 1, true, first).count(key, 2, true, second);
                    cells.count(key, 3, true, 1_000_000 - first - second);
                }
            }
        }
        WakeModel model = WakeModel.fit(cells, SETTINGS);
        assertThat(model.innerOddsRatio()).isCloseTo(1 / 3.0, within(1e-3));
        assertThat(model.coldOddsRatio()).isCloseTo(1 / 2.0, within(1e-3));
        assertThat(model.chance("r0", Mount.SINGLE, false)).isCloseTo(6 / 7.0, within(1e-3));
        assertThat(model.chance("r0", Mount.INNER, true)).isCloseTo(0.5, within(1e-3));
        assertThat(model.chance("r0", Mount.OUTER, true)).isCloseTo(0.75, within(1e-3));
    }

    /** A shift that is all but 0 must give what the conjugate law gives. */
    @Test
    void integratedPosteriorMeetsTheConjugateOne() {
        BetaDistribution prior = new BetaDistribution(8.5, 1.5);
        WakeCells.Tries tries = new WakeCells.Tries(40, 12);
        BetaDistribution exact = ReaderPosterior.of(prior, List.of(new ReaderPosterior.ShiftedTries(0, tries)));
        BetaDistribution integrated =
                ReaderPosterior.of(prior, List.of(new ReaderPosterior.ShiftedTries(1e-12, tries)));
        assertThat(exact).isEqualTo(new BetaDistribution(48.5, 13.5));
        assertThat(integrated.mean()).isCloseTo(exact.mean(), within(1e-10));
        assertThat(integrated.quantile(0.975)).isCloseTo(exact.quantile(0.975), within(1e-8));
    }

    /** The few weak sensors among the sound ones move a reader by less than the bound the model states. */
    @Test
    void weakSensorsHardlyPullAReaderDown() {
        double share = 0.05;
        WakeCells cells = new WakeCells(0);
        for (int k = 1; k <= 20; k++) {
            long sound = Math.round(1e6 * (1 - share) * 0.9 * Math.pow(0.1, k - 1));
            long weak = Math.round(1e6 * share * 0.2 * Math.pow(0.8, k - 1));
            cells.count(ordinary("a"), k, true, sound + weak);
        }
        double chance = WakeModel.fit(cells, SETTINGS).chance("a", Mount.SINGLE, false);
        WakeCells.Tries all = cells.tries(ordinary("a"), 20);
        assertThat(0.9 - chance).isBetween(0.0, share * (0.9 - 0.2) * SETTINGS.triesCounted());
        assertThat(chance).isGreaterThan(all.successes() / (double) all.total() + 0.05);
    }
}
