package sensorrounds.regression;

import sensorrounds.numeric.LogSpace;
import sensorrounds.survival.LogLifeLaw;

/**
 * {@link LifeKernel} of any law: w (log(S(lower) - S(upper)) - log S(entry)), or w (log f(t) - log S(entry)) for an exact
 * age, f being the density of T. With z = shape (log t - m), derivatives follow from dz = (-shape, z) and d2z = (0,
 * -shape, z). Sources: Klein and Moeschberger (2003), Survival Analysis, 3.5; Meeker and Escobar (1998), 8.1 and 11.6.
 */
record LawKernel(LogLifeLaw law) implements LifeKernel {
    @Override
    public void at(double logEntry, double logLower, double logUpper, double m, double k, double[] answer) {
        java.util.Arrays.fill(answer, 0);
        double shape = Math.exp(k);
        if (logLower == logUpper) {
            double z = shape * (logLower - m);
            answer[VALUE] = law.logDensity(z) + k - logLower;
            answer[K] = 1;
            chain(answer, z, shape, law.logDensitySlope(z), law.logDensityCurvature(z));
        } else {
            interval(answer, 1, logLower, logUpper, m, shape);
        }
        if (logEntry > Double.NEGATIVE_INFINITY) {
            interval(answer, -1, logEntry, Double.POSITIVE_INFINITY, m, shape);
        }
    }

    /** Adds a function of z with these derivatives in z. */
    private static void chain(double[] answer, double z, double shape, double first, double second) {
        answer[M] -= first * shape;
        answer[K] += first * z;
        answer[MM] += second * shape * shape;
        answer[MK] -= shape * (second * z + first);
        answer[KK] += z * (second * z + first);
    }

    /** Adds sign times log(S(a) - S(b)); ratios to that probability are taken in logarithms. */
    private void interval(double[] answer, double sign, double from, double to, double m, double shape) {
        double a = shape * (from - m);
        double b = shape * (to - m);
        boolean open = to == Double.POSITIVE_INFINITY;
        double logP = LogSpace.logDifference(
                from == Double.NEGATIVE_INFINITY ? 0 : law.logSurvival(a),
                open ? Double.NEGATIVE_INFINITY : law.logSurvival(b));
        answer[VALUE] += sign * logP;
        double first = 0;
        double second = 0;
        double atLower = from == Double.NEGATIVE_INFINITY ? 0 : Math.exp(law.logDensity(a) - logP);
        double atUpper = open ? 0 : Math.exp(law.logDensity(b) - logP);
        // A density that underflowed adds nothing, while its slope may have overflowed.
        if (atLower > 0) {
            chain(answer, a, shape, -sign * atLower, -sign * atLower * law.logDensitySlope(a));
            first += atLower * shape;
            second -= atLower * a;
        }
        if (atUpper > 0) {
            chain(answer, b, shape, sign * atUpper, sign * atUpper * law.logDensitySlope(b));
            first -= atUpper * shape;
            second += atUpper * b;
        }
        // d2 log P = d2P / P - (dP / P)(dP / P)'
        answer[MM] -= sign * first * first;
        answer[MK] -= sign * first * second;
        answer[KK] -= sign * second * second;
    }
}
