package sensorrounds.recurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.Histories.day;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.history.FollowUp;
import sensorrounds.history.Repair;
import sensorrounds.numeric.WilsonInterval;
import sensorrounds.visit.Warning;

class ComebackRatesTest {
    private static final LocalDate AS_OF = day("2026-01-01");
    private static final int[] WINDOWS = {30, 90, 180};

    private static RepairOutcome only(Rounds rounds) {
        List<RepairOutcome> all = RepairOutcome.of(rounds.history(), AS_OF);
        assertThat(all).hasSize(1);
        return all.get(0);
    }

    private static RepairOutcome back(int after) {
        return new RepairOutcome(Repair.RELEARN, false, after, 0, after);
    }

    private static RepairOutcome followed(int clear, int days) {
        return new RepairOutcome(Repair.RELEARN, false, null, clear, days);
    }

    private static ComebackCells cells(RepairOutcome... outcomes) {
        ComebackCells cells = new ComebackCells(WINDOWS);
        for (RepairOutcome o : outcomes) {
            cells.add(o);
        }
        return cells;
    }

    @Test
    void backAtALaterVisit() {
        RepairOutcome o = only(Rounds.of("van")
                .clear("2025-01-01")
                .repaired("2025-02-01", Repair.RELEARN)
                .clear("2025-02-11")
                .warned("2025-03-13"));
        assertThat(o.backAfter()).isEqualTo(40);
        assertThat(o.clearAfter()).isEqualTo(10);
        assertThat(o.again()).isFalse();
    }

    @Test
    void theDriversWordForWhenItCameBack() {
        Rounds repaired = Rounds.of("van").repaired("2025-02-01", Repair.RELEARN);
        assertThat(only(repaired.visit("2025-03-13", Warning.SYSTEM_FAULT, "2025-02-20", Repair.NONE, null, List.of()))
                        .backAfter())
                .isEqualTo(19);
        assertThat(only(Rounds.of("van")
                                .repaired("2025-02-01", Repair.RELEARN)
                                .visit("2025-03-13", Warning.SYSTEM_FAULT, "2025-01-20", Repair.NONE, null, List.of()))
                        .backAfter())
                .isEqualTo(40);
    }

    @Test
    void backOnTheDriveIsBackThatDay() {
        RepairOutcome o = only(Rounds.of("van")
                .repaired("2025-02-01", Repair.CODES_CLEARED, FollowUp.State.RETURNED, "2025-02-01", true));
        assertThat(o.backAfter()).isZero();
        assertThat(cells(o).share(0).share()).isEqualTo(1);
    }

    @Test
    void otherWorkEndsTheFollowing() {
        RepairOutcome o = only(Rounds.of("van")
                .repaired("2025-02-01", Repair.RELEARN)
                .visit("2025-03-03", Warning.NONE, null, Repair.SET_REPLACED, null, List.of())
                .warned("2025-04-01"));
        assertThat(o.backAfter()).isNull();
        assertThat(o.followedFor()).isEqualTo(30);
        assertThat(o.clearAfter()).isEqualTo(30);
    }

    @Test
    void followedToTheReportOrToLeaving() {
        assertThat(only(Rounds.of("van").repaired("2025-12-01", Repair.RELEARN)).followedFor())
                .isEqualTo(31);
        assertThat(only(Rounds.of("van", null, "2025-12-11").repaired("2025-12-01", Repair.RELEARN))
                        .followedFor())
                .isEqualTo(10);
    }

    @Test
    void aRepairAfterARepairWithinAYearIsARepeatedOne() {
        List<RepairOutcome> all = RepairOutcome.of(
                Rounds.of("van")
                        .repaired("2023-01-01", Repair.RELEARN)
                        .repaired("2025-02-01", Repair.RELEARN)
                        .repaired("2025-03-01", Repair.SENSOR_REPLACED)
                        .history(),
                AS_OF);
        assertThat(all).extracting(RepairOutcome::again).containsExactly(false, false, true);
        assertThat(all).extracting(RepairOutcome::backAfter).containsExactly(762, 28, null);
    }

    /** A lamp for low pressure shows that the system works; a message leaves it open. */
    @Test
    void whatTheOtherLampsSay() {
        assertThat(only(Rounds.of("van")
                                .repaired("2025-02-01", Repair.RELEARN)
                                .visit("2025-03-03", Warning.LOW_PRESSURE, null, Repair.NONE, null, List.of()))
                        .clearAfter())
                .isEqualTo(30);
        assertThat(only(Rounds.of("van")
                                .repaired("2025-02-01", Repair.RELEARN)
                                .visit("2025-03-03", Warning.MESSAGE, null, Repair.NONE, null, List.of()))
                        .clearAfter())
                .isZero();
    }

    /** Four repairs, all followed: the plain share with Wilson's limits. */
    @Test
    void allFollowedIsThePlainShare() {
        ComebackCells c = cells(back(5), back(60), followed(200, 300), followed(0, 300));
        for (int w = 0; w < 3; w++) {
            WilsonInterval plain = WilsonInterval.of(w == 0 ? 1 : 2, 4, 0.95);
            assertThat(c.share(w).share()).isCloseTo(plain.share(), within(1e-15));
            assertThat(c.share(w).lower()).isCloseTo(plain.lower(), within(1e-14));
            assertThat(c.share(w).upper()).isCloseTo(plain.upper(), within(1e-14));
        }
        assertThat(c.held(2)).isEqualTo(1);
        assertThat(c.notLooked(2)).isEqualTo(1);
        // The one back after 60 days was seen by nobody at 30.
        assertThat(c.notLooked(0)).isEqualTo(2);
    }

    /** By hand: of 4, one back at 10, one followed for 20, one back at 25, one on: 1 - 3/4 x 1/2 = 5/8. */
    @Test
    void shortFollowUpCountsAsLongAsItWent() {
        ComebackCells c = cells(back(10), followed(0, 20), back(25), followed(0, 400));
        assertThat(c.share(0).share()).isCloseTo(0.625, within(1e-15));
        // Greenwood: (3/8)^2 (1/12 + 1/2) gives an effective number of 15/64 / (9/64 x 7/12) = 20/7.
        WilsonInterval limits = WilsonInterval.of(0.625 * 20 / 7, 20 / 7.0, 0.95);
        assertThat(c.share(0).lower()).isCloseTo(limits.lower(), within(1e-14));
        assertThat(c.share(0).upper()).isCloseTo(limits.upper(), within(1e-14));
        assertThat(c.cutShort(0)).isEqualTo(1);
        assertThat(c.backWithin(0)).isEqualTo(2);
    }

    @Test
    void noneBackStandsOnThoseStillFollowed() {
        ComebackCells c = cells(followed(0, 10), followed(40, 50), followed(40, 50));
        assertThat(c.share(0)).isEqualTo(WilsonInterval.of(0, 2, 0.95));
        // Nobody was followed for 90 days.
        assertThat(c.share(1).share()).isNaN();
        assertThat(c.share(1).upper()).isEqualTo(1);
        assertThat(cells().share(0).share()).isNaN();
    }

    @Test
    void everyRepairIsCountedOnce() {
        Random random = new Random(4);
        ComebackCells c = new ComebackCells(WINDOWS);
        for (int i = 0; i < 500; i++) {
            int end = random.nextInt(400);
            Integer back = random.nextInt(3) == 0 ? end : null;
            c.add(new RepairOutcome(Repair.RELEARN, false, back, end == 0 ? 0 : random.nextInt(end), end));
        }
        for (int w = 0; w < 3; w++) {
            assertThat(c.backWithin(w) + c.held(w) + c.notLooked(w) + c.cutShort(w))
                    .isEqualTo(500);
            assertThat(c.cutShort(w)).isNotNegative();
        }
    }

    /** Follow-up cut short by lot does not move the estimate; the share of all repairs would be far off. */
    @Test
    void censoringDoesNotBias() {
        Random random = new Random(9);
        ComebackCells c = new ComebackCells(WINDOWS);
        for (int i = 0; i < 20_000; i++) {
            int back = (int) (-Math.log(1 - random.nextDouble()) * 150);
            int end = random.nextInt(250);
            c.add(back <= end ? back(back) : followed(0, end));
        }
        // P(back within 90 whole days) with mean 150: 1 - exp(-91/150).
        double truth = 1 - Math.exp(-91 / 150.0);
        assertThat(c.share(1).share()).isCloseTo(truth, within(0.012));
        assertThat(c.share(1).lower()).isLessThan(truth);
        assertThat(c.share(1).upper()).isGreaterThan(truth);
        assertThat((double) c.backWithin(1) / c.repairs()).isLessThan(truth - 0.05);
    }

    @Test
    void adjustmentPutsRepairsOnOneMixOfFirstAndRepeated() {
        // First repairs hold, repeated ones do not; relearns meet first ones only half as often.
        ComebackRates rates = new ComebackRates();
        List<Rounds> rounds = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            rounds.add(Rounds.of("van")
                    .repaired("2024-01-01", Repair.RELEARN)
                    .clear("2024-08-01")
                    .repaired("2024-12-01", Repair.RELEARN)
                    .warned("2024-12-05"));
            rounds.add(Rounds.of("van")
                    .repaired("2024-01-01", Repair.SENSOR_REPLACED)
                    .clear("2024-08-01"));
        }
        rounds.add(Rounds.of("van")
                .repaired("2024-01-01", Repair.RELEARN)
                .clear("2024-08-01")
                .repaired("2024-12-01", Repair.SENSOR_REPLACED)
                .warned("2024-12-05"));
        rounds.forEach(r -> rates.add(r.history(), AS_OF));
        ComebackRate sensor = rate(rates, Repair.SENSOR_REPLACED);
        ComebackRate relearn = rate(rates, Repair.RELEARN);
        assertThat(sensor.share()).isCloseTo(1 / 5.0, within(1e-12));
        assertThat(relearn.share()).isCloseTo(4 / 9.0, within(1e-12));
        // Within each sort the two do alike: 5 of all 14 repairs were repeated ones, and those came back.
        assertThat(sensor.adjustedShare()).isCloseTo(5 / 14.0, within(1e-12));
        assertThat(relearn.adjustedShare()).isCloseTo(5 / 14.0, within(1e-12));
        assertThat(relearn.shareOfSeen()).isCloseTo(4 / 9.0, within(1e-12));
        ComebackRate all = rate(rates, null);
        assertThat(all.repairs()).isEqualTo(14);
        assertThat(all.back() + all.held() + all.notLooked() + all.cutShort()).isEqualTo(14);
    }

    private static ComebackRate rate(ComebackRates rates, Repair repair) {
        return rates.rates().stream()
                .filter(r -> r.repair() == repair && r.windowDays() == 30)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void partsAddUp() {
        Rounds a = Rounds.of("van").repaired("2025-02-01", Repair.RELEARN).warned("2025-03-13");
        Rounds b = Rounds.of("van").repaired("2025-02-01", Repair.SET_REPLACED);
        ComebackRates both = new ComebackRates().add(a.history(), AS_OF).add(b.history(), AS_OF);
        ComebackRates merged = new ComebackRates()
                .merge(new ComebackRates().add(b.history(), AS_OF))
                .merge(new ComebackRates().add(a.history(), AS_OF));
        assertThat(merged).isEqualTo(both);
        assertThat(merged.rates()).isEqualTo(both.rates()).hasSize(9);
        assertThat(new ComebackRates().rates()).isEmpty();
        assertThat(ComebackRates.windows()).containsExactly(30, 90, 180);
    }
}
