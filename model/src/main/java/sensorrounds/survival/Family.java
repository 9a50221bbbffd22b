package sensorrounds.survival;

/**
 * Families of laws of life: log T = location + W / shape with W from a {@link StandardLaw}. A new family of this kind is
 * one constant here, its standard law, and its reference cases.
 */
public enum Family {
    /** S(t) = exp(-(t/scale)^shape). */
    WEIBULL(StandardLaw.SMALLEST_EXTREME_VALUE, false),
    /** Weibull of shape 1. */
    EXPONENTIAL(StandardLaw.SMALLEST_EXTREME_VALUE, true),
    /** log T normal with mean log scale and standard deviation 1 / shape. */
    LOGNORMAL(StandardLaw.NORMAL, false),
    /** S(t) = 1 / (1 + (t/scale)^shape). */
    LOGLOGISTIC(StandardLaw.LOGISTIC, false);

    private final StandardLaw law;
    private final boolean shapeIsOne;

    Family(StandardLaw law, boolean shapeIsOne) {
        this.law = law;
        this.shapeIsOne = shapeIsOne;
    }

    /** Law of W. */
    public StandardLaw law() {
        return law;
    }

    boolean shapeIsOne() {
        return shapeIsOne;
    }
}
