package sensorrounds.regression;

import java.io.Serializable;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.LogLifeLaw;
import sensorrounds.survival.WeibullLife;

/**
 * A fitted law of life for one set of covariates, with the covariance of (log scale, log shape, parameter of the law).
 * Limits by the delta method on the scale named at each: Meeker and Escobar (1998), 8.4 and appendix B.
 */
public final class FittedLaw implements Serializable {
    private final LifeFamily family;
    private final double logScale;
    private final double logShape;
    private final double parameter;
    private final double[][] covariance;
    /** Standard errors from an estimate to a limit. */
    private final double z;

    FittedLaw(LifeFamily family, double logScale, double logShape, double parameter, double[][] covariance, double z) {
        this.family = family;
        this.logScale = logScale;
        this.logShape = logShape;
        this.parameter = parameter;
        this.covariance = covariance;
        this.z = z;
    }

    /** In the lives' unit of time; limits on its log. */
    public Estimate scale() {
        return exponential(logScale, new double[] {1, 0, 0});
    }

    /** 1 for a family without one; limits on its log. */
    public Estimate shape() {
        return exponential(logShape, new double[] {0, 1, 0});
    }

    /** Age by which the share p has failed; limits on its log. */
    public Estimate quantile(double p) {
        double w = family.law(parameter).quantile(p);
        double perShape = Math.exp(-logShape);
        double byParameter = 0;
        for (int i = 0; i < FivePoints.OFFSETS.length && family.hasOwnParameter(); i++) {
            double q = parameter + FivePoints.STEP * FivePoints.OFFSETS[i];
            byParameter += FivePoints.FIRST[i] / FivePoints.STEP * family.law(q).quantile(p);
        }
        return exponential(logScale + w * perShape, new double[] {1, -w * perShape, byParameter * perShape});
    }

    /** S(age); limits on log(-log S). */
    public Estimate survival(double age) {
        Estimate failed = failureWithin(0, Math.max(0, age));
        return new Estimate(1 - failed.value(), 1 - failed.upper(), 1 - failed.lower());
    }

    /** P(fail within the next while | alive at age); limits on the log of the cumulative hazard meanwhile. */
    public Estimate failureWithin(double age, double during) {
        LogLifeLaw law = family.law(parameter);
        double hazard = hazard(law, age, age + during);
        if (!(hazard > 0)) {
            return new Estimate(0, 0, 0);
        }
        double[] gradient = new double[3];
        add(gradient, law, age + during, 1);
        add(gradient, law, age, -1);
        for (int i = 0; i < FivePoints.OFFSETS.length && family.hasOwnParameter(); i++) {
            double q = parameter + FivePoints.STEP * FivePoints.OFFSETS[i];
            gradient[2] += FivePoints.FIRST[i] / FivePoints.STEP * hazard(family.law(q), age, age + during);
        }
        double half = z * Math.sqrt(variance(gradient)) / hazard;
        return new Estimate(
                -Math.expm1(-hazard), -Math.expm1(-hazard * Math.exp(-half)), -Math.expm1(-hazard * Math.exp(half)));
    }

    /**
     * This law as the plain Weibull law that the rest of the engine takes, time in days as in the lives.
     *
     * @throws IllegalStateException if the family is no Weibull
     */
    public WeibullLife life() {
        if (family != LifeFamily.WEIBULL && family != LifeFamily.EXPONENTIAL) {
            throw new IllegalStateException("a " + family + " fit is no Weibull law of life");
        }
        return new WeibullLife(
                Math.exp(logShape), Math.exp(logScale), covariance[1][1], covariance[0][0], covariance[0][1]);
    }

    private double standard(double age) {
        return Math.exp(logShape) * (Math.log(age) - logScale);
    }

    private double hazard(LogLifeLaw law, double from, double to) {
        return (from > 0 ? law.logSurvival(standard(from)) : 0) - (to > 0 ? law.logSurvival(standard(to)) : 0);
    }

    /** Adds the derivatives of -log S(age) in log scale and log shape. */
    private void add(double[] gradient, LogLifeLaw law, double age, double sign) {
        if (age > 0) {
            double at = standard(age);
            double slope = Math.exp(law.logDensity(at) - law.logSurvival(at));
            gradient[0] -= sign * slope * Math.exp(logShape);
            gradient[1] += sign * slope * at;
        }
    }

    private double variance(double[] gradient) {
        double[] vg = Design.times(covariance, gradient);
        return Math.max(0, vg[0] * gradient[0] + vg[1] * gradient[1] + vg[2] * gradient[2]);
    }

    private Estimate exponential(double log, double[] gradient) {
        double half = z * Math.sqrt(variance(gradient));
        return new Estimate(Math.exp(log), Math.exp(log - half), Math.exp(log + half));
    }
}
