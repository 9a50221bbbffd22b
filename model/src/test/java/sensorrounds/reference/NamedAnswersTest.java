package sensorrounds.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.Month;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import sensorrounds.causes.CauseHazardFitter;
import sensorrounds.causes.EndedLife;
import sensorrounds.causes.FineGray;
import sensorrounds.causes.FineGrayFit;
import sensorrounds.causes.MaskedLife;
import sensorrounds.causes.MaskedSample;
import sensorrounds.cox.CoxFitter;
import sensorrounds.cox.CoxSample;
import sensorrounds.frailty.FrailtyFitter;
import sensorrounds.frailty.LifeSets;
import sensorrounds.frailty.SetMember;
import sensorrounds.regression.CovariateLives;
import sensorrounds.regression.LifeFamily;
import sensorrounds.regression.LifeRegression;
import sensorrounds.regression.RegressionStatus;
import sensorrounds.season.ColdMonths;
import sensorrounds.season.SeasonFitter;
import sensorrounds.season.SeasonLife;
import sensorrounds.survival.CommonShapeFitter;
import sensorrounds.survival.EarlyWearFit;
import sensorrounds.survival.EarlyWearFitter;
import sensorrounds.survival.Family;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.FitStatus;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.ParametricFitter;
import sensorrounds.survival.PiecewiseExponentialFitter;
import sensorrounds.survival.WeakPrior;
import sensorrounds.survival.WeakPriorFitter;
import sensorrounds.turnbull.Turnbull;
import sensorrounds.turnbull.TurnbullFit;

/**
 * The shelf of inputs without an ordinary answer, put to every estimator: each has a named one with its cause in words, the
 * same lives, failures and time watched beside it, and the column to blame where there is one.
 */
class NamedAnswersTest {
    private static final int NEVER = Lifetime.NEVER;

    /** A life with one covariate, 0 or 1. */
    private record Row(int entry, int lower, int upper, double x) {
        boolean failed() {
            return upper != NEVER;
        }

        Lifetime life() {
            return new Lifetime(entry, lower, upper, 1);
        }
    }

    private static final Map<String, List<Row>> SHELF = Map.of(
            "no lives", List.of(),
            "no failures", List.of(new Row(0, 400, NEVER, 0), new Row(30, 700, NEVER, 1)),
            "no failures from new", List.of(new Row(0, 400, NEVER, 0), new Row(0, 700, NEVER, 1)),
            "three failures",
                    List.of(
                            new Row(0, 300, 300, 0),
                            new Row(0, 500, 500, 1),
                            new Row(0, 420, 420, 1),
                            new Row(0, 900, NEVER, 0)),
            "one failure", List.of(new Row(0, 400, 450, 0), new Row(0, 700, NEVER, 1), new Row(0, 900, NEVER, 0)),
            "empty windows", List.of(new Row(5, 5, NEVER, 0), new Row(7, 7, NEVER, 1)),
            "all failures at once",
                    List.of(
                            new Row(0, 300, 300, 0),
                            new Row(0, 300, 300, 1),
                            new Row(0, 300, 300, 0),
                            new Row(0, 300, 300, 1)),
            "separated",
                    List.of(
                            new Row(0, 300, 300, 1),
                            new Row(0, 500, 500, 1),
                            new Row(0, 420, 420, 1),
                            new Row(0, 900, NEVER, 0),
                            new Row(0, 800, NEVER, 0)),
            "constant column",
                    List.of(
                            new Row(0, 300, 300, 1),
                            new Row(0, 500, 500, 1),
                            new Row(0, 420, 420, 1),
                            new Row(0, 800, NEVER, 1)));

    private static final Map<String, Function<List<Row>, FitReport>> FITS = new TreeMap<>(Map.ofEntries(
            Map.entry(
                    "Weibull",
                    rows -> ParametricFitter.of(Family.WEIBULL)
                            .fit(sample(rows))
                            .report()),
            Map.entry("two hazards", rows -> twoHazards(sample(rows)).report()),
            Map.entry(
                    "common shape",
                    rows -> CommonShapeFitter.withDefaults()
                            .fit(List.of(sample(rows)))
                            .report()),
            Map.entry(
                    "declared prior",
                    rows -> WeakPriorFitter.of(WeakPrior.declared())
                            .fit(sample(rows))
                            .report()),
            Map.entry(
                    "piecewise-exponential",
                    rows -> PiecewiseExponentialFitter.withBands(350)
                            .fit(sample(rows))
                            .report()),
            Map.entry("curve", rows -> Turnbull.withDefaults().fit(sample(rows)).report(sample(rows))),
            Map.entry(
                    "regression",
                    rows -> LifeRegression.of(LifeFamily.WEIBULL)
                            .fit(lives(rows))
                            .report()),
            Map.entry("Cox", rows -> CoxFitter.withDefaults().fit(cox(rows)).report()),
            Map.entry(
                    "frailty",
                    rows -> FrailtyFitter.withDefaults().fit(sets(rows)).report()),
            Map.entry(
                    "causes",
                    rows -> CauseHazardFitter.weibulls().fit(masked(rows)).report()),
            Map.entry("incidence", rows -> incidence(rows).report()),
            Map.entry(
                    "season",
                    rows -> SeasonFitter.withDefaults().fit(seasons(rows)).report())));

    private static EarlyWearFit twoHazards(LifetimeSample sample) {
        return EarlyWearFitter.of(EarlyWearFitter.Early.CONSTANT)
                .fit(sample, ParametricFitter.of(Family.WEIBULL).fit(sample));
    }

    /** Only lives watched from new, which is all that this regression takes. */
    private static FineGrayFit incidence(List<Row> rows) {
        return FineGray.of("battery")
                .fit(
                        List.of("x"),
                        rows.stream()
                                .map(r -> EndedLife.of(r.life(), r.failed() ? "battery" : null))
                                .toList(),
                        rows.stream().map(r -> new double[] {r.x()}).toArray(double[][]::new));
    }

    private static LifetimeSample sample(List<Row> rows) {
        return LifetimeSample.of(rows.stream().map(Row::life).toList());
    }

    private static double[] of(List<Row> rows, Function<Row, Double> value) {
        return rows.stream().mapToDouble(value::apply).toArray();
    }

    private static double upper(Row row) {
        return row.failed() ? row.upper() : Double.POSITIVE_INFINITY;
    }

    private static CovariateLives lives(List<Row> rows) {
        return CovariateLives.of(
                        of(rows, r -> (double) r.entry()),
                        of(rows, r -> (double) r.lower()),
                        of(rows, NamedAnswersTest::upper),
                        of(rows, r -> 1.0))
                .withColumn("x", of(rows, Row::x));
    }

    private static CoxSample cox(List<Row> rows) {
        List<Row> watched =
                rows.stream().filter(r -> r.lower() > r.entry() || r.failed()).toList();
        boolean[] failed = new boolean[watched.size()];
        double[][] x = new double[watched.size()][];
        for (int i = 0; i < failed.length; i++) {
            failed[i] = watched.get(i).failed();
            x[i] = new double[] {watched.get(i).x()};
        }
        return CoxSample.of(
                List.of("x"),
                of(watched, r -> (double) r.entry()),
                of(watched, r -> r.failed() ? (r.lower() + r.upper()) / 2.0 : r.lower()),
                failed,
                x);
    }

    private static LifeSets sets(List<Row> rows) {
        return LifeSets.of(
                List.of("x"),
                rows.stream()
                        .map(r -> List.of(new SetMember(r.entry(), r.lower(), upper(r), List.of(r.x()))))
                        .toList());
    }

    private static MaskedSample<String> masked(List<Row> rows) {
        return MaskedSample.of(
                List.of("battery", "damage"),
                rows.stream()
                        .map(r -> new MaskedLife<>(
                                r.entry(),
                                r.lower(),
                                upper(r),
                                r.failed() ? Set.of("battery", "damage") : Set.<String>of(),
                                1))
                        .toList());
    }

    private static List<SeasonLife> seasons(List<Row> rows) {
        ColdMonths always = ColdMonths.of(Month.values());
        return rows.stream()
                .map(r -> new SeasonLife(r.life(), LocalDate.of(2020, 1, 1), always, ""))
                .toList();
    }

    /** Input, estimator, answer. */
    private static final List<List<Object>> ANSWERS = List.of(
            List.of("no failures", "Weibull", FitStatus.NO_FAILURES),
            List.of("no failures", "piecewise-exponential", FitStatus.NO_FAILURES),
            List.of("no failures", "regression", FitStatus.NO_FAILURES),
            List.of("no failures", "Cox", FitStatus.NO_FAILURES),
            List.of("no failures", "frailty", FitStatus.NO_FAILURES),
            List.of("no failures", "causes", FitStatus.NO_FAILURES),
            List.of("no failures", "season", FitStatus.NO_FAILURES),
            List.of("no failures", "two hazards", FitStatus.NO_FAILURES),
            List.of("no failures", "common shape", FitStatus.NO_FAILURES),
            List.of("no failures from new", "incidence", FitStatus.NO_FAILURES),
            // No failure is news too: the life is longer than the prior held likely.
            List.of("no failures", "declared prior", FitStatus.CONVERGED),
            // Without a failure the curve is 1 as far as anybody was watched: an answer.
            List.of("no failures", "curve", FitStatus.CONVERGED),
            List.of("one failure", "Weibull", FitStatus.ONE_FAILURE),
            List.of("one failure", "piecewise-exponential", FitStatus.CONVERGED),
            List.of("one failure", "regression", FitStatus.ONE_FAILURE),
            List.of("one failure", "frailty", FitStatus.ONE_FAILURE),
            List.of("one failure", "season", FitStatus.ONE_FAILURE),
            List.of("one failure", "causes", FitStatus.ALL_CAUSES_UNKNOWN),
            List.of("one failure", "two hazards", FitStatus.ONE_FAILURE),
            List.of("one failure", "common shape", FitStatus.ONE_FAILURE),
            List.of("one failure", "declared prior", FitStatus.CONVERGED),
            // It had the lower value of two: along the column its chance only rises.
            List.of("one failure", "incidence", FitStatus.SEPARATED_COLUMN),
            List.of("three failures", "two hazards", FitStatus.TOO_FEW_FAILURES),
            List.of("empty windows", "Weibull", FitStatus.EMPTY_WINDOWS),
            List.of("empty windows", "piecewise-exponential", FitStatus.EMPTY_WINDOWS),
            List.of("empty windows", "regression", FitStatus.EMPTY_WINDOWS),
            List.of("empty windows", "frailty", FitStatus.EMPTY_WINDOWS),
            List.of("empty windows", "two hazards", FitStatus.EMPTY_WINDOWS),
            List.of("empty windows", "common shape", FitStatus.EMPTY_WINDOWS),
            List.of("empty windows", "declared prior", FitStatus.EMPTY_WINDOWS),
            List.of("all failures at once", "Weibull", FitStatus.FLAT_LIKELIHOOD),
            List.of("all failures at once", "regression", FitStatus.FLAT_LIKELIHOOD),
            List.of("all failures at once", "two hazards", FitStatus.FLAT_LIKELIHOOD),
            List.of("all failures at once", "common shape", FitStatus.FLAT_LIKELIHOOD),
            List.of("all failures at once", "declared prior", FitStatus.CONVERGED),
            List.of("separated", "regression", FitStatus.SEPARATED_COLUMN),
            List.of("separated", "Cox", FitStatus.SEPARATED_COLUMN),
            List.of("separated", "frailty", FitStatus.SEPARATED_COLUMN),
            List.of("separated", "incidence", FitStatus.SEPARATED_COLUMN),
            List.of("constant column", "regression", FitStatus.COLLINEAR_COLUMN),
            List.of("constant column", "Cox", FitStatus.COLLINEAR_COLUMN),
            List.of("constant column", "frailty", FitStatus.COLLINEAR_COLUMN),
            List.of("constant column", "incidence", FitStatus.COLLINEAR_COLUMN),
            List.of("constant column", "season", FitStatus.COLLINEAR_COLUMN));

    @TestFactory
    Stream<DynamicTest> eachInputHasItsNamedAnswer() {
        return ANSWERS.stream()
                .map(a -> DynamicTest.dynamicTest(a.get(0) + ": " + a.get(1), () -> {
                    List<Row> rows = SHELF.get(a.get(0));
                    FitReport report = FITS.get(a.get(1)).apply(rows);
                    assertThat(report.status()).as(report.cause()).isEqualTo(a.get(2));
                    boolean blamed = report.status() == FitStatus.SEPARATED_COLUMN
                            || report.status() == FitStatus.COLLINEAR_COLUMN;
                    assertThat(report.column())
                            .isEqualTo(blamed ? a.get(1).equals("season") ? "cold months" : "x" : "");
                    assertThat(report.lives()).isEqualTo(rows.size());
                    assertThat(report.failures())
                            .isEqualTo(rows.stream().filter(Row::failed).count());
                    assertThat(report.exposure()).isCloseTo(sample(rows).exposure(), within(1e-9));
                }));
    }

    @TestFactory
    Stream<DynamicTest> withoutLivesEveryEstimatorSaysSo() {
        return FITS.entrySet().stream()
                .map(fit -> DynamicTest.dynamicTest(
                        fit.getKey(),
                        () -> assertThat(fit.getValue().apply(List.of()).status())
                                .isEqualTo(FitStatus.NO_LIVES)));
    }

    @Test
    void everyCodeOfARegressionOrACurveStandsInTheOneList() {
        List<String> codes = Stream.of(FitStatus.values()).map(FitStatus::name).toList();
        assertThat(codes)
                .containsAll(
                        Stream.of(RegressionStatus.values()).map(Enum::name).toList())
                .containsAll(
                        Stream.of(TurnbullFit.Status.values()).map(Enum::name).toList());
    }

    /** A fit that has an answer says how its search ended, with one scale for all. */
    @Test
    void whoeverConvergesStandsWhereTheLikelihoodIsLevel() {
        List<Row> rows = List.of(
                new Row(0, 200, 340, 0),
                new Row(50, 500, 640, 1),
                new Row(0, 420, 560, 1),
                new Row(0, 800, 900, 0),
                new Row(100, 610, 700, 1),
                new Row(0, 300, 420, 0),
                new Row(0, 900, NEVER, 1),
                new Row(0, 1000, NEVER, 0));
        for (String name : List.of(
                "Weibull",
                "common shape",
                "declared prior",
                "piecewise-exponential",
                "regression",
                "Cox",
                "incidence")) {
            FitReport report = FITS.get(name).apply(name.equals("incidence") ? fromNew(rows) : rows);
            assertThat(report.converged()).as(name + report.cause()).isTrue();
            assertThat(report.gradientNorm()).as(name).isLessThan(1e-6);
            assertThat(report.condition()).as(name).isBetween(1.0, 1e6);
            assertThat(report.iterations()).as(name).isPositive();
            assertThat(report.failures()).isEqualTo(6);
        }
    }

    private static List<Row> fromNew(List<Row> rows) {
        return rows.stream().map(r -> new Row(0, r.lower(), r.upper(), r.x())).toList();
    }

    /** Two hazards need more lives: a tenth fails early at any age, the others wear out from 2,400 days to 3,400. */
    @Test
    void twoHazardsStandWhereTheLikelihoodIsLevel() {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            int at = i % 10 == 0 ? 150 + 20 * i : 2400 + 10 * i;
            rows.add(new Row(0, at, at, 0));
        }
        FitReport report = FITS.get("two hazards").apply(rows);
        assertThat(report.converged()).as(report.cause()).isTrue();
        assertThat(report.gradientNorm()).isLessThan(1e-6);
        assertThat(report.condition()).isBetween(1.0, 1e6);
        assertThat(report.iterations()).isPositive();
    }
}
