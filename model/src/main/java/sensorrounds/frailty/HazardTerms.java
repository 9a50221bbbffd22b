package sensorrounds.frailty;

/**
 * A cumulative hazard with its derivatives in m = log scale and k = log shape: with z = shape (log t - m), H = e^z, from
 * dz = (-shape, z) and d2z = (0, -shape, z).
 */
final class HazardTerms {
    double value;
    double m;
    double k;
    double mm;
    double mk;
    double kk;

    /** H at an age. */
    void at(double logAge, double logScale, double shape) {
        if (logAge == Double.NEGATIVE_INFINITY) {
            set(0, 0, 0, shape);
            return;
        }
        double z = shape * (logAge - logScale);
        double h = Math.exp(z);
        set(h, z * h, z * z * h, shape);
    }

    /** H at one age less H at an earlier one, with no digits lost where they are close. */
    void between(double logFrom, double logTo, double logScale, double shape) {
        if (logFrom == Double.NEGATIVE_INFINITY) {
            at(logTo, logScale, shape);
            return;
        }
        double z = shape * (logFrom - logScale);
        double gap = shape * (logTo - logFrom);
        double h = Math.exp(z);
        double d = h * Math.expm1(gap);
        double to = z + gap;
        set(d, to * d + gap * h, to * to * d + gap * (to + z) * h, shape);
    }

    /** From D, sum of z H, sum of z^2 H. */
    private void set(double d, double zd, double zzd, double shape) {
        value = d;
        m = -shape * d;
        k = zd;
        mm = shape * shape * d;
        mk = -shape * (d + zd);
        kk = zzd + zd;
    }
}
