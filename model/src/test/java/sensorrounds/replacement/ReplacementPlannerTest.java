package sensorrounds.replacement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.Part;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.SurvivalAhead;
import sensorrounds.replacement.VehicleCase.Place;
import sensorrounds.replacement.VehicleCase.Sensor;
import sensorrounds.replacement.VehicleCase.Sight;
import sensorrounds.replacement.VehicleCase.Stops;
import sensorrounds.survival.WeibullLife;
import sensorrounds.visit.WheelPosition;

class ReplacementPlannerTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 1);
    private static final WeibullLife WEAROUT = new WeibullLife(2.5, 1000, 0.01, 0.01, 0);
    private static final WeibullLife LEVEL = new WeibullLife(1, 1000, 0, 0, 0);
    private static final ReplacementSettings FREE = new ReplacementSettings(0, 0, 30, 365, 0.5, 180, 2, 30);
    private static final ReplacementSettings ASKING = new ReplacementSettings(20, 0.1, 30, 365, 0.5, 180, 2, 30);
    /** A failure is called out for at once. */
    private static final ReplacementSettings AT_ONCE = new ReplacementSettings(0, 0, 1e-9, 365, 0.5, 180, 2, 30);

    /** Piece with its work 100, breakdown 400, set-up 60, reading 15. */
    private static final Costs COSTS = new Costs("EUR", DAY, 60, 15, 60, 40, 270, 130);

    private static final Costs NO_SET_UP = new Costs("EUR", DAY, 0, 15, 60, 40, 270, 130);

    private static Sensor sensor(SensorOutlook outlook, WeibullLife law) {
        return new Sensor(outlook, law, 40, Mounting.ON_THE_ROAD, Place.ORDINARY);
    }

    private static VehicleCase vehicle(Sensor... sensors) {
        return stoppingIn(180, sensors);
    }

    /** A vehicle whose last stop was today, and whose next is so many days off, and so on. */
    private static VehicleCase stoppingIn(int days, Sensor... sensors) {
        return new VehicleCase(List.of(sensors), DAY, new Stops(null, DAY, days), Sight.KNOWN, List.of());
    }

    private static RankedReplacement alone(WeibullLife law, int age, int horizon, double ratio) {
        return new ReplacementPlanner(NO_SET_UP, AT_ONCE, horizon)
                .plan(stoppingIn(horizon, sensor(SampleOutlook.of(law, age, horizon, ratio), law)))
                .get(0);
    }

    /** Four sensors of one age on one vehicle. */
    private static VehicleCase set(int age, double deadAlready) {
        return vehicle(Stream.of("1L", "1R", "2L", "2R")
                .map(place -> sensor(SampleOutlook.deadAlready(place, WEAROUT, age, 90, deadAlready), WEAROUT))
                .toArray(Sensor[]::new));
    }

    private static List<Advice> advices(List<RankedReplacement> lines) {
        return lines.stream().map(RankedReplacement::advice).toList();
    }

    /**
     * On paper: with a level hazard l and ratio r, P = 1 - exp(-r l h), m = P/(r l), g = cf l, so the gain is P (B - cf/r)
     * and the break-even lies at r = cf/B; here cf = 500, B = 400.
     */
    @Test
    void levelHazardIsSolvedOnPaper() {
        for (double ratio : new double[] {0.5, 1, 1.2, 1.3, 6}) {
            RankedReplacement line = alone(LEVEL, 700, 90, ratio);
            double p = 1 - Math.exp(-ratio * 0.09);
            assertThat(line.saving()).isCloseTo(p * (400 - 500 / ratio), within(1e-7));
            assertThat(line.breakEvenProbability()).isCloseTo(1 - Math.exp(-0.09 * 500 / 400), within(1e-9));
            assertThat(line.advice() == Advice.REPLACE_NOW).isEqualTo(ratio > 1.25);
        }
    }

    @Test
    void withoutAgeingASensorIsNeverReplacedForItsAge() {
        for (int age = 0; age <= 20_000; age += 500) {
            RankedReplacement line = alone(LEVEL, age, 90, 1);
            assertThat(line.advice()).isEqualTo(Advice.KEEP);
            assertThat(line.saving()).isNegative();
        }
    }

    /** T* = 493.046957596634 for shape 2.5, scale 1000, cf = 5 cp: reference/replacement/age-replacement.json. */
    @Test
    void marginalRuleTurnsAtTheOptimalAge() {
        // Over one day the hazard that counts is the day's mean, about that of its middle: the turn is at T* - 1/2.
        assertThat(alone(WEAROUT, 492, 1, 1).saving()).isNegative();
        assertThat(alone(WEAROUT, 493, 1, 1).saving()).isPositive();
        assertThat(alone(WEAROUT, 460, 60, 1).saving()).isNegative();
        assertThat(alone(WEAROUT, 467, 60, 1).saving()).isPositive();
    }

    @Test
    void gainIsOverTheHurdleExactlyWhenTheChanceIsOverTheBreakEven() {
        ReplacementPlanner planner = new ReplacementPlanner(COSTS, ASKING, 90);
        for (int age = 50; age <= 1200; age += 50) {
            for (double ratio : new double[] {0.2, 0.7, 1, 2, 5, 20}) {
                RankedReplacement line = planner.plan(
                                vehicle(sensor(SampleOutlook.of(WEAROUT, age, 90, ratio), WEAROUT)))
                        .get(0);
                assertThat(line.advice() != Advice.KEEP)
                        .as("age %d ratio %s", age, ratio)
                        .isEqualTo(line.outlook().chances().pHorizon() > line.breakEvenProbability());
            }
        }
    }

    @Test
    void adviceGoesFromKeepToNextStopToNow() {
        ReplacementPlanner planner = new ReplacementPlanner(COSTS, ASKING, 90);
        List<Advice> byAge = new ArrayList<>();
        for (int age = 50; age <= 1500; age += 10) {
            byAge.addAll(advices(planner.plan(vehicle(sensor(SampleOutlook.of(WEAROUT, age, 90, 1), WEAROUT)))));
        }
        assertThat(byAge.stream().distinct().toList())
                .containsExactly(Advice.KEEP, Advice.AT_NEXT_STOP, Advice.REPLACE_NOW);
    }

    /** Each of the four alone is not worth the set-up of 60; together they are. */
    @Test
    void oneSetUpIsSharedByTheSensorsOfAVehicle() {
        ReplacementPlanner planner = new ReplacementPlanner(COSTS, ASKING, 90);
        int age = 900;
        RankedReplacement alone = planner.plan(vehicle(sensor(SampleOutlook.of(WEAROUT, age, 90, 1), WEAROUT)))
                .get(0);
        assertThat(alone.advice()).isEqualTo(Advice.AT_NEXT_STOP);
        List<RankedReplacement> four = planner.plan(set(age, 0));
        assertThat(advices(four)).containsOnly(Advice.REPLACE_NOW);
        double stop = four.get(0).stopSaving();
        assertThat(stop).isCloseTo(4 * alone.saving() - 60, within(1e-9));
        assertThat(four.stream().mapToDouble(RankedReplacement::saving).sum()).isCloseTo(stop, within(1e-9));
        assertThat(four.stream().mapToDouble(RankedReplacement::costNow).sum()).isCloseTo(4 * 100 + 60, within(1e-9));
        four.forEach(l -> assertThat(l.costLater() - l.costNow()).isCloseTo(l.saving(), within(1e-9)));
    }

    @Test
    void aStopThatSavesLessThanAskedIsNotMade() {
        VehicleCase four = set(900, 0);
        double saving =
                new ReplacementPlanner(COSTS, FREE, 90).plan(four).get(0).stopSaving();
        for (double margin : new double[] {-0.01, 0.01}) {
            ReplacementSettings asks = new ReplacementSettings(saving + margin, 0, 30, 365, 0.5, 180, 2, 30);
            assertThat(advices(new ReplacementPlanner(COSTS, asks, 90).plan(four)))
                    .containsOnly(margin < 0 ? Advice.REPLACE_NOW : Advice.AT_NEXT_STOP);
        }
        // Given up are the days of four sensors and the set-up: the stop is made up to that share of it on top.
        double rate = new OpportunityReplacement(new FittedAgeing(WEAROUT), 100, 400, 180, 30)
                .optimum()
                .costRate();
        SurvivalAhead.Stretch left =
                new SurvivalAhead(four.sensors().get(0).outlook(), WEAROUT, 90).between(0, 180, 30);
        double asked = saving / (4 * rate * (left.working() + 30 * left.calledOut()) + 60);
        for (double margin : new double[] {-1e-4, 1e-4}) {
            ReplacementSettings asks = new ReplacementSettings(0, asked + margin, 30, 365, 0.5, 180, 2, 30);
            assertThat(advices(new ReplacementPlanner(COSTS, asks, 90).plan(four)))
                    .containsOnly(margin < 0 ? Advice.REPLACE_NOW : Advice.AT_NEXT_STOP);
        }
    }

    @Test
    void aStopBookedSoonIsWaitedFor() {
        VehicleCase four = set(900, 0);
        ReplacementPlanner planner = new ReplacementPlanner(COSTS, ASKING, 90);
        for (int days : new int[] {0, 7, 85, 120}) {
            VehicleCase booked = new VehicleCase(
                    four.sensors(), DAY, new Stops(DAY.plusDays(days), DAY, 180), Sight.KNOWN, List.of());
            assertThat(advices(planner.plan(booked)))
                    .as("booked in %d days", days)
                    .containsOnly(days < 60 ? Advice.AT_NEXT_STOP : Advice.REPLACE_NOW);
        }
        VehicleCase soon =
                new VehicleCase(four.sensors(), DAY, new Stops(DAY.plusDays(7), DAY, 180), Sight.KNOWN, List.of());
        assertThat(planner.plan(soon).get(0).reason()).contains("(booked for 2026-03-08)");
    }

    @Test
    void aVehicleThatComesInForADeadSensorAnywayPaysNoSetUpForTheOthers() {
        Sensor one = sensor(SampleOutlook.of(WEAROUT, 900, 90, 1), WEAROUT);
        VehicleCase dead = new VehicleCase(
                List.of(one),
                DAY,
                new Stops(null, DAY, 180),
                Sight.KNOWN,
                List.of(WheelPosition.parse("2R").orElseThrow()));
        RankedReplacement line =
                new ReplacementPlanner(COSTS, ASKING, 90).plan(dead).get(0);
        assertThat(line.advice()).isEqualTo(Advice.REPLACE_NOW);
        assertThat(line.costNow()).isEqualTo(100);
        assertThat(line.reason()).contains("has to come in for the dead sensor at 2R anyway");
    }

    /** On paper: chance of any dead 1 - .7^4 = .7599; worth .7599 (400 (1 - exp(-6)) - 60) - 15. */
    @Test
    void probablyDeadAndUnseenIsReadFirst() {
        List<RankedReplacement> lines = new ReplacementPlanner(COSTS, ASKING, 90).plan(set(300, 0.3));
        assertThat(advices(lines)).containsOnly(Advice.READ_FIRST);
        assertThat(lines.get(0).stopSaving()).isCloseTo(0.7599 * (400 * (1 - Math.exp(-6)) - 60) - 15, within(1e-9));
        assertThat(lines.stream().mapToDouble(RankedReplacement::costNow).sum()).isCloseTo(15, within(1e-9));
        assertThat(lines.stream().mapToDouble(RankedReplacement::saving).sum())
                .isCloseTo(lines.get(0).stopSaving(), within(1e-9));
        assertThat(lines.get(0).reason()).contains("of that 30 % dead already").contains("read the vehicle first");
    }

    /** Young ones that answer stay; old ones are due at the next stop all the same. On paper: a reading, and a set-up if dead. */
    @Test
    void whatIsReadFirstIsReplacedInAnyCaseWhereItWouldPayAtTheNextStop() {
        ReplacementPlanner planner = new ReplacementPlanner(COSTS, ASKING, 90);
        RankedReplacement young = planner.plan(set(300, 0.05)).get(0);
        RankedReplacement old = planner.plan(set(500, 0.05)).get(0);
        assertThat(List.of(young.advice(), old.advice())).containsOnly(Advice.READ_FIRST);
        assertThat(young.replacedInAnyCase()).isFalse();
        assertThat(young.reason()).doesNotContain("If this one answers");
        assertThat(old.replacedInAnyCase()).isTrue();
        assertThat(old.reason()).contains("If this one answers, replace it at the next stop.");
        assertThat(old.stakes().stop()).isCloseTo(15 / 4.0 + 0.05 * 60, within(1e-9));
    }

    @Test
    void almostSurelyDeadIsReplacedWithoutReadingAgain() {
        Sensor dead = sensor(SampleOutlook.deadAlready("1L", WEAROUT, 300, 90, 0.97), WEAROUT);
        assertThat(advices(new ReplacementPlanner(COSTS, ASKING, 90).plan(vehicle(dead))))
                .containsExactly(Advice.REPLACE_NOW);
    }

    @Test
    void aVehicleOutOfSightIsReadBeforeAnythingIsFitted() {
        for (Sight sight : Sight.values()) {
            VehicleCase v = new VehicleCase(set(900, 0).sensors(), DAY, new Stops(null, DAY, 180), sight, List.of());
            assertThat(advices(new ReplacementPlanner(COSTS, ASKING, 90).plan(v)))
                    .containsOnly(sight == Sight.KNOWN ? Advice.REPLACE_NOW : Advice.READ_FIRST);
        }
    }

    @Test
    void sparesAndStoredSetsStopNobody() {
        SensorOutlook old = SampleOutlook.of(WEAROUT, 1500, 90, 1);
        SensorOutlook older = SampleOutlook.of(WEAROUT, 3000, 90, 1);
        ReplacementPlanner planner = new ReplacementPlanner(COSTS, ASKING, 90);
        Sensor stored = new Sensor(old, WEAROUT, 40, Mounting.IN_STORE, Place.ORDINARY);
        Sensor spare = new Sensor(old, WEAROUT, 40, Mounting.SPARE, Place.ORDINARY);
        Sensor deadSpare = new Sensor(older, WEAROUT, 40, Mounting.SPARE, Place.ORDINARY);
        List<RankedReplacement> lines = planner.plan(vehicle(stored, spare, deadSpare));
        assertThat(advices(lines)).containsExactly(Advice.AT_SEASONAL_CHANGE, Advice.KEEP, Advice.WHEN_OFF);
        assertThat(lines.get(1).saving()).as("no breakdown to save").isNegative();
        assertThat(lines.get(1).breakEvenProbability()).isNaN();
        assertThat(lines.get(0).reason()).contains("in store");
        assertThat(lines.get(2).reason()).contains("spare");
    }

    @Test
    void aSignOfWeaknessIsWatched() {
        SensorOutlook o = SampleOutlook.of(WEAROUT, 100, 90, 1);
        Sensor slow = sensor(SampleOutlook.with(o, LastReport.SLOW_TO_WAKE), WEAROUT);
        assertThat(advices(new ReplacementPlanner(COSTS, ASKING, 90).plan(vehicle(slow, sensor(o, WEAROUT)))))
                .containsExactly(Advice.WATCH, Advice.KEEP);
    }

    @Test
    void aPlaceThatKeepsFailingIsLookedAtFirst() {
        Sensor bad = new Sensor(
                SampleOutlook.of(WEAROUT, 1500, 90, 1), WEAROUT, 40, Mounting.ON_THE_ROAD, Place.KEEPS_FAILING);
        RankedReplacement line =
                new ReplacementPlanner(COSTS, ASKING, 90).plan(vehicle(bad)).get(0);
        assertThat(line.advice()).isEqualTo(Advice.CHECK_PLACE_FIRST);
        assertThat(line.reason()).contains("look at receiver, wiring and place");
    }

    @Test
    void reasonSaysAgeReportChanceAndMoney() {
        // H = .821^2.5 - .731^2.5 = .6107 - .4569 = .1539, P = 14.3 %.
        ReplacementPlanner planner = new ReplacementPlanner(COSTS, ASKING, 90);
        String reason = planner.plan(vehicle(sensor(SampleOutlook.of(WEAROUT, 731, 90, 1), WEAROUT)))
                .get(0)
                .reason();
        assertThat(reason)
                .startsWith("2.0 years old, answered with nothing amiss on 2026-03-01; chance of not working within 90"
                        + " days 14 % (95 % limits ")
                .contains("Not worth a stop of its own")
                .contains(" EUR more. Replacing at a stop pays from a chance of ")
                .endsWith("; this one is over it.");
        assertThat(planner.plan(set(900, 0)).get(0).reason())
                .contains("A stop now for it and 3 more of this vehicle is expected to save ")
                .contains(" EUR against waiting for its next stop, in about 180 days, ");
    }

    @Test
    void withoutALawNothingIsClaimed() {
        RankedReplacement line = new ReplacementPlanner(COSTS, ASKING, 90)
                .plan(vehicle(sensor(SampleOutlook.of(WEAROUT, 1500, 90, 1), null)))
                .get(0);
        assertThat(line.saving()).isNaN();
        assertThat(line.advice()).isEqualTo(Advice.KEEP);
        assertThat(line.reason()).contains("no law of life could be fitted");
    }

    @Test
    void cheapFailuresNeverPay() {
        Costs cheap = new Costs("EUR", DAY, 30, 15, 30, 40, 0, 0);
        RankedReplacement line = new ReplacementPlanner(cheap, ASKING, 90)
                .plan(vehicle(sensor(SampleOutlook.of(WEAROUT, 3000, 90, 5), WEAROUT)))
                .get(0);
        assertThat(line.advice()).isEqualTo(Advice.KEEP);
        assertThat(line.breakEvenProbability()).isNaN();
    }

    @Test
    void priceFallsBackToTheDefault() {
        ReplacementPlanner planner = new ReplacementPlanner(COSTS, ASKING, 90);
        assertThat(planner.priceOf(null)).isEqualTo(40);
        assertThat(planner.priceOf(new Part("P1", "", Part.Kind.SENSOR, 55, 3, 4, 433.92, List.of())))
                .isEqualTo(55);
    }

    @Test
    void refusesSettingsThatMakeNoSense() {
        assertThatThrownBy(() -> new ReplacementSettings(20, 0.1, 0, 365, 0.5, 180, 2, 30))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("call-out days 0.0");
    }

    @Test
    void orderIsByStopThenVehicleAndTheSameForAnyInputOrder() {
        List<RankedReplacement> lines = new ArrayList<>();
        for (String vehicle : List.of("V2", "V1")) {
            for (String place : List.of("2R", "1L", "spare", "1R")) {
                lines.add(line(vehicle, place, 10, 40, Advice.REPLACE_NOW));
            }
        }
        lines.add(line("V9", "1L", 50, 50, Advice.READ_FIRST));
        lines.add(line("V9", "1R", 11, Double.NaN, Advice.AT_NEXT_STOP));
        lines.add(line("V3", "1R", 70, Double.NaN, Advice.AT_NEXT_STOP));
        lines.add(line("V4", "1R", Double.NaN, Double.NaN, Advice.KEEP));
        lines.add(line("V5", "1R", -3, Double.NaN, Advice.KEEP));
        lines.add(line("V6", "1R", -9, Double.NaN, Advice.WATCH));
        List<String> expected = names(Ranker.rank(lines));
        assertThat(expected)
                .containsExactly(
                        "1 V9 1L",
                        "2 V1 1L",
                        "3 V1 1R",
                        "4 V1 2R",
                        "5 V1 spare",
                        "6 V2 1L",
                        "7 V2 1R",
                        "8 V2 2R",
                        "9 V2 spare",
                        "10 V3 1R",
                        "11 V9 1R",
                        "12 V6 1R",
                        "13 V5 1R",
                        "14 V4 1R");
        for (int seed = 0; seed < 20; seed++) {
            Collections.shuffle(lines, new Random(seed));
            assertThat(names(Ranker.rank(lines))).isEqualTo(expected);
        }
    }

    private static List<String> names(List<RankedReplacement> lines) {
        return lines.stream()
                .map(r -> r.rank() + " " + r.outlook().sensor().vehicleId() + " "
                        + r.outlook().sensor().position())
                .toList();
    }

    private static RankedReplacement line(String vehicle, String place, double saving, double stop, Advice advice) {
        SensorOutlook outlook = SampleOutlook.of(vehicle, place, WEAROUT, 100, 90, 1);
        return new RankedReplacement(0, outlook, 0, 0, saving, stop, 0, null, advice, "", null);
    }
}
