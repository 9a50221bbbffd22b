package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;

/**
 * 95 % limits of a Weibull law, each lower, then upper; NaN where there is none.
 *
 * @param shape limits of the shape
 * @param scaleDays limits of the scale, days
 */
record WeibullLimits(double[] shape, double[] scaleDays) {
    private static final double[] NAN = {Double.NaN, Double.NaN};

    static final WeibullLimits NONE = new WeibullLimits(NAN, NAN);

    /** Normal on the log scale. */
    static WeibullLimits normal(WeibullLife life) {
        return new WeibullLimits(life.shapeLimits(), life.scaleLimits());
    }

    /** Of a sample's own fit: by the likelihood ratio where its failures are few. */
    static WeibullLimits of(LifetimeSample sample, ParametricFit fit) {
        if (sample.failures() >= RatioLimits.FEW_FAILURES) {
            return normal(fit.life());
        }
        RatioLimits ratio = RatioLimits.of(sample, fit);
        return new WeibullLimits(finite(ratio.shape()), finite(ratio.scale()));
    }

    /** A limit of 0 or infinity is none. */
    private static double[] finite(Estimate e) {
        return new double[] {
            e.lower() > 0 ? e.lower() : Double.NaN, e.upper() < Double.POSITIVE_INFINITY ? e.upper() : Double.NaN
        };
    }

    /** Which of the limits of a law the failures do not set, in words; empty when they set all. */
    String open() {
        List<String> open = new ArrayList<>();
        name(open, shape, "shape");
        name(open, scaleDays, "scale");
        return open.isEmpty() ? "" : "the failures set no " + String.join(" and no ", open);
    }

    private static void name(List<String> open, double[] limits, String what) {
        if (Double.isNaN(limits[0])) {
            open.add("lower limit to the " + what);
        }
        if (Double.isNaN(limits[1])) {
            open.add("upper limit to the " + what);
        }
    }
}
