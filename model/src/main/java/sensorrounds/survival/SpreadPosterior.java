package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import sensorrounds.numeric.GammaFunction;

/**
 * Hazards of cohorts relative to what was expected, with how much cohorts differ left open: given the shape and the mean of
 * {@link CohortSpread} the relative hazard of a cohort with y failures for E expected is gamma distributed with shape
 * {@code shape + y} and rate {@code shape / mean + E}, and that law is averaged over shapes and means by their likelihood, flat in
 * the standard deviation of relative hazards and in the log of the mean. Limits that take the spread for known are too narrow
 * where few cohorts tell it; and the likelihood of the shape at its best mean, in place of that averaged over means, makes cohorts look more
 * alike than they are, as a variance about the mean of the same few does. Sources: Kass and Steffey (1989), JASA 84:717-726; Gelman
 * (2006), Bayesian Analysis 1:515-534, for the flat law (both from memory).
 *
 * @param laws averaged; their weights sum to 1
 */
record SpreadPosterior(List<Law> laws) {
    /** Laws that weigh less move no limit by a thousandth of itself. */
    private static final double LEAST_WEIGHT = 1e-7;

    /**
     * A gamma law of relative hazards.
     *
     * @param weight its share; until the average is built, the log of its likelihood
     */
    record Law(double shape, double mean, double weight) {}

    /** Gathers laws with the logs of their weights. */
    static final class Builder {
        /** Gauss and Hermite's five points of a normal law: Abramowitz and Stegun (1964), table 25.10, times the root of 2. */
        private static final double[] NODES = {
            -2.856970013872806, -1.355626179974266, 0, 1.355626179974266, 2.856970013872806
        };

        private static final double[] NODE_WEIGHTS = {
            0.011257411327720689, 0.22207592200561266, 0.5333333333333333, 0.22207592200561266, 0.011257411327720689
        };

        private final List<Law> laws = new ArrayList<>();

        /**
         * The laws about a mean, as an integral over its log: Gauss and Hermite's rule, centred and scaled (Liu and Pierce 1994,
         * Biometrika 81:624-629, from memory), which is exact where the likelihood is normal with that error.
         */
        void around(double mean, double logError, DoubleFunction<Law> at) {
            for (int node = 0; node < NODES.length; node++) {
                Law law = at.apply(mean * Math.exp(NODES[node] * logError));
                double normal = -NODES[node] * NODES[node] / 2;
                laws.add(new Law(
                        law.shape, law.mean, law.weight + Math.log(logError) - normal + Math.log(NODE_WEIGHTS[node])));
            }
        }

        SpreadPosterior build() {
            double most = laws.stream().mapToDouble(Law::weight).max().orElseThrow();
            double sum =
                    laws.stream().mapToDouble(l -> Math.exp(l.weight - most)).sum();
            return new SpreadPosterior(laws.stream()
                    .map(l -> new Law(l.shape, l.mean, Math.exp(l.weight - most) / sum))
                    .filter(l -> l.weight > LEAST_WEIGHT)
                    .toList());
        }
    }

    /** Chance that the relative hazard of a cohort lies below {@code hazard}. */
    double below(double hazard, double failures, double expected) {
        double sum = 0;
        for (Law law : laws) {
            sum += law.weight
                    * GammaFunction.regularizedLower(law.shape + failures, hazard * (law.shape / law.mean + expected));
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
