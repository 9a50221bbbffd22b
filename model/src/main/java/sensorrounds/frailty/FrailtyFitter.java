package sensorrounds.frailty;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.regression.Coefficient;
import sensorrounds.regression.LifeFamily;
import sensorrounds.regression.LifeRegression;
import sensorrounds.regression.RegressionFit;
import sensorrounds.survival.Estimate;

/**
 * Shared gamma frailty: the sensors of a vehicle have the cumulative hazard w (t / scale)^shape, scale depending on
 * covariates, with a factor w common to the vehicle, gamma distributed over vehicles with mean 1. By maximum likelihood
 * given that every set was alive at its entries, under any mix of censoring; Newton's method on analytic derivatives.
 * Immutable settings; a fit that fails says so and gives no law.
 *
 * <p>Scale and shape describe a vehicle of frailty 1. The law of a sensor picked at random is S(t) = (1 + variance
 * H(t))^(-1/variance), which wears out less steeply: the weak die first.
 *
 * <p>Sources: Klein and Moeschberger (2003), Survival Analysis, ch. 13; Duchateau and Janssen (2008), The Frailty Model,
 * ch. 2 (from memory). Variance on its bound: Self and Liang (1987), JASA 82:605-610.
 */
public final class FrailtyFitter {
    /** A single vehicle with a failure among several lives would make any variance. */
    private static final int LEAST_SETS = 2;
    /** Under this the search for a variance has gone to 0. */
    private static final double NO_VARIANCE = 1e-6;

    private static final double[] STARTING_VARIANCES = {0.3, 2, 0.03};

    private final LifeFamily family;
    private final double level;

    private FrailtyFitter(LifeFamily family, double level) {
        this.family = family;
        this.level = level;
    }

    /** Weibull lives, limits at 95 %. */
    public static FrailtyFitter withDefaults() {
        return new FrailtyFitter(LifeFamily.WEIBULL, 0.95);
    }

    /** Weibull or exponential lives. */
    public FrailtyFitter with(LifeFamily newFamily) {
        if (newFamily != LifeFamily.WEIBULL && newFamily != LifeFamily.EXPONENTIAL) {
            throw new IllegalArgumentException(
                    "frailty acts on hazards in proportion, so the family must be WEIBULL or EXPONENTIAL, not "
                            + newFamily);
        }
        return new FrailtyFitter(newFamily, level);
    }

    /** Coverage of the limits, in (0, 1). */
    public FrailtyFitter withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + newLevel);
        }
        return new FrailtyFitter(family, newLevel);
    }

    /** The fit; ask {@link FrailtyFit#converged} before its law. */
    public FrailtyFit fit(LifeSets sets) {
        RegressionFit apart = LifeRegression.of(family).withLevel(level).fit(sets.apart());
        Outcome outcome = new Outcome(family, sets, apart, level);
        if (!apart.converged()) {
            return outcome.failed(FrailtyStatus.NO_LAW_WITHOUT_FRAILTY, apart.status() + ": " + apart.cause());
        }
        long telling = sets.vehicles().stream()
                .filter(set -> set.size() > 1 && set.stream().anyMatch(SetMember::failed))
                .count();
        if (telling < LEAST_SETS) {
            return outcome.failed(
                    FrailtyStatus.NO_SETS,
                    telling + " of " + sets.vehicles().size()
                            + " vehicles have two lives or more and a failure among them; at least " + LEAST_SETS
                            + " are needed to tell whether lives of one vehicle are alike");
        }
        FrailtyLikelihood likelihood = new FrailtyLikelihood(family, sets);
        double[] plain = likelihood.standardised(
                apart.coefficients().stream().mapToDouble(Coefficient::value).toArray());
        boolean rises = likelihood.slopeAtNone(plain) > 0;
        Maximum best = search(likelihood, plain, rises ? STARTING_VARIANCES : new double[] {1});
        double variance = Math.exp(best.point()[plain.length]);
        if (!rises && !(variance > NO_VARIANCE && best.at().value() > apart.logLikelihood())) {
            return outcome.noLikeness(new VarianceLimits(likelihood, quantile(), apart.logLikelihood()).ofNone(plain));
        }
        return judged(likelihood, best, outcome, apart.logLikelihood());
    }

    private double quantile() {
        return StandardNormal.quantile((1 + level) / 2);
    }

    private static Maximum search(FrailtyLikelihood likelihood, double[] plain, double[] variances) {
        Maximum best = null;
        for (double variance : variances) {
            double[] start = Arrays.copyOf(plain, plain.length + 1);
            start[plain.length] = Math.log(variance);
            best = NewtonMaximizer.withDefaults().maximize(likelihood::at, start);
            if (best.outcome() == Maximum.Outcome.CONVERGED && Math.exp(best.point()[plain.length]) > NO_VARIANCE) {
                return best;
            }
        }
        return best;
    }

    private FrailtyFit judged(FrailtyLikelihood likelihood, Maximum best, Outcome outcome, double apart) {
        int n = likelihood.parameters();
        // In units of z scale and shape are of one size, so that condition and gradient say something.
        double shape = likelihood.hasShape() ? Math.exp(best.point()[n - 2]) : 1;
        double[][] information = new double[n][n];
        double gradient = 0;
        for (int i = 0; i < n; i++) {
            double unit = i < likelihood.scales() ? shape : 1;
            gradient = Math.max(gradient, Math.abs(best.at().gradient()[i]) / unit / outcome.failures());
            for (int j = 0; j < n; j++) {
                information[i][j] = -best.at().hessian()[i][j] / unit / (j < likelihood.scales() ? shape : 1);
            }
        }
        Optional<double[][]> inverse = PositiveDefinite.of(information).map(PositiveDefinite::inverse);
        double condition = inverse.map(v -> PositiveDefinite.oneNorm(information) * PositiveDefinite.oneNorm(v))
                .orElse(Double.POSITIVE_INFINITY);
        Search search = new Search(best.iterations(), gradient, condition);
        double variance = Math.exp(best.point()[n - 1]);
        if (inverse.isEmpty() || variance > FrailtyLikelihood.MOST_VARIANCE / 10) {
            return outcome.failed(
                    FrailtyStatus.FLAT_LIKELIHOOD,
                    search,
                    "the likelihood has no finite maximum: the search went to a variance of " + variance
                            + "; failures that all fall on a few vehicles, all of whose sensors failed, are the usual"
                            + " cause");
        }
        if (best.outcome() != Maximum.Outcome.CONVERGED) {
            return outcome.failed(
                    FrailtyStatus.NOT_CONVERGED,
                    search,
                    "the search ended with " + best.outcome() + " after " + best.iterations()
                            + " steps at a variance of " + variance + ", scaled gradient " + gradient);
        }
        double[][] covariance = inverse.get();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                covariance[i][j] /= (i < likelihood.scales() ? shape : 1) * (j < likelihood.scales() ? shape : 1);
            }
        }
        VarianceLimits limits = new VarianceLimits(likelihood, quantile(), apart);
        return outcome.converged(
                search, likelihood, best, covariance, limits.of(best, Math.sqrt(covariance[n - 1][n - 1])));
    }

    /** Where a search ended. */
    record Search(int iterations, double gradientNorm, double condition) {
        static final Search NONE = new Search(0, Double.NaN, Double.NaN);
    }

    /** Writes down what came of a fit. */
    private record Outcome(LifeFamily family, LifeSets sets, RegressionFit apart, double level) {
        double failures() {
            return apart.failures();
        }

        FrailtyFit failed(FrailtyStatus status, String cause) {
            return failed(status, Search.NONE, cause);
        }

        FrailtyFit failed(FrailtyStatus status, Search search, String cause) {
            return new FrailtyFit(status, cause, sets.vehicles().size(), apart, search, null);
        }

        FrailtyFit noLikeness(Estimate variance) {
            double[] values = apart.coefficients().stream()
                    .mapToDouble(Coefficient::value)
                    .toArray();
            return new FrailtyFit(
                    FrailtyStatus.NO_LIKENESS,
                    "",
                    sets.vehicles().size(),
                    apart,
                    new Search(apart.iterations(), apart.gradientNorm(), apart.condition()),
                    new FrailtyFit.Solution(
                            apart.coefficients(),
                            apart.covariance(),
                            apart.logLikelihood(),
                            variance,
                            0,
                            law(values, 0)));
        }

        FrailtyFit converged(
                Search search, FrailtyLikelihood likelihood, Maximum best, double[][] standardised, Estimate variance) {
            double[][] t = likelihood.toOwnUnits();
            double[] own = times(t, best.point());
            own[0] += likelihood.centre();
            double[][] covariance = sandwich(t, standardised);
            double z = StandardNormal.quantile((1 + level) / 2);
            List<Coefficient> templates = apart.coefficients();
            List<Coefficient> coefficients = new java.util.ArrayList<>();
            for (int i = 0; i < templates.size(); i++) {
                double error = Math.sqrt(covariance[i][i]);
                coefficients.add(new Coefficient(
                        templates.get(i).part(),
                        templates.get(i).name(),
                        own[i],
                        error,
                        own[i] - z * error,
                        own[i] + z * error));
            }
            int last = own.length - 1;
            return new FrailtyFit(
                    FrailtyStatus.CONVERGED,
                    "",
                    sets.vehicles().size(),
                    apart,
                    search,
                    new FrailtyFit.Solution(
                            coefficients,
                            covariance,
                            best.at().value(),
                            variance,
                            Math.exp(own[last]) * Math.sqrt(covariance[last][last]),
                            law(own, Math.exp(own[last]))));
        }

        private FrailtyLaw law(double[] own, double variance) {
            int scales = sets.names().size() + 1;
            double shape = family == LifeFamily.WEIBULL ? Math.exp(own[scales]) : 1;
            return new FrailtyLaw(sets.names(), Arrays.copyOf(own, scales), shape, variance);
        }

        private static double[] times(double[][] a, double[] x) {
            double[] product = new double[a.length];
            for (int i = 0; i < a.length; i++) {
                for (int j = 0; j < x.length; j++) {
                    product[i] += a[i][j] * x[j];
                }
            }
            return product;
        }

        private static double[][] sandwich(double[][] t, double[][] v) {
            int n = t.length;
            double[][] left = new double[n][];
            for (int i = 0; i < n; i++) {
                left[i] = times(v, t[i]);
            }
            double[][] result = new double[n][n];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    for (int k = 0; k < n; k++) {
                        result[i][j] += t[i][k] * left[j][k];
                    }
                }
            }
            return result;
        }
    }
}
