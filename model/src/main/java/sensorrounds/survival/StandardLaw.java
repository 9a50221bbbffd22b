package sensorrounds.survival;

import sensorrounds.numeric.LogSpace;
import sensorrounds.numeric.StandardNormal;

/** The standardised laws without a parameter of their own. Source: Meeker and Escobar (1998), 4.2-4.6. */
public enum StandardLaw implements LogLifeLaw {
    /** Smallest extreme value: T is Weibull. */
    SMALLEST_EXTREME_VALUE {
        @Override
        public double logSurvival(double z) {
            return -Math.exp(z);
        }

        @Override
        public double logDensity(double z) {
            return z - Math.exp(z);
        }

        @Override
        public double logDensitySlope(double z) {
            return -Math.expm1(z);
        }

        @Override
        public double logDensityCurvature(double z) {
            return -Math.exp(z);
        }

        @Override
        public double quantile(double p) {
            return Math.log(-Math.log1p(-p));
        }
    },
    /** Normal: T is lognormal. */
    NORMAL {
        @Override
        public double logSurvival(double z) {
            return StandardNormal.logSurvival(z);
        }

        @Override
        public double logDensity(double z) {
            return StandardNormal.logDensity(z);
        }

        @Override
        public double logDensitySlope(double z) {
            return -z;
        }

        @Override
        public double logDensityCurvature(double z) {
            return -1;
        }

        @Override
        public double quantile(double p) {
            return StandardNormal.quantile(p);
        }
    },
    /** Logistic: T is loglogistic. */
    LOGISTIC {
        @Override
        public double logSurvival(double z) {
            return -LogSpace.softplus(z);
        }

        @Override
        public double logDensity(double z) {
            return z - 2 * LogSpace.softplus(z);
        }

        @Override
        public double logDensitySlope(double z) {
            return -Math.tanh(z / 2);
        }

        @Override
        public double logDensityCurvature(double z) {
            double tanh = Math.tanh(z / 2);
            return -(1 - tanh * tanh) / 2;
        }

        @Override
        public double quantile(double p) {
            return Math.log(p) - Math.log1p(-p);
        }
    }
}
