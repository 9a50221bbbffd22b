package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.numeric.WeightedCount;

class CurvesTest {
    private static final LifetimeSample SAMPLE = LifetimeSample.of(List.of(
            Lifetime.interval(0, 100, 201),
            Lifetime.exact(0, 151),
            Lifetime.interval(120, 200, 400),
            Lifetime.censored(120, 500),
            Lifetime.censored(0, 50)));

    /** By hand: midpoints 150.5, 151, 300; at risk 4, 3, 2; the first two share the day 151. */
    @Test
    void kaplanMeierPointsByHand() {
        List<CurvePoint> points = Curves.kaplanMeier("part A", SAMPLE);
        assertThat(points).extracting(CurvePoint::ageDays).containsExactly(0, 151, 300);
        assertThat(points).extracting(CurvePoint::atRisk).containsExactly(3.0, 3.0, 2.0);
        assertThat(points).extracting(CurvePoint::failures).containsExactly(0.0, 2.0, 3.0);
        assertThat(points.get(1).survival()).isCloseTo(0.5, within(1e-15));
        assertThat(points.get(2).survival()).isCloseTo(0.25, within(1e-15));
        assertThat(points.get(2).lower()).isGreaterThan(0).isLessThan(0.25);
        assertThat(points.get(2).upper()).isLessThan(1).isGreaterThan(0.25);
        // Until 150.5 three, two and four were watched for 50, 70 and 30.5 days and none failed: 412 days of life.
        WeightedCount none = new WeightedCount(0, 0, 150.5 / 412, (50 / 3.0 + 70 / 2.0 + 30.5 / 4) / 412);
        assertThat(points.get(0).lower()).isCloseTo(Math.exp(-none.limit(0.975)), within(1e-12));
    }

    @Test
    void limitsStayDefinedWhenTheCurveReachesZero() {
        List<CurvePoint> points =
                Curves.kaplanMeier("part A", LifetimeSample.of(List.of(Lifetime.exact(0, 5), Lifetime.exact(0, 9))));
        CurvePoint last = points.get(2);
        assertThat(last.survival()).isZero();
        assertThat(last.lower()).isZero();
        assertThat(last.upper()).isEqualTo(points.get(1).upper());
    }

    @Test
    void aLawIsDrawnToTheLastAgeSupported() {
        WeibullLife life = new WeibullLife(2, 400, 0.02, 0.01, 0.002);
        List<CurvePoint> points = Curves.law("part A", CurvePoint.Method.FITTED_LAW, life, SAMPLE);
        assertThat(points).extracting(CurvePoint::ageDays).containsExactly(0, 91, 182, 273, 364, 455, 500);
        for (CurvePoint point : points) {
            assertThat(point.survival()).isEqualTo(life.survival(point.ageDays()));
            assertThat(point.lower()).isLessThanOrEqualTo(point.survival());
            assertThat(point.upper()).isGreaterThanOrEqualTo(point.survival());
        }
        // By hand: three from birth, one leaves at 50; two enter at 120, two fail by 151; the fourth fails at 300.
        assertThat(points).extracting(CurvePoint::atRisk).containsExactly(3.0, 2.0, 2.0, 2.0, 1.0, 1.0, 1.0);
        assertThat(points).extracting(CurvePoint::failures).containsExactly(0.0, 0.0, 2.0, 2.0, 3.0, 3.0, 3.0);
        assertThat(Curves.law("part A", CurvePoint.Method.FITTED_LAW, life, LifetimeSample.of(List.of())))
                .hasSize(1);
    }
}
