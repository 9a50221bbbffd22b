package sensorrounds.survival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.StandardNormal;

/**
 * A hazard that is constant within bands of ages, by maximum likelihood given alive at entry, for any mix of exact,
 * right-, left- and interval-censored lives. With exact ages the rate of a band is failures over time at risk, its log
 * with variance 1 / failures; with intervals, EM steps and then Newton's method on the log rates. A band where the
 * likelihood wants no failures has rate 0 and the upper limit of a Poisson count of 0 (Garwood 1936, Biometrika
 * 28:437-442). Last bands that only failures reach are merged into the one before, as the fit's bands show. Source: Friedman (1982), Ann. Statist. 10:101-113.
 */
public final class PiecewiseExponentialFitter {
    private static final int EM_STEPS = 100;
    private static final double STANDS_STILL = 1e-4;
    private static final int ROUNDS = 20;
    /** Fewer expected failures than this share of all are none; what is dropped wrongly is taken back. */
    private static final double NEXT_TO_NONE = 1e-7;

    private static final double LEAST_INFORMATION = 1e-6;

    private final double[] edges;
    private final double level;

    private PiecewiseExponentialFitter(double[] edges, double level) {
        this.edges = edges;
        this.level = level;
    }

    /**
     * Bands between these ages, the first from 0, the last without end; limits at 95 %.
     *
     * @param between ascending, above 0, in the sample's unit of time; none for one band
     */
    public static PiecewiseExponentialFitter withBands(double... between) {
        double[] edges = new double[between.length + 2];
        System.arraycopy(between, 0, edges, 1, between.length);
        edges[edges.length - 1] = Double.POSITIVE_INFINITY;
        for (int i = 1; i < edges.length; i++) {
            if (!(edges[i] > edges[i - 1])) {
                throw new IllegalArgumentException(
                        "bands need ascending finite ages above 0, not " + Arrays.toString(between));
            }
        }
        return new PiecewiseExponentialFitter(edges, 0.95);
    }

    /** Coverage of the limits, in (0, 1). */
    public PiecewiseExponentialFitter withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + newLevel);
        }
        return new PiecewiseExponentialFitter(edges, newLevel);
    }

    /** The fit; ask {@link PiecewiseExponentialFit#converged} before its bands. */
    public PiecewiseExponentialFit fit(LifetimeSample sample) {
        if (!(sample.lives() > 0)) {
            return refused(sample, FitStatus.NO_LIVES, "there are no lives");
        }
        if (!(sample.exposure() > 0)) {
            return refused(sample, FitStatus.EMPTY_WINDOWS, Counted.emptyWindows(sample.lives()));
        }
        if (!(sample.failures() > 0)) {
            return refused(sample, FitStatus.NO_FAILURES, Counted.noFailures(sample.lives()));
        }
        BandLikelihood likelihood = merged(sample);
        double[] survived = likelihood.survived();
        double[] doubt = likelihood.inDoubt();
        int n = likelihood.bands();
        double[] rates = new double[n];
        double start = sample.failures() / Math.max(sample.exposure(), Double.MIN_NORMAL);
        Arrays.setAll(rates, j -> survived[j] + doubt[j] > 0 ? start : 0);
        if (sample.exactFailures()) {
            double[][] exact = likelihood.expected(rates);
            Arrays.setAll(rates, j -> exact[0][j] > 0 ? exact[0][j] / exact[1][j] : 0);
            return judged(sample, likelihood, rates, 0, Maximum.Outcome.CONVERGED);
        }
        int steps = 0;
        Maximum.Outcome outcome = Maximum.Outcome.NO_PROGRESS;
        for (int round = 0; round < ROUNDS; round++) {
            climb(likelihood, rates, sample.failures());
            int[] free = IntStream.range(0, n).filter(j -> rates[j] > 0).toArray();
            Maximum maximum = NewtonMaximizer.withDefaults()
                    .maximize(
                            objective(likelihood, rates.clone(), free),
                            Arrays.stream(free)
                                    .mapToDouble(j -> Math.log(rates[j]))
                                    .toArray());
            for (int i = 0; i < free.length; i++) {
                rates[free[i]] = Math.exp(maximum.point()[i]);
            }
            steps += maximum.iterations();
            outcome = maximum.outcome();
            if (!dropped(likelihood, rates, sample.failures())
                    && outcome == Maximum.Outcome.CONVERGED
                    && !takenBack(likelihood, rates, survived, doubt)) {
                break;
            }
        }
        return judged(sample, likelihood, rates, steps, outcome);
    }

    /** Where only failures reach the last bands, no hazard there is too high: they are merged into the one before. */
    private BandLikelihood merged(LifetimeSample sample) {
        double[] kept = edges;
        BandLikelihood likelihood = new BandLikelihood(kept, sample);
        for (int last = kept.length - 2; last > 0; last--) {
            if (kept[last] < sample.lastAge() && likelihood.survived()[last] > 0) {
                break;
            }
            if (kept[last] < sample.lastAge()) {
                int place = last;
                double[] before = kept;
                kept = IntStream.range(0, before.length)
                        .filter(i -> i != place)
                        .mapToDouble(i -> before[i])
                        .toArray();
                likelihood = new BandLikelihood(kept, sample);
            }
        }
        return likelihood;
    }

    /** EM steps; bands that come down to next to no failures are set to 0. */
    private static void climb(BandLikelihood likelihood, double[] rates, double failures) {
        for (int step = 0; step < EM_STEPS; step++) {
            double[][] expected = likelihood.expected(rates);
            double moved = 0;
            for (int j = 0; j < rates.length; j++) {
                double rate = expected[0][j] > NEXT_TO_NONE * failures ? expected[0][j] / expected[1][j] : 0;
                moved = Math.max(moved, rates[j] > 0 ? Math.abs(rate / rates[j] - 1) : rate);
                rates[j] = rate;
            }
            // A rate on its way to 0 keeps falling by the same share; when all stand still none is.
            if (moved < STANDS_STILL) {
                return;
            }
        }
    }

    /** Sets bands to 0 whose log rate Newton's method has sent on its way to minus infinity. */
    private static boolean dropped(BandLikelihood likelihood, double[] rates, double failures) {
        double[] expected = likelihood.expected(rates)[0];
        boolean any = false;
        for (int j = 0; j < rates.length; j++) {
            if (rates[j] > 0 && !(expected[j] > NEXT_TO_NONE * failures)) {
                rates[j] = 0;
                any = true;
            }
        }
        return any;
    }

    /** Whether the likelihood rises from 0 in a band at rate 0, which then gets a small rate again. */
    private static boolean takenBack(BandLikelihood likelihood, double[] rates, double[] survived, double[] doubt) {
        boolean any = false;
        for (int j = 0; j < rates.length; j++) {
            if (rates[j] == 0 && doubt[j] > 0) {
                double[] tried = rates.clone();
                tried[j] = 1e-9 / (survived[j] + doubt[j]);
                // d/d log r = r d/dr: its sign at a rate next to 0.
                if (likelihood.at(tried).gradient()[j] > 1e-7 * tried[j] * (survived[j] + doubt[j])) {
                    rates[j] = 1e-3 / (survived[j] + doubt[j]);
                    any = true;
                }
            }
        }
        return any;
    }

    private static Objective objective(BandLikelihood likelihood, double[] all, int[] free) {
        return point -> {
            for (int i = 0; i < free.length; i++) {
                all[free[i]] = Math.exp(point[i]);
            }
            Objective.Evaluation at = likelihood.at(all);
            double[] gradient = new double[free.length];
            double[][] hessian = new double[free.length][free.length];
            for (int i = 0; i < free.length; i++) {
                gradient[i] = at.gradient()[free[i]];
                for (int j = 0; j < free.length; j++) {
                    hessian[i][j] = at.hessian()[free[i]][free[j]];
                }
            }
            return new Objective.Evaluation(at.value(), gradient, hessian);
        };
    }

    /** Band with the largest variance; where there is none, with the largest rate. */
    private static int loosest(double[] rates, Optional<double[][]> inverse) {
        return IntStream.range(0, rates.length)
                .filter(j -> rates[j] > 0)
                .boxed()
                .max(java.util.Comparator.comparingDouble(
                        j -> inverse.map(v -> v[j][j]).orElse(rates[j])))
                .orElse(0);
    }

    private PiecewiseExponentialFit judged(
            LifetimeSample sample, BandLikelihood likelihood, double[] rates, int steps, Maximum.Outcome outcome) {
        int n = rates.length;
        Objective.Evaluation at = likelihood.at(rates);
        double[][] information = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                // A band at 0 has no variance of its log; its limit comes from its time at risk.
                information[i][j] = rates[i] > 0 && rates[j] > 0 ? -at.hessian()[i][j] : i == j ? 1 : 0;
            }
        }
        Optional<double[][]> inverse = PositiveDefinite.of(information).map(PositiveDefinite::inverse);
        boolean flat = inverse.map(
                        v -> 1 / PositiveDefinite.oneNorm(v) < LEAST_INFORMATION * Math.min(1, sample.failures()))
                .orElse(true);
        double condition = inverse.map(v -> PositiveDefinite.oneNorm(v) * PositiveDefinite.oneNorm(information))
                .orElse(Double.POSITIVE_INFINITY);
        double gradient = 0;
        for (int j = 0; j < n; j++) {
            gradient = Math.max(gradient, rates[j] > 0 ? Math.abs(at.gradient()[j]) / sample.failures() : 0);
        }
        Ended ended = new Ended(sample, steps, gradient, condition);
        if (flat) {
            return ended.failed(
                    FitStatus.FLAT_LIKELIHOOD,
                    "the likelihood does not determine the hazard from age " + likelihood.edge(loosest(rates, inverse))
                            + " to "
                            + likelihood.edge(loosest(rates, inverse) + 1)
                            + ": failure intervals that always span the same"
                            + " bands, or a band that nobody was seen to survive a part of, are the usual cause; take"
                            + " fewer bands");
        }
        if (outcome != Maximum.Outcome.CONVERGED) {
            return ended.failed(
                    FitStatus.NOT_CONVERGED, "the search ended with " + outcome + " after " + steps + " steps");
        }
        double z = StandardNormal.quantile((1 + level) / 2);
        double[][] expected = likelihood.expected(rates);
        double[][] covariance = inverse.get();
        double[] survived = likelihood.survived();
        List<HazardBand> bands = new ArrayList<>();
        for (int j = 0; j < n; j++) {
            Estimate rate;
            if (!(expected[1][j] > 0)) {
                rate = new Estimate(Double.NaN, Double.NaN, Double.NaN);
            } else if (rates[j] > 0) {
                double factor = Math.exp(z * Math.sqrt(covariance[j][j]));
                rate = new Estimate(rates[j], rates[j] / factor, rates[j] * factor);
            } else {
                covariance[j][j] = 0;
                rate = new Estimate(0, 0, -Math.log((1 - level) / 2) / survived[j]);
            }
            bands.add(new HazardBand(likelihood.edge(j), likelihood.edge(j + 1), rate, survived[j], expected[0][j]));
        }
        return new PiecewiseExponentialFit(
                ended.report(FitStatus.CONVERGED, ""), List.copyOf(bands), covariance, at.value(), sample.lastAge(), z);
    }

    private static PiecewiseExponentialFit refused(LifetimeSample sample, FitStatus status, String cause) {
        return new Ended(sample, 0, Double.NaN, Double.NaN).failed(status, cause);
    }

    /** Where a search ended. */
    private record Ended(LifetimeSample sample, int steps, double gradient, double condition) {
        FitReport report(FitStatus status, String cause) {
            return FitReport.of(sample, status, cause, steps, gradient, condition);
        }

        PiecewiseExponentialFit failed(FitStatus status, String cause) {
            return PiecewiseExponentialFit.failed(report(status, cause));
        }
    }
}
