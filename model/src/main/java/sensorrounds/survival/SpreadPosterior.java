package sensorrounds.survival;

import java.util.Arrays;
import sensorrounds.numeric.GammaFunction;

/**
 * Hazards of cohorts relative to what was expected, with how much cohorts differ left open: given the shape and the mean of
 * {@link CohortSpread} the relative hazard of a cohort with y failures for E expected is gamma distributed with shape
 * {@code shape + y} and rate {@code shape / mean + E}, and that law is averaged over shapes by their likelihood, flat in the
 * standard deviation of relative hazards, and over the log of the mean by its error. Limits that take the spread for known are too
 * narrow where few cohorts tell it. Sources: Kass and Steffey (1989), JASA 84:717-726; Gelman (2006), Bayesian Analysis 1:515-534, for
 * the flat law (both from memory).
 *
 * @param shapes of the laws averaged
 * @param means of the laws averaged
 * @param weights of the laws averaged; they sum to 1
 */
record SpreadPosterior(double[] shapes, double[] means, double[] weights) {
    /** Gauss and Hermite's three points of a normal law: Abramowitz and Stegun (1964), table 25.10, for weight exp(-x^2/2). */
    private static final double[] NODES = {-Math.sqrt(3), 0, Math.sqrt(3)};

    private static final double[] NODE_WEIGHTS = {1.0 / 6, 2.0 / 3, 1.0 / 6};

    static SpreadPosterior of(double[] shapes, double[] means, double[] logMeanErrors, double[] logWeights) {
        double most = Arrays.stream(logWeights).max().orElseThrow();
        int n = shapes.length * NODES.length;
        double[] allShapes = new double[n];
        double[] allMeans = new double[n];
        double[] allWeights = new double[n];
        double sum = 0;
        for (int i = 0; i < n; i++) {
            int shape = i / NODES.length;
            int node = i % NODES.length;
            allShapes[i] = shapes[shape];
            allMeans[i] = means[shape] * Math.exp(NODES[node] * logMeanErrors[shape]);
            allWeights[i] = Math.exp(logWeights[shape] - most) * NODE_WEIGHTS[node];
            sum += allWeights[i];
        }
        for (int i = 0; i < n; i++) {
            allWeights[i] /= sum;
        }
        return new SpreadPosterior(allShapes, allMeans, allWeights);
    }

    /** Chance that the relative hazard of a cohort lies below {@code hazard}. */
    double below(double hazard, double failures, double expected) {
        double sum = 0;
        for (int i = 0; i < shapes.length; i++) {
            if (weights[i] > 1e-12) {
                sum += weights[i]
                        * GammaFunction.regularizedLower(
                                shapes[i] + failures, hazard * (shapes[i] / means[i] + expected));
            }
        }
        return sum;
    }

    /** The relative hazard below which that of a cohort lies with chance {@code p}, by halving on the log scale. */
    double quantile(double p, double failures, double expected) {
        double low = -30;
        double high = 30;
        while (high - low > 1e-9) {
            double middle = (low + high) / 2;
            if (below(Math.exp(middle), failures, expected) < p) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Math.exp((low + high) / 2);
    }
}
