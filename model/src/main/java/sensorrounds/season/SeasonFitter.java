package sensorrounds.season;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sensorrounds.numeric.ChiSquareTest;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.RatioPath;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.survival.Counted;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.FitStatus;

/**
 * The factor by which cold months multiply the hazard at every age, by maximum likelihood from interval-censored,
 * left-truncated lives, with likelihood-ratio limits: {@link SeasonLikelihood}. The hazard is constant within bands of age,
 * with a level for each stratum, so that places and classes that differ for other reasons are not compared. Bands hold about
 * equally many failures; where the data do not determine that many they are halved, and the fit says how many it used.
 */
public final class SeasonFitter {
    private static final double DAYS_A_YEAR = 365.25;
    private static final double LEAST_INFORMATION = 1e-6;
    /** A factor beyond this, or under one over it, is on its way to infinity. */
    private static final double MOST = Math.log(1000);

    private static final double TOLERANCE = 1e-6;
    private static final String COLUMN = "cold months";

    private final int mostBands;
    private final int failuresABand;

    private SeasonFitter(int mostBands, int failuresABand) {
        this.mostBands = mostBands;
        this.failuresABand = failuresABand;
    }

    /** Up to 6 bands of age with 10 failures or more each. */
    public static SeasonFitter withDefaults() {
        return new SeasonFitter(6, 10);
    }

    /** One hazard for all ages. */
    public static SeasonFitter withOneBand() {
        return new SeasonFitter(1, 1);
    }

    /** The fit; ask {@link SeasonFit#converged} before its factor. */
    public SeasonFit fit(Collection<SeasonLife> all) {
        Map<String, Double> failed = new TreeMap<>();
        all.stream()
                .filter(l -> l.life().failed())
                .forEach(l -> failed.merge(l.stratum(), l.life().weight(), Double::sum));
        Set<String> telling = failed.keySet();
        List<SeasonLife> lives =
                all.stream().filter(l -> telling.contains(l.stratum())).toList();
        double leftOut = weight(all) - weight(lives);
        double failures = failed.values().stream().mapToDouble(f -> f).sum();
        if (all.isEmpty()) {
            return refused(FitStatus.NO_LIVES, "there are no lives", "", all, leftOut);
        }
        if (!(failures > 0)) {
            return refused(FitStatus.NO_FAILURES, Counted.noFailures(weight(all)), "", all, leftOut);
        }
        if (failures <= 1) {
            return refused(
                    FitStatus.ONE_FAILURE,
                    "a single failure cannot tell the hazard and what the cold does to it",
                    "",
                    all,
                    leftOut);
        }
        List<String> strata = failed.entrySet().stream()
                .sorted(Map.Entry.<String, Double>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey)
                .collect(Collectors.toList());
        int bands = Math.max(1, Math.min(mostBands, (int) (failures / failuresABand)));
        SeasonFit fit = fit(new SeasonLikelihood(edges(lives, bands), lives, strata), all, strata.size(), leftOut);
        while (!fit.converged() && lessMayDo(fit.report().status()) && bands > 1) {
            bands /= 2;
            fit = fit(new SeasonLikelihood(edges(lives, bands), lives, strata), all, strata.size(), leftOut);
        }
        return fit;
    }

    private static boolean lessMayDo(FitStatus status) {
        return status == FitStatus.FLAT_LIKELIHOOD || status == FitStatus.NOT_CONVERGED;
    }

    /** Ages between bands, 0 first and infinity last: quantiles of the middles of failure intervals. */
    private static double[] edges(List<SeasonLife> lives, int bands) {
        double[] middles = lives.stream()
                .filter(l -> l.life().failed())
                .mapToDouble(
                        l -> Math.rint((l.life().lower() + (double) l.life().upper()) / 2))
                .sorted()
                .toArray();
        double[] edges = new double[bands + 1];
        for (int j = 1; j < bands; j++) {
            edges[j] = middles[(int) ((long) j * middles.length / bands)];
        }
        edges[bands] = Double.POSITIVE_INFINITY;
        return Arrays.stream(edges).distinct().toArray();
    }

    private static double weight(Collection<SeasonLife> lives) {
        return lives.stream().mapToDouble(l -> l.life().weight()).sum();
    }

    private static double failures(Collection<SeasonLife> lives) {
        return weight(lives.stream().filter(l -> l.life().failed()).toList());
    }

    private static double exposure(Collection<SeasonLife> lives) {
        return lives.stream()
                .mapToDouble(l -> l.life().weight()
                        * ((l.life().failed()
                                        ? (l.life().lower() + (double) l.life().upper()) / 2
                                        : l.life().lower())
                                - l.life().entry()))
                .sum();
    }

    private static SeasonFit refused(
            FitStatus status, String cause, String column, Collection<SeasonLife> all, double leftOut) {
        return SeasonFit.failed(
                FitReport.refused(status, cause, column, weight(all), failures(all), exposure(all)), leftOut);
    }

    private static SeasonFit fit(SeasonLikelihood likelihood, Collection<SeasonLife> all, int strata, double leftOut) {
        double[] days = likelihood.exposure();
        boolean[] possible = likelihood.possible();
        if (!(days[0] > 0 && days[1] > 0)) {
            return refused(
                    FitStatus.COLLINEAR_COLUMN,
                    (days[1] > 0 ? "every month" : "no month")
                            + " in which sensors were watched is cold, so that nothing can be compared",
                    COLUMN,
                    all,
                    leftOut);
        }
        if (!(possible[0] && possible[1])) {
            return refused(
                    FitStatus.SEPARATED_COLUMN,
                    "no failure can have fallen in " + (possible[1] ? "other" : "cold")
                            + " months, so that the factor has no finite estimate",
                    COLUMN,
                    all,
                    leftOut);
        }
        int n = likelihood.parameters();
        double[] start = new double[n];
        Arrays.fill(start, 0, likelihood.bands(), Math.log(failures(all) / (days[0] + days[1])));
        Maximum maximum = NewtonMaximizer.withDefaults().maximize(inside(likelihood), start);
        double[] point = maximum.point();
        Objective.Evaluation at = likelihood.at(point);
        double[][] information = negated(at.hessian());
        Optional<double[][]> inverse = PositiveDefinite.of(information).map(PositiveDefinite::inverse);
        double gradient = Arrays.stream(at.gradient()).map(Math::abs).max().orElse(0) / failures(all);
        double condition = inverse.map(v -> PositiveDefinite.oneNorm(v) * PositiveDefinite.oneNorm(information))
                .orElse(Double.POSITIVE_INFINITY);
        Searched searched = new Searched(all, maximum.iterations(), gradient, condition);
        if (Math.abs(point[n - 1]) > 0.9 * MOST) {
            return searched.failed(
                    FitStatus.SEPARATED_COLUMN,
                    "every failure may have fallen in "
                            + (point[n - 1] > 0 ? "cold" : "other")
                            + " months, and the likelihood rises without end that way",
                    leftOut);
        }
        boolean flat = inverse.map(
                        v -> 1 / PositiveDefinite.oneNorm(v) < LEAST_INFORMATION * Math.min(1, failures(all)))
                .orElse(true);
        if (flat) {
            return searched.failed(
                    FitStatus.FLAT_LIKELIHOOD,
                    "the likelihood does not determine the hazard of " + likelihood.bands() + " bands of age, of "
                            + strata + " groups and of the cold at once",
                    leftOut);
        }
        if (maximum.outcome() != Maximum.Outcome.CONVERGED) {
            return searched.failed(
                    FitStatus.NOT_CONVERGED,
                    "the search ended with " + maximum.outcome() + " after " + maximum.iterations() + " steps",
                    leftOut);
        }
        double[] fell = likelihood.failures(point);
        return new SeasonFit(
                searched.report(FitStatus.CONVERGED, "", ""),
                factor(likelihood, point, at.value(), Math.sqrt(inverse.get()[n - 1][n - 1])),
                new ChiSquareTest(2 * (at.value() - without(likelihood, point)), 1).pValue(),
                at.value(),
                likelihood.bands(),
                strata,
                leftOut,
                fell[1],
                fell[0],
                days[1] / DAYS_A_YEAR,
                days[0] / DAYS_A_YEAR);
    }

    /** What a search says of itself, whatever came of it. */
    private record Searched(Collection<SeasonLife> all, int iterations, double gradient, double condition) {
        FitReport report(FitStatus status, String cause, String column) {
            return new FitReport(
                    status,
                    cause,
                    column,
                    weight(all),
                    SeasonFitter.failures(all),
                    exposure(all),
                    iterations,
                    gradient,
                    condition);
        }

        SeasonFit failed(FitStatus status, String cause, double leftOut) {
            String column = status == FitStatus.SEPARATED_COLUMN ? COLUMN : "";
            return SeasonFit.failed(report(status, cause, column), leftOut);
        }
    }

    /** NaN where the factor runs away, so that the search turns back. */
    private static Objective inside(SeasonLikelihood likelihood) {
        int n = likelihood.parameters();
        return point -> Math.abs(point[n - 1]) <= MOST
                ? likelihood.at(point)
                : new Objective.Evaluation(Double.NaN, new double[n], new double[n][n]);
    }

    /** The factor with limits where twice the log-likelihood has fallen by the quantile of chi-square. */
    private static Estimate factor(SeasonLikelihood likelihood, double[] point, double most, double error) {
        int last = point.length - 1;
        double z = StandardNormal.quantile(0.975);
        RatioPath path = new RatioPath(
                (offset, others) -> {
                    Maximum held = held(likelihood, point[last] + offset, others);
                    if (held.outcome() != Maximum.Outcome.CONVERGED) {
                        return Double.NaN;
                    }
                    System.arraycopy(held.point(), 0, others, 0, last);
                    return Math.sqrt(Math.max(0, 2 * (most - held.at().value())));
                },
                z,
                TOLERANCE);
        double[] others = Arrays.copyOf(point, last);
        double step = Math.min(1, z * error);
        return new Estimate(
                Math.exp(point[last]),
                Math.exp(point[last] + path.limit(others, -step, 2 * MOST)),
                Math.exp(point[last] + path.limit(others, step, 2 * MOST)));
    }

    private static double without(SeasonLikelihood likelihood, double[] point) {
        Maximum held = held(likelihood, 0, Arrays.copyOf(point, point.length - 1));
        return held.outcome() == Maximum.Outcome.CONVERGED ? held.at().value() : Double.NaN;
    }

    /** The maximum over all else with the log of the factor held. */
    private static Maximum held(SeasonLikelihood likelihood, double logFactor, double[] others) {
        int last = likelihood.parameters() - 1;
        return NewtonMaximizer.withDefaults()
                .maximize(
                        point -> {
                            double[] whole = Arrays.copyOf(point, last + 1);
                            whole[last] = logFactor;
                            Objective.Evaluation at = likelihood.at(whole);
                            double[][] hessian = new double[last][];
                            Arrays.setAll(hessian, i -> Arrays.copyOf(at.hessian()[i], last));
                            return new Objective.Evaluation(at.value(), Arrays.copyOf(at.gradient(), last), hessian);
                        },
                        others);
    }

    private static double[][] negated(double[][] hessian) {
        double[][] information = new double[hessian.length][];
        Arrays.setAll(information, i -> Arrays.stream(hessian[i]).map(h -> -h).toArray());
        return information;
    }
}
