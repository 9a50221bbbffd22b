package sensorrounds.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.CurvePoint.Method;
import sensorrounds.survival.Lifetime;

/** Cohorts solved on paper. */
class CohortDiagnosticsTest {
    /** Ends at 100 (battery), 200 (replaced), 300 (unknown), with 4, 3 and 2 at risk; one lives on to 400. */
    private static final LifeCells FOUR = new LifeCells()
            .add(Lifetime.interval(0, 90, 110), EndCause.BATTERY, 1)
            .add(Lifetime.censored(0, 200), EndCause.PREVENTIVE, 1)
            .add(Lifetime.interval(0, 280, 320), EndCause.UNKNOWN, 1)
            .add(Lifetime.censored(0, 400), null, 1);

    private static CohortDiagnostics of(LifeCells cells) {
        return CohortDiagnostics.of("van", cells, 0.20);
    }

    private static List<CurvePoint> curve(CohortDiagnostics d, Method method) {
        return d.curves().stream().filter(p -> p.method() == method).toList();
    }

    private static double[] shares(List<CurvePoint> points) {
        return points.stream().mapToDouble(CurvePoint::survival).toArray();
    }

    private static List<CauseIncidence> rows(CohortDiagnostics d, EndCause cause) {
        return d.incidence().stream().filter(r -> r.cause() == cause).toList();
    }

    /** A quarter each: 1/4; 3/4 x 1/3; 1/2 x 1/2. */
    @Test
    void everyCauseTakesItsShareOfThoseStillThere() {
        CohortDiagnostics d = of(FOUR);
        assertThat(d.incidence()).hasSize(6 * 6);
        List<CauseIncidence> battery = rows(d, EndCause.BATTERY);
        assertThat(battery).extracting(CauseIncidence::ageDays).containsExactly(0, 91, 182, 273, 364, 400);
        assertThat(battery).extracting(CauseIncidence::atRisk).containsExactly(4.0, 4.0, 3.0, 2.0, 1.0, 1.0);
        assertThat(battery).extracting(CauseIncidence::ends).containsExactly(0.0, 0.0, 1.0, 1.0, 1.0, 1.0);
        assertThat(battery.stream().mapToDouble(CauseIncidence::incidence).toArray())
                .containsExactly(new double[] {0, 0, 0.25, 0.25, 0.25, 0.25}, within(1e-15));
        assertThat(rows(d, EndCause.PREVENTIVE).stream()
                        .mapToDouble(CauseIncidence::incidence)
                        .toArray())
                .containsExactly(new double[] {0, 0, 0, 0.25, 0.25, 0.25}, within(1e-15));
        assertThat(rows(d, EndCause.UNKNOWN).stream()
                        .mapToDouble(CauseIncidence::incidence)
                        .toArray())
                .containsExactly(new double[] {0, 0, 0, 0, 0.25, 0.25}, within(1e-15));
        assertThat(rows(d, EndCause.INGRESS))
                .allSatisfy(r -> assertThat(r.incidence()).isZero());
        assertThat(battery.get(0).lower()).isNaN();
        assertThat(battery.get(5).lower()).isBetween(0.0, 0.25);
        assertThat(battery.get(5).upper()).isBetween(0.25, 1.0);
    }

    /** Replacement as censoring: 3/4, 3/8. As failure: 3/4, 1/2, 1/4. */
    @Test
    void thePessimisticBoundCountsReplacementsAsFailures() {
        CohortDiagnostics d = of(FOUR);
        assertThat(shares(curve(d, Method.KAPLAN_MEIER))).containsExactly(new double[] {1, 0.75, 0.375}, within(1e-15));
        assertThat(shares(curve(d, Method.PESSIMISTIC)))
                .containsExactly(new double[] {1, 0.75, 0.5, 0.25}, within(1e-15));
        assertThat(d.caution())
                .isEqualTo("33 % of all ends are preventive replacements (warned above 20 %): sensors replaced because"
                        + " they looked weak leave the survival curve too good; read it together with the pessimistic"
                        + " bound");
        assertThat(CohortDiagnostics.of("van", FOUR, 0.34).caution()).isEmpty();
    }

    /** (90, 110] takes 1/4 of four, (280, 320] half of the two still there; flat between. */
    @Test
    void theCurveWithoutAShapeFallsWithinTheIntervals() {
        CohortDiagnostics d = of(FOUR);
        List<CurvePoint> points = curve(d, Method.TURNBULL);
        assertThat(points).extracting(CurvePoint::ageDays).containsExactly(0, 90, 110, 280, 320, 400);
        assertThat(shares(points)).containsExactly(new double[] {1, 1, 0.75, 0.75, 0.375, 0.375}, within(1e-9));
        assertThat(points).allSatisfy(p -> assertThat(p.lower()).isNaN());
        assertThat(points).extracting(CurvePoint::failures).containsExactly(0.0, 0.0, 1.0, 1.0, 2.0, 2.0);
        assertThat(d.npmle().status()).isEqualTo("CONVERGED");
        assertThat(d.npmle().fromDays()).isEqualTo(90);
        assertThat(d.npmle().uniqueness()).isEqualTo("UNIQUE");
        assertThat(d.npmle().note()).isEmpty();
    }

    @Test
    void aFailureKnownToItsDayFallsOnThatDay() {
        CohortDiagnostics d = of(new LifeCells()
                .add(Lifetime.exact(0, 50), EndCause.TYRE_CHANGE_DAMAGE, 1)
                .add(Lifetime.censored(0, 80), null, 1));
        List<CurvePoint> points = curve(d, Method.TURNBULL);
        assertThat(points).extracting(CurvePoint::ageDays).containsExactly(0, 49, 50, 80);
        assertThat(shares(points)).containsExactly(new double[] {1, 1, 0.5, 0.5}, within(1e-9));
        assertThat(curve(d, Method.PESSIMISTIC))
                .as("without replacements it is the Kaplan-Meier curve")
                .isEmpty();
    }

    @Test
    void anEarlyRiskSetThatEmptiesIsTold() {
        CohortDiagnostics d = of(new LifeCells()
                .add(Lifetime.interval(0, 10, 20), EndCause.BATTERY, 1)
                .add(Lifetime.censored(50, 500), null, 3));
        assertThat(d.caution()).contains("all sensors under observation at age 15 days ended there");
        assertThat(d.npmle().status()).isEqualTo("COLLAPSED");
        assertThat(d.npmle().fromDays()).isEqualTo(10);
        assertThat(d.npmle().note()).contains("may have failed by then, while others entered later");
        assertThat(curve(d, Method.TURNBULL)).isEmpty();
    }

    @Test
    void aCohortWithoutLivesHasNothingToShow() {
        CohortDiagnostics d = of(new LifeCells());
        assertThat(d.npmle().status()).isEqualTo("NO_LIVES");
        assertThat(d.caution()).isEmpty();
        assertThat(d.incidence()).hasSize(6).allSatisfy(r -> {
            assertThat(r.ageDays()).isZero();
            assertThat(r.atRisk()).isZero();
        });
    }

    @Test
    void aCohortWithoutFailuresStaysAtOne() {
        CohortDiagnostics d = of(new LifeCells().add(Lifetime.censored(30, 400), null, 5));
        assertThat(shares(curve(d, Method.TURNBULL))).containsExactly(1, 1);
        assertThat(d.npmle().status()).isEqualTo("CONVERGED");
        assertThat(d.npmle().fromDays()).isNaN();
        assertThat(d.caution()).isEmpty();
    }

    /** A sensor both known good and gone on its first day was under observation for no time. */
    @Test
    void livesUnderObservationForNoTimeTakeNoPart() {
        LifeCells cells = new LifeCells().add(Lifetime.censored(30, 30), EndCause.PREVENTIVE, 1);
        assertThat(cells.causes().lives()).isEmpty();
        assertThat(of(cells).npmle().status()).isEqualTo("CONVERGED");
    }
}
