package sensorrounds.regression;

import java.util.function.DoubleFunction;
import sensorrounds.survival.Family;
import sensorrounds.survival.LogLifeLaw;

/**
 * Families a regression can fit: log T = log scale + W / shape. The last two bring a parameter of the law of W itself.
 * Fitted without covariates they are plain laws of life.
 */
public enum LifeFamily {
    /** S(t) = exp(-(t/scale)^shape). */
    WEIBULL(Family.WEIBULL),
    /** Weibull of shape 1; the scale is the mean life. */
    EXPONENTIAL(Family.EXPONENTIAL),
    /** log T normal around log scale with standard deviation 1 / shape. */
    LOGNORMAL(Family.LOGNORMAL),
    /** S(t) = 1 / (1 + (t/scale)^shape). */
    LOGLOGISTIC(Family.LOGLOGISTIC),
    /** T / scale gamma distributed; the law's parameter is the log of the gamma shape. */
    GAMMA(false, GammaLaw::new, 0, Math.log(1e4)),
    /** As {@link GeneralisedGammaLaw} says; the law's parameter is q. */
    GENERALISED_GAMMA(true, GeneralisedGammaLaw::new, 1, 8);

    private final boolean shape;
    private final boolean ownParameter;
    private final DoubleFunction<LogLifeLaw> law;
    private final double start;
    private final double largest;

    LifeFamily(Family family) {
        this.shape = family != Family.EXPONENTIAL;
        this.ownParameter = false;
        LogLifeLaw standard = family.law();
        this.law = q -> standard;
        this.start = Double.NaN;
        this.largest = Double.NaN;
    }

    LifeFamily(boolean shape, DoubleFunction<LogLifeLaw> law, double start, double largest) {
        this.shape = shape;
        this.ownParameter = true;
        this.law = law;
        this.start = start;
        this.largest = largest;
    }

    /** Whether the shape is fitted; else it is 1. */
    boolean hasShape() {
        return shape;
    }

    /** Whether the law of W has a parameter to be fitted. */
    boolean hasOwnParameter() {
        return ownParameter;
    }

    /** Where the search for the law's parameter begins. */
    double start() {
        return start;
    }

    /** Beyond this in size the law's parameter counts as running away. */
    double largest() {
        return largest;
    }

    /** Law of W; the parameter is ignored by a family that has none. */
    LogLifeLaw law(double parameter) {
        return law.apply(parameter);
    }

    /** Likelihood of one life, quick where the family allows. */
    LifeKernel kernel(double parameter) {
        return this == WEIBULL || this == EXPONENTIAL ? new WeibullKernel() : new LawKernel(law(parameter));
    }
}
