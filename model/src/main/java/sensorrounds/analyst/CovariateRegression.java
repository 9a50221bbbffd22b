package sensorrounds.analyst;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.analyst.CovariateDesign.Row;
import sensorrounds.cox.CoxFit;
import sensorrounds.cox.CoxFitter;
import sensorrounds.cox.CoxSample;
import sensorrounds.cox.ProportionalityCheck;
import sensorrounds.regression.Coefficient;
import sensorrounds.regression.CovariateLives;
import sensorrounds.regression.LifeFamily;
import sensorrounds.regression.LifeRegression;
import sensorrounds.regression.RegressionFit;
import sensorrounds.regression.RegressionStatus;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;

/**
 * Fits the factors of {@link CovariateDesign} all at once: accelerated failure time under the interval likelihood given
 * alive at entry, limits robust to likeness within vehicles, and Cox regression beside it as a check, failures at the
 * middle of their interval. A column that the data cannot carry takes its factor out, by name; one that others add
 * up to goes alone.
 */
final class CovariateRegression {
    /** Most lives to which the gamma family is fitted: its law has no closed form. */
    static final int GAMMA_LIVES = 5_000;

    /** The generalised gamma is left to the analyst's own fits: its search takes seconds, and often finds no maximum. */
    private static final List<LifeFamily> FAMILIES = List.of(
            LifeFamily.WEIBULL, LifeFamily.EXPONENTIAL, LifeFamily.LOGNORMAL, LifeFamily.LOGLOGISTIC, LifeFamily.GAMMA);

    private static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);
    private static final Estimate SAME = new Estimate(1, 1, 1);

    private final CovariateDesign design;

    CovariateRegression(CovariateDesign design) {
        this.design = design;
    }

    /** The covariates; after the fit those that it could carry. */
    CovariateDesign design() {
        return design;
    }

    /** @param fleet lives of the fleet, of which those of the design may be a draw */
    CovariateEffects fit(long fleet) {
        List<String> notes = new ArrayList<>();
        RegressionFit weibull = null;
        while (!design.columns().isEmpty()) {
            weibull = ofRecord().fit(lives(design));
            Optional<FactorLevel> blamed = weibull.column().flatMap(design::column);
            if (weibull.converged() || blamed.isEmpty()) {
                break;
            }
            if (weibull.status() == RegressionStatus.COLLINEAR_COLUMN
                    && !blamed.get().factor().numeric()) {
                design.alias(blamed.get());
            } else {
                design.drop(blamed.get().factor(), weibull.cause());
            }
        }
        notes.addAll(design.notes());
        if (design.columns().isEmpty()) {
            notes.add("nothing to compare: no factor has two levels with " + CovariateDesign.LEAST
                    + " failures each and enough failures beside");
            return new CovariateEffects(
                    List.of(),
                    List.of(),
                    design.rows().size(),
                    design.failures(),
                    design.rows().size(),
                    fleet,
                    new TreeMap<>(),
                    notes);
        }
        List<RegressionFit> families = families(weibull);
        double best = families.stream()
                .filter(RegressionFit::converged)
                .mapToDouble(RegressionFit::aic)
                .min()
                .orElse(Double.NaN);
        if (!weibull.converged()) {
            notes.add("no acceleration factors: " + weibull.cause());
        }
        Cox cox = Cox.of(design);
        notes.addAll(cox.notes);
        SortedMap<String, FitReport> reports = new TreeMap<>();
        families.forEach(f -> reports.put(reportOf(f), f.report()));
        reports.put("Cox regression on covariates", cox.report);
        RegressionFit front = families.stream()
                .filter(f -> f.converged() && f.aic() == best && f.family() != LifeFamily.WEIBULL)
                .findFirst()
                .orElse(null);
        List<CovariateEffect> effects = new ArrayList<>();
        for (FactorLevel level : design.levels()) {
            effects.add(effect(level, weibull, front, cox));
        }
        return new CovariateEffects(
                effects,
                families.stream()
                        .map(f -> FamilyFit.of(f, best))
                        .sorted(Comparator.comparingDouble(FamilyFit::aicAboveBest))
                        .toList(),
                design.rows().size(),
                design.failures(),
                design.rows().size(),
                fleet,
                reports,
                notes);
    }

    /** The fit of record: Weibull, errors by vehicle. */
    static LifeRegression ofRecord() {
        return regression(LifeFamily.WEIBULL);
    }

    /** Under what name a fit reports. */
    static String reportOf(RegressionFit fit) {
        return fit.family().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " regression on covariates";
    }

    private static LifeRegression regression(LifeFamily family) {
        return LifeRegression.of(family).with(LifeRegression.Errors.BY_CLUSTER);
    }

    private List<RegressionFit> families(RegressionFit weibull) {
        List<RegressionFit> fits = new ArrayList<>();
        CovariateLives lives = lives(design);
        for (LifeFamily family : FAMILIES) {
            if (family == LifeFamily.WEIBULL) {
                fits.add(weibull);
            } else if (family != LifeFamily.GAMMA || lives.size() <= GAMMA_LIVES) {
                fits.add(regression(family).fit(lives));
            }
        }
        return fits;
    }

    private static CovariateEffect effect(FactorLevel level, RegressionFit weibull, RegressionFit front, Cox cox) {
        boolean reference = level.reference();
        return new CovariateEffect(
                level.factor(),
                level.name(),
                reference,
                level.lives(),
                level.failures(),
                reference ? SAME : factor(weibull, level),
                front == null
                        ? Double.NaN
                        : reference ? 1 : factor(front, level).value(),
                reference ? SAME : cox.ratios.getOrDefault(level.column(), NONE),
                reference ? Double.NaN : cox.drift.getOrDefault(level.column(), Double.NaN));
    }

    static Estimate factor(RegressionFit fit, FactorLevel level) {
        if (!fit.converged()) {
            return NONE;
        }
        Coefficient c = fit.coefficient(Coefficient.Part.LOG_SCALE, level.column());
        return new Estimate(Math.exp(c.value()), Math.exp(c.lower()), Math.exp(c.upper()));
    }

    private static CovariateLives lives(CovariateDesign design) {
        List<Row> rows = design.rows();
        CovariateLives lives = CovariateLives.of(
                rows.stream().mapToDouble(r -> r.life().entry()).toArray(),
                rows.stream().mapToDouble(r -> r.life().lower()).toArray(),
                rows.stream()
                        .mapToDouble(r -> r.failed() ? r.life().upper() : Double.POSITIVE_INFINITY)
                        .toArray(),
                rows.stream().mapToDouble(r -> 1).toArray());
        for (FactorLevel column : design.columns()) {
            lives = lives.withColumn(column.column(), design.values(column));
        }
        return lives.withClusters(rows.stream().mapToInt(Row::vehicle).toArray());
    }

    /** The check by Cox regression: what it says of each column, or why it says nothing. */
    private record Cox(Map<String, Estimate> ratios, Map<String, Double> drift, FitReport report, List<String> notes) {
        static Cox of(CovariateDesign design) {
            List<Row> rows = design.rows();
            List<double[]> columns =
                    design.columns().stream().map(design::values).toList();
            double[][] covariates = new double[rows.size()][];
            for (int i = 0; i < rows.size(); i++) {
                int row = i;
                covariates[i] = columns.stream().mapToDouble(c -> c[row]).toArray();
            }
            boolean[] failed = new boolean[rows.size()];
            for (int i = 0; i < failed.length; i++) {
                failed[i] = rows.get(i).failed();
            }
            CoxFit fit = CoxFitter.withDefaults()
                    .fit(CoxSample.of(
                                    design.columns().stream()
                                            .map(FactorLevel::column)
                                            .toList(),
                                    rows.stream()
                                            .mapToDouble(r -> r.life().entry())
                                            .toArray(),
                                    rows.stream().mapToDouble(Cox::exit).toArray(),
                                    failed,
                                    covariates)
                            .withClusters(rows.stream().mapToInt(Row::vehicle).toArray()));
            if (!fit.converged()) {
                return new Cox(
                        Map.of(),
                        Map.of(),
                        fit.report(),
                        List.of("no hazard ratios by Cox regression: " + fit.cause()));
            }
            Map<String, Estimate> ratios = new HashMap<>();
            fit.coefficients().forEach(c -> ratios.put(c.column(), c.robustHazardRatio()));
            Map<String, Double> drift = new HashMap<>();
            ProportionalityCheck.withDefaults()
                    .of(fit)
                    .columns()
                    .forEach(c -> drift.put(c.column(), c.test().pValue()));
            return new Cox(ratios, drift, fit.report(), List.of());
        }

        /** Middle of the failure interval, or the age last known alive. */
        private static double exit(Row row) {
            return row.failed()
                    ? row.life().lower() + (row.life().upper() - row.life().lower()) / 2.0
                    : row.life().lower();
        }
    }
}
