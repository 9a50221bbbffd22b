package sensorrounds.survival;

import sensorrounds.numeric.LogSpace;
import sensorrounds.numeric.StandardNormal;

/**
 * Standardised law of W in log T = location + W / shape, by its log survival and log density. Likelihoods under any
 * mix of censoring and truncation need no more than these. Source: Meeker and Escobar (1998), Statistical Methods for
 * Reliability Data, 4.2-4.6.
 */
enum StandardLaw {
    /** Smallest extreme value: T is Weibull. */
    SMALLEST_EXTREME_VALUE {
        @Override
        double logSurvival(double z) {
            return -Math.exp(z);
        }

        @Override
        double logDensity(double z) {
            return z - Math.exp(z);
        }

        @Override
        double logDensitySlope(double z) {
            return -Math.expm1(z);
        }

        @Override
        double logDensityCurvature(double z) {
            return -Math.exp(z);
        }

        @Override
        double quantile(double p) {
            return Math.log(-Math.log1p(-p));
        }
    },
    /** Normal: T is lognormal. */
    NORMAL {
        @Override
        double logSurvival(double z) {
            return StandardNormal.logSurvival(z);
        }

        @Override
        double logDensity(double z) {
            return StandardNormal.logDensity(z);
        }

        @Override
        double logDensitySlope(double z) {
            return -z;
        }

        @Override
        double logDensityCurvature(double z) {
            return -1;
        }

        @Override
        double quantile(double p) {
            return StandardNormal.quantile(p);
        }
    },
    /** Logistic: T is loglogistic. */
    LOGISTIC {
        @Override
        double logSurvival(double z) {
            return -LogSpace.softplus(z);
        }

        @Override
        double logDensity(double z) {
            return z - 2 * LogSpace.softplus(z);
        }

        @Override
        double logDensitySlope(double z) {
            return -Math.tanh(z / 2);
        }

        @Override
        double logDensityCurvature(double z) {
            double tanh = Math.tanh(z / 2);
            return -(1 - tanh * tanh) / 2;
        }

        @Override
        double quantile(double p) {
            return Math.log(p) - Math.log1p(-p);
        }
    };

    /** log P(W > z). */
    abstract double logSurvival(double z);

    /** log of the density of W at z. */
    abstract double logDensity(double z);

    /** First derivative of {@link #logDensity}. */
    abstract double logDensitySlope(double z);

    /** Second derivative of {@link #logDensity}. */
    abstract double logDensityCurvature(double z);

    /** z with P(W <= z) = p. */
    abstract double quantile(double p);
}
