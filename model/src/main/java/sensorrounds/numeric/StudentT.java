package sensorrounds.numeric;

import java.util.function.DoubleUnaryOperator;

/** Quantiles of Student's t law. */
public final class StudentT {
    private static final double FEW = 10;
    private static final int MAX_STEPS = 50;

    private StudentT() {}

    /**
     * t with P(T <= t) = p: from 10 degrees of freedom n on the expansion about the normal quantile to the fourth order, Abramowitz
     * and Stegun (1964), 26.7.5, within 0.01 % for p from .005 to .995. With fewer, which need not be whole, by the angle whose tangent
     * is t / sqrt(n): its density is proportional to cos^(n - 1) (ibid., 26.7.1).
     *
     * @param degrees of freedom, 1 or more
     */
    public static double quantile(double p, double degrees) {
        if (!(p > 0 && p < 1 && degrees >= 1)) {
            throw new IllegalArgumentException(
                    "a t quantile needs 0 < p < 1 and 1 or more degrees of freedom, not " + p + " and " + degrees);
        }
        if (degrees < FEW) {
            return byAngle(p, degrees);
        }
        double x = StandardNormal.quantile(p);
        double y = x * x;
        double first = (y + 1) * x / 4;
        double second = ((5 * y + 16) * y + 3) * x / 96;
        double third = (((3 * y + 19) * y + 17) * y - 15) * x / 384;
        double fourth = ((((79 * y + 776) * y + 1482) * y - 1920) * y - 945) * x / 92_160;
        return x + (first + (second + (third + fourth / degrees) / degrees) / degrees) / degrees;
    }

    /** Newton's method from 0: as the density falls away from there, it never steps past the root. */
    private static double byAngle(double p, double degrees) {
        DoubleUnaryOperator density = angle -> Math.pow(Math.cos(angle), degrees - 1);
        double all = Math.sqrt(Math.PI)
                * Math.exp(GammaFunction.logGamma(degrees / 2) - GammaFunction.logGamma((degrees + 1) / 2));
        double angle = 0;
        for (int i = 0; i < MAX_STEPS; i++) {
            double step = ((p - 0.5) * all - Quadrature.panel(density, 0, angle)) / density.applyAsDouble(angle);
            angle += step;
            if (Math.abs(step) <= 1e-12) {
                break;
            }
        }
        return Math.sqrt(degrees) * Math.tan(angle);
    }
}
