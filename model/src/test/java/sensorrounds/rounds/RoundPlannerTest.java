package sensorrounds.rounds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.rounds.RoundCall.Kind;

class RoundPlannerTest {
    private static final LocalDate DAY = LocalDate.of(2026, 9, 30);

    private static RoundCall due(String vehicle, int wheels, double saving, int waitDays) {
        return new RoundCall(vehicle, "North", Kind.DUE, wheels, saving, waitDays, null, 45, List.of(), List.of());
    }

    private static RoundCall booked(String vehicle, int wheels, int inDays) {
        return new RoundCall(
                vehicle, "North", Kind.BOOKED, wheels, 0, 0, DAY.plusDays(inDays), 0, List.of(), List.of());
    }

    private static RoundCall noWarning(String vehicle, int wheels) {
        return new RoundCall(vehicle, "North", Kind.NO_WARNING, wheels, 0, 100, null, 45, List.of(), List.of());
    }

    private static List<String> names(RoundPlan plan, int week) {
        return plan.stops().stream()
                .filter(s -> s.week() == week)
                .map(s -> s.order() + " " + s.call().vehicleId())
                .toList();
    }

    /**
     * On paper: 100 minutes a week, a stop takes 40 and a wheel 20. A (60 minutes, saves 60), B (60, 54), C (40, 32). Week 1 has
     * room for A and C; B then goes to week 2, when a week of its 70 days has worn off a tenth: 54 x 0.9 = 48.6.
     */
    @Test
    void threeVehiclesInTwoWeeksOnPaper() {
        RoundPlanner planner = new RoundPlanner(new RoundSettings(2, 100, 40, 20), DAY);
        RoundPlan plan = planner.plan("North", List.of(due("B", 1, 54, 70), due("C", 0, 32, 70), due("A", 1, 60, 70)));
        assertThat(names(plan, 1)).containsExactly("1 A", "2 C");
        assertThat(names(plan, 2)).containsExactly("1 B");
        RoundWeek first = plan.weeks().get(0);
        RoundWeek second = plan.weeks().get(1);
        assertThat(first.minutes()).isEqualTo(100);
        assertThat(first.saving()).isEqualTo(92);
        assertThat(first.left()).isEqualTo(1);
        assertThat(first.from()).isEqualTo("2026-10-01");
        assertThat(first.to()).isEqualTo("2026-10-07");
        // With parts of vehicles allowed, A and 40 of B's 60 minutes go first: 146 less a third of 5.4 and 3.2 for C.
        assertThat(first.bound()).isBetween(141 - 1e-9, 141.1);
        assertThat(first.gap()).isCloseTo(1 - 140.6 / 141, within(1e-3));
        assertThat(second.savingSoFar()).isCloseTo(140.6, within(1e-9));
        assertThat(second.left()).isZero();
        assertThat(plan.comingIn()).isEqualTo(135);
    }

    @Test
    void bookedStopsStandAndWheelsWithoutWarningComeFirst() {
        RoundPlanner planner = new RoundPlanner(new RoundSettings(2, 100, 40, 20), DAY);
        RoundPlan plan = planner.plan(
                "North",
                List.of(
                        due("D", 1, 500, 70),
                        noWarning("N", 1),
                        booked("K", 2, 7),
                        booked("L", 1, 8),
                        booked("Z", 1, 40)));
        assertThat(names(plan, 1)).containsExactly("1 K", "2 N");
        assertThat(names(plan, 2)).containsExactly("1 L", "2 D");
        assertThat(plan.weeks().get(0).booked()).isEqualTo(1);
        assertThat(plan.weeks().get(0).minutes()).isEqualTo(100);
    }

    @Test
    void withRoomForAllNothingIsLostAndTheGapIsNought() {
        List<RoundCall> calls = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            calls.add(due("V" + i, i % 4, 20 + i, 30 + 10 * i));
        }
        RoundPlan plan = new RoundPlanner(new RoundSettings(4, 1e6, 45, 20), DAY).plan("North", calls);
        RoundWeek week = plan.weeks().get(0);
        assertThat(week.vehicles()).isEqualTo(30);
        assertThat(week.bound()).isCloseTo(week.saving(), within(1e-9));
        assertThat(week.gap()).isCloseTo(0, within(1e-12));
    }

    /** Every way of spreading seven vehicles over two weeks and none is tried. */
    @Test
    void boundIsNeverUnderTheBestOfAllChoicesAndTheGapHolds() {
        Random random = new Random(20_261_125);
        double worst = 0;
        for (int trial = 0; trial < 60; trial++) {
            RoundSettings settings = new RoundSettings(2, 100 + random.nextInt(150), 45, 20);
            List<RoundCall> calls = new ArrayList<>();
            for (int i = 0; i < 7; i++) {
                calls.add(due("V" + i, random.nextInt(4), 10 + 150 * random.nextDouble(), 7 + random.nextInt(200)));
            }
            RoundPlan plan = new RoundPlanner(settings, DAY).plan("North", calls);
            double best = best(calls, settings, new double[2], 0);
            RoundWeek last = plan.weeks().get(1);
            assertThat(last.savingSoFar()).isLessThanOrEqualTo(best + 1e-9);
            assertThat(last.bound()).isGreaterThanOrEqualTo(best - 1e-9);
            assertThat(last.savingSoFar()).isGreaterThanOrEqualTo((1 - last.gap()) * best - 1e-9);
            for (RoundWeek week : plan.weeks()) {
                assertThat(week.minutes()).isLessThanOrEqualTo(settings.weeklyMinutes() + 1e-9);
            }
            worst = Math.max(worst, 1 - last.savingSoFar() / best);
        }
        assertThat(worst).as("what the rounds miss at worst").isLessThan(0.15);
    }

    private static double best(List<RoundCall> calls, RoundSettings settings, double[] used, int from) {
        if (from == calls.size()) {
            return 0;
        }
        RoundCall call = calls.get(from);
        double best = best(calls, settings, used, from + 1);
        for (int w = 0; w < used.length; w++) {
            double minutes = call.minutes(settings);
            if (used[w] + minutes <= settings.weeklyMinutes()) {
                used[w] += minutes;
                best = Math.max(best, call.saving(w) + best(calls, settings, used, from + 1));
                used[w] -= minutes;
            }
        }
        return best;
    }

    @Test
    void manyVehiclesAreCloseToTheBound() {
        Random random = new Random(5);
        List<RoundCall> calls = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            calls.add(due("V" + i, random.nextInt(4), 10 + 150 * random.nextDouble(), 7 + random.nextInt(200)));
        }
        RoundPlan plan = new RoundPlanner(new RoundSettings(4, 960, 45, 20), DAY).plan("North", calls);
        assertThat(plan.weeks()).allMatch(w -> w.gap() < 0.03);
        assertThat(plan.weeks().get(3).left()).isPositive();
        List<RoundCall> shuffled = new ArrayList<>(calls);
        Collections.shuffle(shuffled, random);
        assertThat(new RoundPlanner(new RoundSettings(4, 960, 45, 20), DAY).plan("North", shuffled))
                .isEqualTo(plan);
    }

    @Test
    void refusesSettingsThatMakeNoSense() {
        assertThatThrownBy(() -> new RoundSettings(0, 960, 45, 20))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("weeks 0");
        assertThat(Arrays.asList(Kind.values())).startsWith(Kind.BOOKED);
    }

    @Test
    void eachDepotHasItsOwnMinutes() {
        RoundSettings settings = new RoundSettings(1, 960, Map.of("Small", 100.0), 45, 20);
        RoundPlanner planner = new RoundPlanner(settings, DAY);
        List<RoundCall> calls = List.of(due("A", 1, 60, 70), due("B", 1, 54, 70));
        assertThat(planner.plan("Small", calls).weeks().get(0).capacity()).isEqualTo(100);
        assertThat(planner.plan("Small", calls).stops()).hasSize(1);
        assertThat(planner.plan("Large", calls).stops()).hasSize(2);
    }
}
