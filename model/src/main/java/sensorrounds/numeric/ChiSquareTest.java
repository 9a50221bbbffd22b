package sensorrounds.numeric;

/**
 * A statistic that follows a chi-square law where the null hypothesis holds.
 *
 * @param statistic NaN where the test is undefined
 * @param degreesOfFreedom at least 1
 */
public record ChiSquareTest(double statistic, int degreesOfFreedom) {
    public ChiSquareTest {
        if (degreesOfFreedom < 1) {
            throw new IllegalArgumentException("a chi-square test needs a degree of freedom, not " + degreesOfFreedom);
        }
    }

    /** Chance of a statistic at least as large under the null: Q(df/2, x/2), Abramowitz and Stegun (1964), 26.4.19. */
    public double pValue() {
        return Double.isNaN(statistic)
                ? Double.NaN
                : Math.exp(GammaFunction.logRegularizedUpper(degreesOfFreedom / 2.0, Math.max(0, statistic) / 2));
    }
}
