package sensorrounds.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.stock.StockOutlook;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.CurvePoint.Method;

/** Geometry reckoned by hand from the frame: 46 to the left axis, 226 the floor, 12 the ceiling, 416 the right end. */
class ChartsTest {
    private static CurvePoint point(Method method, int age, double s, double atRisk) {
        return new CurvePoint("van", method, age, s, s - 0.1, Math.min(1, s + 0.1), atRisk, 1);
    }

    private static String draw(List<CurvePoint> points) {
        StringBuilder out = new StringBuilder();
        Html h = new Html(out);
        new SurvivalChart("van", points).write(h);
        h.finish();
        return out.toString();
    }

    @Test
    void stepsGoOverBeforeTheyGoDown() {
        String svg = draw(List.of(
                point(Method.KAPLAN_MEIER, 0, 1, 10),
                point(Method.KAPLAN_MEIER, 731, 0.5, 30),
                point(Method.KAPLAN_MEIER, 1461, 0.25, 20)));
        // Four years over 370 units; half of the height of 214 is 107 under the ceiling.
        assertThat(svg).contains("d=\"M46 12H231.1V119H416V172.5\" class=\"step\"");
    }

    @Test
    void atRiskCountsMayRiseWithAge() {
        String svg = draw(List.of(
                point(Method.KAPLAN_MEIER, 0, 1, 10),
                point(Method.KAPLAN_MEIER, 700, 0.9, 35),
                point(Method.KAPLAN_MEIER, 1095, 0.8, 20)));
        assertThat(svg).contains(">10</text>").contains(">35</text>");
        assertThat(svg.indexOf(">10</text>")).isLessThan(svg.indexOf(">35</text>"));
    }

    @Test
    void aSmoothCurveIsReadBetweenItsPointsAndNotBeyond() {
        Curve curve = new Curve(
                Method.FITTED_LAW,
                List.of(point(Method.FITTED_LAW, 100, 0.8, 1), point(Method.FITTED_LAW, 200, 0.6, 1)));
        assertThat(curve.at(150)).get().satisfies(p -> assertThat(p.survival()).isEqualTo(0.7));
        assertThat(curve.at(200)).get().satisfies(p -> assertThat(p.survival()).isEqualTo(0.6));
        assertThat(curve.at(99)).isEmpty();
        assertThat(curve.at(201)).isEmpty();
    }

    @Test
    void aStepCurveHoldsUntilTheNextStep() {
        Curve curve = new Curve(
                Method.KAPLAN_MEIER,
                List.of(point(Method.KAPLAN_MEIER, 200, 0.6, 1), point(Method.KAPLAN_MEIER, 100, 0.8, 1)));
        assertThat(curve.at(199)).get().satisfies(p -> assertThat(p.survival()).isEqualTo(0.8));
        assertThat(curve.at(200)).get().satisfies(p -> assertThat(p.survival()).isEqualTo(0.6));
    }

    @Test
    void thousandsOfStepsAreThinnedToWhatTheEyeSees() {
        List<CurvePoint> points = new ArrayList<>();
        for (int age = 0; age <= 3000; age++) {
            points.add(point(Method.KAPLAN_MEIER, age, 1 - age / 6000.0, 100));
        }
        String svg = draw(points);
        String path = svg.substring(svg.lastIndexOf(" d=\"", svg.indexOf("class=\"step\"")));
        assertThat(path.substring(0, path.indexOf("class"))
                        .chars()
                        .filter(c -> c == 'H')
                        .count())
                .isBetween(300L, 640L);
        // The end of the curve is never thinned away: S(3000) = 0.5, 119 from the top.
        assertThat(path.substring(0, path.indexOf("class"))).endsWith("V119\" ");
    }

    @Test
    void theBoundStepsAndTheCurveWithoutAShapeSlants() {
        CurvePoint alive = new CurvePoint("van", Method.TURNBULL, 0, 1, Double.NaN, Double.NaN, 9, 0);
        CurvePoint before = new CurvePoint("van", Method.TURNBULL, 731, 1, Double.NaN, Double.NaN, 9, 0);
        CurvePoint after = new CurvePoint("van", Method.TURNBULL, 1461, 0.5, Double.NaN, Double.NaN, 9, 3);
        String svg = draw(List.of(
                alive, before, after, point(Method.PESSIMISTIC, 0, 1, 10), point(Method.PESSIMISTIC, 731, 0.5, 30)));
        assertThat(svg)
                .contains("d=\"M46 12L231.1 12L416 119\" class=\"shapeless\"")
                .contains("d=\"M46 12H231.1V119\" class=\"bound\"")
                .contains("Pessimistic bound")
                .contains("Without a shape")
                .doesNotContain("Kaplan–Meier, 95 % limits");
        // Three years lie half-way down the slant; the limits are not known and not written.
        assertThat(new Curve(Method.TURNBULL, List.of(alive, before, after)).at(1096))
                .get()
                .satisfies(p -> assertThat(p.survival()).isEqualTo(0.75));
        assertThat(svg).contains("without a shape 75").doesNotContain("without a shape 75\u202f% (");
    }

    @Test
    void sharesOfCausesAreDrawnUpToARoundShare() {
        StringBuilder out = new StringBuilder();
        Html h = new Html(out);
        CausesPart.write(h, SampleCauses.facts().incidence());
        h.finish();
        // 55 % is drawn under 60 %: 226 less 214 x 55 / 60; the last age, 3276 days, lies 8.97 of 9 years to the right.
        assertThat(out.toString())
                .contains(">60 %</text>")
                .contains("L299.1 29.8\" class=\"cohort style-1\"")
                .doesNotContain("style-4\"");
        assertThat(CauseLine.of(SampleCauses.facts().incidence(), "van").get(0).at(4000))
                .isEmpty();
    }

    @Test
    void limitsThatAreNotKnownAreNotDrawn() {
        List<CurvePoint> points = List.of(
                new CurvePoint("van", Method.FITTED_LAW, 0, 1, Double.NaN, Double.NaN, 5, 0),
                new CurvePoint("van", Method.FITTED_LAW, 900, 0.5, Double.NaN, Double.NaN, 5, 2));
        String svg = draw(points);
        assertThat(svg).doesNotContain("NaN").contains("class=\"smooth\"").doesNotContain("Z\" class=\"band\"");
    }

    @Test
    void aCohortWithoutPointsDrawsNothing() {
        assertThat(draw(List.of())).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"1,1", "5,1", "6,2", "10,2", "11,5", "23,5", "26,10", "240,50", "2000000000,500000000"})
    void stockTicksAreRoundAndFew(int most, int step) {
        assertThat(SlotFrame.tickStep(most)).isEqualTo(step);
    }

    @Test
    void stockIntervalsSpanTheirLimits() {
        StringBuilder out = new StringBuilder();
        Html h = new Html(out);
        new StockChart(List.of(new StockOutlook(
                        "P",
                        "D",
                        YearMonth.of(2026, 4),
                        LocalDate.of(2026, 4, 1),
                        LocalDate.of(2026, 4, 30),
                        0,
                        5,
                        2,
                        10,
                        null,
                        0,
                        8,
                        null,
                        40)))
                .write(h, "P, D");
        h.finish();
        // One month stands in the middle of 36 to 418; ten pieces are 152 units, from 44 to 196.
        assertThat(out.toString())
                .contains("<line x1=\"227\" y1=\"165.6\" x2=\"227\" y2=\"44\" class=\"interval\">")
                .contains("<circle cx=\"227\" cy=\"120\" r=\"3.5\" class=\"dot\">")
                .contains("<line x1=\"218\" y1=\"74.4\" x2=\"236\" y2=\"74.4\" class=\"service\">")
                .doesNotContain("on hand");
    }

    @Test
    void aLimitBeyondThePictureHasNoCap() {
        StringBuilder out = new StringBuilder();
        Html h = new Html(out);
        // Ten units of height for one of amount: the floor at 110, the upper end, 10, at 10.
        SlotFrame frame = new SlotFrame(36, 10, 110, 10, List.of("2022", "2023"));
        frame.write(
                h, "By year", "Failures", "failures", svg -> {}, (svg, i) -> frame.expected(svg, i, 5, 2, 9 + 2 * i));
        h.finish();
        assertThat(out.toString())
                .containsPattern("x1=\"[0-9.]+\" y1=\"20\" x2=\"[0-9.]+\" y2=\"20\" class=\"interval\"")
                .containsPattern("y1=\"90\" x2=\"[0-9.]+\" y2=\"10\" class=\"interval\"")
                .doesNotContainPattern("y1=\"10\" x2=\"[0-9.]+\" y2=\"10\" class=\"interval\"");
    }
}
