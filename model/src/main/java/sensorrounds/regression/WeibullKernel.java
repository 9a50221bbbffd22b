package sensorrounds.regression;

/**
 * {@link LifeKernel} of the Weibull law in a few exponentials: with H = e^z the cumulative hazard, a life adds -(H(lower)
 * - H(entry)) + log(1 - exp(-D)), D = H(upper) - H(lower), or the log hazard in place of the last term for an exact age.
 */
final class WeibullKernel implements LifeKernel {
    @Override
    public void at(double logEntry, double logLower, double logUpper, double m, double k, double[] answer) {
        double shape = Math.exp(k);
        double h = 0;
        double zh = 0;
        double zzh = 0;
        double zLower = shape * (logLower - m);
        double hLower = 0;
        if (logLower > Double.NEGATIVE_INFINITY) {
            hLower = Math.exp(zLower);
            h = hLower;
            zh = zLower * hLower;
            zzh = zLower * zh;
        }
        double zhLower = zh;
        double zzhLower = zzh;
        if (logEntry == logLower) {
            h = 0;
            zh = 0;
            zzh = 0;
        } else if (logEntry > Double.NEGATIVE_INFINITY) {
            double z = shape * (logEntry - m);
            double e = Math.exp(z);
            h -= e;
            zh -= z * e;
            zzh -= z * z * e;
        }
        // Survived: minus H(lower) + H(entry), whose derivatives are those of H = exp(z).
        answer[VALUE] = -h;
        answer[M] = shape * h;
        answer[K] = -zh;
        answer[MM] = -shape * shape * h;
        answer[MK] = shape * (zh + h);
        answer[KK] = -zzh - zh;
        if (logUpper == logLower) {
            answer[VALUE] += zLower + k - logLower;
            answer[M] -= shape;
            answer[K] += zLower + 1;
            answer[MK] -= shape;
            answer[KK] += zLower;
        } else if (logUpper < Double.POSITIVE_INFINITY) {
            double z = shape * (logUpper - m);
            double e = Math.exp(z);
            double d = hLower > 0 ? hLower * expm1(z - zLower) : e;
            double dk = z * e - zhLower;
            double dkk = z * z * e - zzhLower + dk;
            double grown = expm1(d);
            double r = 1 / grown;
            // log(1 - exp(-D)); beyond 40 it is 0 to the last bit, and exp(D) may overflow.
            answer[VALUE] += d > 40 ? -Math.exp(-d) : Math.log(grown / (1 + grown));
            // d/dD = r = 1 / (exp(D) - 1), d2/dD2 = -r (1 + r).
            double curvature = -r * (1 + r);
            double dm = -shape * d;
            answer[M] += r * dm;
            answer[K] += r * dk;
            answer[MM] += r * shape * shape * d + curvature * dm * dm;
            answer[MK] += -r * shape * (d + dk) + curvature * dm * dk;
            answer[KK] += r * dkk + curvature * dk * dk;
        }
    }

    /** e^x - 1 for x >= 0: a short series where subtracting would lose digits, quicker than the library's. */
    private static double expm1(double x) {
        if (x > 0.35) {
            return Math.exp(x) - 1;
        }
        double sum = 1;
        for (int n = 13; n >= 2; n--) {
            sum = 1 + sum * x / n;
        }
        return sum * x;
    }
}
