package sensorrounds.replacement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.Part;
import sensorrounds.history.Finding;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.survival.WeibullLife;
import sensorrounds.visit.WheelPosition;

class ReplacementEconomicsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 1, 1);
    private static final WeibullLife WEAROUT = new WeibullLife(2.5, 1000, 0.01, 0.01, 0);
    private static final WeibullLife LEVEL = new WeibullLife(1, 1000, 0, 0, 0);

    /** Planned 100 (30 of it set-up), after a failure 500. */
    private static final Costs COSTS = new Costs("EUR", DAY, 30, 30, 40, 300, 130);

    private static RankedReplacement advise(WeibullLife law, int age, int horizon, double ratio) {
        return new ReplacementEconomics(COSTS, horizon)
                .advise(SampleOutlook.of(law, age, horizon, ratio), law, 40, List.of());
    }

    /**
     * On paper: with a level hazard l and ratio r, P = 1 - exp(-r l h), m = P/(r l), g = cf l, so saving = P (cf - cp -
     * cf/r) and break-even at r = cf/(cf - cp).
     */
    @Test
    void levelHazardIsSolvedOnPaper() {
        for (double ratio : new double[] {0.5, 1, 1.2, 1.3, 6}) {
            RankedReplacement line = advise(LEVEL, 700, 90, ratio);
            double p = 1 - Math.exp(-ratio * 0.09);
            assertThat(line.saving()).isCloseTo(p * (500 - 100 - 500 / ratio), within(1e-9));
            assertThat(line.breakEvenProbability()).isCloseTo(1 - Math.exp(-0.09 * 500 / 400), within(1e-9));
            assertThat(line.saving() > 0).isEqualTo(ratio > 1.25);
        }
    }

    @Test
    void withoutAgeingASensorIsNeverReplacedForItsAge() {
        for (int age = 0; age <= 20_000; age += 500) {
            RankedReplacement line = advise(LEVEL, age, 90, 1);
            assertThat(line.advice()).isEqualTo(Advice.KEEP);
            assertThat(line.saving()).isNegative();
        }
    }

    /** T* = 493.046957596634 for shape 2.5, scale 1000, cf = 5 cp: reference/replacement/age-replacement.json. */
    @Test
    void marginalRuleTurnsAtTheOptimalAge() {
        // Over one day the hazard that counts is the day's mean, about that of its middle: the turn is at T* - 1/2.
        assertThat(advise(WEAROUT, 492, 1, 1).saving()).isNegative();
        assertThat(advise(WEAROUT, 493, 1, 1).saving()).isPositive();
        assertThat(advise(WEAROUT, 460, 60, 1).saving()).isNegative();
        assertThat(advise(WEAROUT, 467, 60, 1).saving()).isPositive();
    }

    @Test
    void savingIsLaterLessNowAndRisesWithAgeAndRatio() {
        double before = Double.NEGATIVE_INFINITY;
        for (int age = 100; age <= 1500; age += 100) {
            RankedReplacement line = advise(WEAROUT, age, 90, 1);
            assertThat(line.costNow()).isEqualTo(100);
            assertThat(line.saving()).isEqualTo(line.costLater() - line.costNow(), within(1e-9));
            assertThat(line.saving()).isGreaterThan(before);
            assertThat(advise(WEAROUT, age, 90, 3).saving()).isGreaterThan(line.saving());
            before = line.saving();
        }
    }

    @Test
    void savingIsPositiveExactlyOverTheBreakEven() {
        for (int age = 50; age <= 1200; age += 50) {
            for (double ratio : new double[] {0.2, 0.7, 1, 2, 5, 20}) {
                RankedReplacement line = advise(WEAROUT, age, 90, ratio);
                assertThat(line.saving() > 0)
                        .as("age %d ratio %s", age, ratio)
                        .isEqualTo(line.outlook().pHorizon() > line.breakEvenProbability());
            }
        }
    }

    @Test
    void adviceGoesFromKeepToNextStopToNow() {
        List<Advice> byAge = new ArrayList<>();
        for (int age = 50; age <= 1000; age += 10) {
            byAge.add(advise(WEAROUT, age, 30, 1).advice());
        }
        assertThat(byAge.stream().distinct().toList())
                .containsExactly(Advice.KEEP, Advice.AT_NEXT_STOP, Advice.REPLACE_NOW);
        // Without the set-up of 30 the planned cost is 70, and the optimum of 500/70 lies at a lower age.
        double t =
                new AgeReplacement(new FittedAgeing(WEAROUT), 70, 500).optimum().age();
        int first = 50 + 10 * byAge.indexOf(Advice.AT_NEXT_STOP);
        assertThat((double) first).isCloseTo(t - 15, within(10.0));
    }

    @Test
    void aPlaceThatKeepsFailingIsLookedAtFirst() {
        SensorOutlook old = SampleOutlook.of(WEAROUT, 1500, 90, 1);
        ReplacementEconomics economics = new ReplacementEconomics(COSTS, 90);
        assertThat(economics
                        .advise(old, WEAROUT, 40, List.of(placeKeepsFailing("1R")))
                        .advice())
                .isEqualTo(Advice.REPLACE_NOW);
        Finding otherSet = new Finding(
                Finding.Kind.PLACE_KEEPS_FAILING, "V1", null, old.position(), "winter", DAY, "", "", List.of());
        assertThat(economics.advise(old, WEAROUT, 40, List.of(otherSet)).advice())
                .as("the sensors of the other wheel set fell silent, not those of this one")
                .isEqualTo(Advice.REPLACE_NOW);
        RankedReplacement line = economics.advise(old, WEAROUT, 40, List.of(placeKeepsFailing("1L")));
        assertThat(line.advice()).isEqualTo(Advice.CHECK_PLACE_FIRST);
        assertThat(line.reason()).contains("look at receiver, wiring and place");
    }

    @Test
    void reasonSaysAgeReportChanceAndMoney() {
        // H = .821^2.5 - .731^2.5 = .6107 - .4569 = .1539, P = 14.3 %.
        RankedReplacement line = advise(WEAROUT, 731, 90, 1);
        assertThat(line.reason())
                .startsWith("2.0 years old, answered with nothing amiss on 2026-03-01; chance of not working within 90"
                        + " days 14 % (95 % limits ")
                .contains("Replacing now is expected to save ")
                .contains(" EUR against keeping it; it pays from a chance of ")
                .endsWith("Worth a stop of its own.");
        assertThat(advise(WEAROUT, 100, 90, 1).reason())
                .contains("expected to cost ")
                .endsWith("Keep it.");
    }

    @Test
    void withoutALawNothingIsClaimed() {
        RankedReplacement line =
                new ReplacementEconomics(COSTS, 90).advise(SampleOutlook.of(WEAROUT, 1500, 90, 1), null, 40, List.of());
        assertThat(line.saving()).isNaN();
        assertThat(line.advice()).isEqualTo(Advice.KEEP);
        assertThat(line.reason()).contains("no law of life could be fitted");
    }

    @Test
    void cheapFailuresNeverPay() {
        Costs cheap = new Costs("EUR", DAY, 30, 30, 40, 10, 0);
        RankedReplacement line = new ReplacementEconomics(cheap, 90)
                .advise(SampleOutlook.of(WEAROUT, 3000, 90, 5), WEAROUT, 40, List.of());
        assertThat(line.saving()).isNegative();
        assertThat(line.breakEvenProbability()).isNaN();
    }

    @Test
    void aSensorAlmostSurelyDeadSavesTheWholeDifference() {
        RankedReplacement line = advise(WEAROUT, 20_000, 90, 50);
        assertThat(line.outlook().pHorizon()).isEqualTo(1);
        assertThat(line.saving()).isCloseTo(400, within(1.0));
        assertThat(line.breakEvenProbability()).isBetween(0.0, 1.0);
    }

    @Test
    void priceFallsBackToTheDefault() {
        ReplacementEconomics economics = new ReplacementEconomics(COSTS, 90);
        assertThat(economics.priceOf(null)).isEqualTo(40);
        assertThat(economics.priceOf(new Part("P1", "", Part.Kind.SENSOR, 55, 3, 4, 433.92, List.of())))
                .isEqualTo(55);
    }

    @Test
    void orderIsTotalAndTheSameForAnyInputOrder() {
        List<RankedReplacement> lines = new ArrayList<>();
        for (String vehicle : List.of("V2", "V1", "V3")) {
            for (String place : List.of("2R", "1L", "spare", "1R")) {
                lines.add(line(vehicle, place, vehicle.equals("V3") ? Double.NaN : 10));
            }
        }
        lines.add(line("V9", "1L", 11));
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
                        "10 V3 1L",
                        "11 V3 1R",
                        "12 V3 2R",
                        "13 V3 spare");
        for (int seed = 0; seed < 20; seed++) {
            Collections.shuffle(lines, new Random(seed));
            assertThat(names(Ranker.rank(lines))).isEqualTo(expected);
        }
    }

    private static List<String> names(List<RankedReplacement> lines) {
        return lines.stream()
                .map(r -> r.rank() + " " + r.outlook().vehicleId() + " "
                        + r.outlook().position())
                .toList();
    }

    private static RankedReplacement line(String vehicle, String place, double saving) {
        SensorOutlook outlook = SampleOutlook.of(vehicle, place, WEAROUT, 100, 90, 1);
        return new RankedReplacement(0, outlook, 0, 0, saving, 0, Advice.KEEP, "");
    }

    private static Finding placeKeepsFailing(String place) {
        WheelPosition position = WheelPosition.parse(place).orElseThrow();
        return new Finding(Finding.Kind.PLACE_KEEPS_FAILING, "V1", null, position, null, DAY, "", "", List.of());
    }
}
