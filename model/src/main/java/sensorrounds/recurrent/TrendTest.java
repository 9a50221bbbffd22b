package sensorrounds.recurrent;

import sensorrounds.numeric.GammaFunction;
import sensorrounds.numeric.StandardNormal;

/**
 * Outcome of a test of whether events come more often or less often as time goes on. The null hypothesis is no trend.
 *
 * @param statistic NaN when the events are too few for the test
 * @param degreesOfFreedom of a chi-square statistic; NaN for one that is standard normal
 * @param pIncreasing chance, without a trend, of data that speak as strongly for events coming more often
 * @param pDecreasing the same for events coming less often
 */
public record TrendTest(double statistic, double degreesOfFreedom, double pIncreasing, double pDecreasing) {
    /** Two-sided p-value: twice the smaller, at most 1. */
    public double pValue() {
        return Math.min(1, 2 * Math.min(pIncreasing, pDecreasing));
    }

    /** A standard normal statistic, above 0 where events come more often. */
    static TrendTest normal(double z) {
        if (!Double.isFinite(z)) {
            return undefined();
        }
        return new TrendTest(
                z, Double.NaN, Math.exp(StandardNormal.logSurvival(z)), Math.exp(StandardNormal.logSurvival(-z)));
    }

    /** A chi-square statistic, small where events come more often. */
    static TrendTest chiSquareSmallWhenIncreasing(double statistic, double degreesOfFreedom) {
        if (!(degreesOfFreedom > 0)) {
            return undefined();
        }
        return new TrendTest(
                statistic,
                degreesOfFreedom,
                Math.exp(GammaFunction.logRegularizedLower(degreesOfFreedom / 2, statistic / 2)),
                Math.exp(GammaFunction.logRegularizedUpper(degreesOfFreedom / 2, statistic / 2)));
    }

    static TrendTest undefined() {
        return new TrendTest(Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }
}
