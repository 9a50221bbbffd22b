package sensorrounds.frailty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sensorrounds.numeric.Objective;
import sensorrounds.regression.LifeFamily;

/**
 * Log-likelihood of shared gamma frailty given that every set was alive at its entries, with first and second
 * derivatives in (coefficients of log scale, log shape, log variance); the exponential family has no log shape. A vehicle
 * adds log E[prod P(life | w)] - log E[exp(-w A)], A being the sum of hazards at the entries.
 *
 * <p>Sources: Clayton (1978), Biometrika 65:141-151; Klein and Moeschberger (2003), Survival Analysis, 13.2-13.3; entry:
 * Jensen, Brookmeyer, Aaby and Andersen (2004), University of Copenhagen research report 04/1 (from memory). Derivatives
 * of the log of an integral are moments of those of its integrand: Louis (1982), JRSS B 44:226-233.
 */
final class FrailtyLikelihood {
    /** Beyond these a search has run away. */
    static final double LEAST_VARIANCE = 1e-9;

    static final double MOST_VARIANCE = 1e3;
    private static final double MAX_LOG_SCALE = 100;
    private static final double MAX_LOG_SHAPE = Math.log(1000);

    private final LifeFamily family;
    private final List<Member[]> vehicles = new ArrayList<>();
    private final double centre;
    private final double[] mean;
    private final double[] deviation;

    /** Centred log ages and standardised covariates, 1 first. */
    private record Member(double logEntry, double logLower, double logUpper, double[] v) {
        boolean exact() {
            return logLower == logUpper;
        }

        boolean interval() {
            return !exact() && logUpper < Double.POSITIVE_INFINITY;
        }
    }

    FrailtyLikelihood(LifeFamily family, LifeSets sets) {
        this.family = family;
        int p = sets.names().size();
        mean = new double[p];
        deviation = new double[p];
        List<SetMember> members = sets.vehicles().stream().flatMap(List::stream).toList();
        centre = members.stream()
                .filter(SetMember::failed)
                .mapToDouble(m -> Math.log(m.exit()))
                .average()
                .orElse(0);
        for (int j = 0; j < p; j++) {
            int place = j;
            mean[j] = members.stream()
                    .mapToDouble(m -> m.covariates().get(place))
                    .average()
                    .orElse(0);
            double square = members.stream()
                    .mapToDouble(m -> Math.pow(m.covariates().get(place) - mean[place], 2))
                    .average()
                    .orElse(0);
            deviation[j] = square > 0 ? Math.sqrt(square) : 1;
        }
        for (List<SetMember> set : sets.vehicles()) {
            vehicles.add(set.stream().map(this::standardised).toArray(Member[]::new));
        }
    }

    private Member standardised(SetMember m) {
        double[] v = new double[mean.length + 1];
        v[0] = 1;
        for (int j = 0; j < mean.length; j++) {
            v[j + 1] = (m.covariates().get(j) - mean[j]) / deviation[j];
        }
        return new Member(Math.log(m.entry()) - centre, Math.log(m.lower()) - centre, Math.log(m.upper()) - centre, v);
    }

    /** Parameters of log scale, the constant included. */
    int scales() {
        return mean.length + 1;
    }

    boolean hasShape() {
        return family == LifeFamily.WEIBULL;
    }

    /** Number of parameters; log variance is the last. */
    int parameters() {
        return scales() + (hasShape() ? 2 : 1);
    }

    /** Standardised parameters of coefficients in own units: constant, covariates, log shape if there is one. */
    double[] standardised(double[] own) {
        double[] point = Arrays.copyOf(own, parameters() - 1);
        point[0] -= centre;
        for (int j = 0; j < mean.length; j++) {
            point[0] += own[j + 1] * mean[j];
            point[j + 1] *= deviation[j];
        }
        return point;
    }

    /** Matrix that takes standardised parameters to own units, but for the centre of log time. */
    double[][] toOwnUnits() {
        int n = parameters();
        double[][] t = new double[n][n];
        for (int i = 0; i < n; i++) {
            t[i][i] = 1;
        }
        for (int j = 0; j < mean.length; j++) {
            t[j + 1][j + 1] = 1 / deviation[j];
            t[0][j + 1] = -mean[j] / deviation[j];
        }
        return t;
    }

    double centre() {
        return centre;
    }

    /** The log-likelihood; not finite beyond the bounds. */
    Objective.Evaluation at(double[] point) {
        int n = parameters();
        double logShape = hasShape() ? point[n - 2] : 0;
        double logVariance = point[n - 1];
        boolean within = Math.abs(point[0]) <= MAX_LOG_SCALE
                && Math.abs(logShape) <= MAX_LOG_SHAPE
                && logVariance >= Math.log(LEAST_VARIANCE)
                && logVariance <= Math.log(MOST_VARIANCE);
        if (!within) {
            return new Objective.Evaluation(Double.NaN, new double[n], new double[n][n]);
        }
        VehicleTerms terms = new VehicleTerms(scales(), hasShape(), Math.exp(logShape), Math.exp(-logVariance));
        for (Member[] set : vehicles) {
            terms.begin();
            for (Member life : set) {
                double logScale = 0;
                for (int j = 0; j < life.v.length; j++) {
                    logScale += point[j] * life.v[j];
                }
                terms.enter(life.logEntry, logScale, life.v);
                terms.survive(life.logLower, logScale, life.v);
                if (life.exact()) {
                    terms.failAt(life.logLower, logScale, centre, life.v);
                } else if (life.interval()) {
                    terms.failWithin(life.logLower, life.logUpper, logScale, life.v);
                }
            }
            terms.end();
        }
        return terms.total();
    }

    /**
     * Slope of the log-likelihood in the variance at variance 0, where frailty vanishes: half the sum over vehicles of
     * l'^2 + l'' - A^2, with l(w) the log-likelihood of the set at frailty w = 1. Source: Commenges and Andersen (1995),
     * Lifetime Data Anal. 1:145-156.
     *
     * @param point standardised parameters without log variance
     */
    double slopeAtNone(double[] point) {
        double shape = hasShape() ? Math.exp(point[point.length - 1]) : 1;
        HazardTerms h = new HazardTerms();
        double sum = 0;
        for (Member[] set : vehicles) {
            double entered = 0;
            double first = 0;
            double second = 0;
            for (Member life : set) {
                double logScale = 0;
                for (int j = 0; j < life.v.length; j++) {
                    logScale += point[j] * life.v[j];
                }
                h.at(life.logEntry, logScale, shape);
                entered += h.value;
                h.at(life.logLower, logScale, shape);
                first -= h.value;
                if (life.exact()) {
                    first += 1;
                    second -= 1;
                } else if (life.interval()) {
                    h.between(life.logLower, life.logUpper, logScale, shape);
                    double r = 1 / Math.expm1(h.value);
                    first += h.value * r;
                    second -= h.value * h.value * r * (1 + r);
                }
            }
            sum += first * first + second - entered * entered;
        }
        return sum / 2;
    }
}
