package sensorrounds.regression;

import java.io.Serializable;
import sensorrounds.numeric.GammaFunction;

/**
 * Likelihood-ratio test by the chi-square law: Wilks (1938), Ann. Math. Statist. 9:60-62.
 *
 * @param statistic twice the gain in log-likelihood
 * @param degrees parameters given up
 * @param pValue probability of as much gain by chance
 */
public record RatioTest(double statistic, int degrees, double pValue) implements Serializable {
    static RatioTest of(double statistic, int degrees) {
        if (!(degrees > 0)) {
            throw new IllegalArgumentException(
                    "the smaller model needs fewer parameters than this one, not " + degrees + " fewer");
        }
        double p = Math.exp(GammaFunction.logRegularizedUpper(degrees / 2.0, Math.max(0, statistic) / 2));
        return new RatioTest(statistic, degrees, p);
    }
}
