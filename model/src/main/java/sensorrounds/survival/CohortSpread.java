package sensorrounds.survival;

import sensorrounds.numeric.GammaFunction;

/**
 * How much the hazards of cohorts differ, from their failures and the failures expected of them: the hazard of each relative to
 * what was expected is gamma distributed over cohorts with this shape and mean, so that failures are negative binomial. The rate of
 * a cohort is then estimated by (shape + failures) / (shape / mean + expected): its own experience with the weight
 * expected / (shape / mean + expected), the mean of cohorts with the rest. Sources: Gaver and O'Muircheartaigh (1987),
 * Technometrics 29:1-15; Clayton and Kaldor (1987), Biometrics 43:671-681 (both from memory).
 *
 * @param shape inverse of the variance of relative hazards over its squared mean; infinite when the cohorts differ no more than
 *     chance explains
 * @param mean relative hazard of the typical cohort
 * @param varLogMean variance of its log, by the expected information with the shape as given
 * @param cohorts how many took part
 */
public record CohortSpread(double shape, double mean, double varLogMean, int cohorts) {
    private static final double LOG_SHAPE_FROM = -5;
    private static final double LOG_SHAPE_TO = 12;
    private static final int SCAN = 68;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    /** What is maximised. */
    public enum Criterion {
        /** The likelihood of the failures. Few cohorts often make the shape infinite, as if there were no difference at all. */
        LIKELIHOOD,
        /**
         * The likelihood times the standard deviation of relative hazards, which keeps that from 0 and moves it by less than its
         * error: Chung, Rabe-Hesketh, Dorie, Gelman and Liu (2013), Psychometrika 78:685-709 (from memory).
         */
        KEPT_FROM_ZERO
    }

    /**
     * The spread of cohorts.
     *
     * @param failures of each cohort; weights need not be whole numbers
     * @param expected failures expected of each, positive
     * @throws IllegalArgumentException without a failure in any, or with an expectation that is not positive
     */
    public static CohortSpread of(double[] failures, double[] expected, Criterion criterion) {
        double seen = 0;
        double foreseen = 0;
        for (int i = 0; i < failures.length; i++) {
            if (!(failures[i] >= 0 && expected[i] > 0 && expected[i] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("cohort " + i + " has " + failures[i] + " failures for "
                        + expected[i] + " expected; needs none or more for more than none");
            }
            seen += failures[i];
            foreseen += expected[i];
        }
        if (!(seen > 0)) {
            throw new IllegalArgumentException("no cohort has a failure, so that nothing tells how much they differ");
        }
        double around = seen / foreseen;
        int best = 0;
        double bestValue = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= SCAN; i++) {
            double value = profile(failures, expected, logShape(i), around, criterion);
            if (value > bestValue) {
                best = i;
                bestValue = value;
            }
        }
        if (best == SCAN) {
            return new CohortSpread(Double.POSITIVE_INFINITY, around, 1 / seen, failures.length);
        }
        double low = logShape(Math.max(0, best - 1));
        double high = logShape(best + 1);
        double a = high - GOLDEN * (high - low);
        double b = low + GOLDEN * (high - low);
        double atA = profile(failures, expected, a, around, criterion);
        double atB = profile(failures, expected, b, around, criterion);
        while (high - low > 1e-8) {
            if (atA > atB) {
                high = b;
                b = a;
                atB = atA;
                a = high - GOLDEN * (high - low);
                atA = profile(failures, expected, a, around, criterion);
            } else {
                low = a;
                a = b;
                atA = atB;
                b = low + GOLDEN * (high - low);
                atB = profile(failures, expected, b, around, criterion);
            }
        }
        double shape = Math.exp((low + high) / 2);
        double mean = mean(failures, expected, shape, around);
        return new CohortSpread(shape, mean, 1 / information(expected, shape, mean), failures.length);
    }

    /** Weight of a cohort's own experience in its estimate, when so many failures are expected of it. */
    public double ownWeight(double expected) {
        return shape == Double.POSITIVE_INFINITY ? 0 : expected / (shape / mean + expected);
    }

    /** Relative hazard of a cohort, estimated with the others. */
    public double relativeHazard(double failures, double expected) {
        double own = ownWeight(expected);
        return own > 0 ? own * failures / expected + (1 - own) * mean : mean;
    }

    /** What the same failures leave open: {@link SpreadPosterior}. */
    static SpreadPosterior posterior(double[] failures, double[] expected) {
        double seen = 0;
        double foreseen = 0;
        for (int i = 0; i < failures.length; i++) {
            seen += failures[i];
            foreseen += expected[i];
        }
        SpreadPosterior.Builder laws = new SpreadPosterior.Builder();
        for (int i = 0; i <= SCAN; i++) {
            double shape = Math.exp(logShape(i));
            double mean = mean(failures, expected, shape, seen / foreseen);
            double error = 1 / Math.sqrt(information(expected, shape, mean));
            // Flat in the standard deviation, which is the shape to the power of -1/2, on a grid even in the log of the
            // shape.
            double flat = -logShape(i) / 2;
            laws.around(
                    mean,
                    error,
                    m -> new SpreadPosterior.Law(shape, m, flat + logLikelihood(failures, expected, shape, m)));
        }
        return laws.build();
    }

    /** Expected information of the log of the mean. */
    private static double information(double[] expected, double shape, double mean) {
        double sum = 0;
        for (double e : expected) {
            sum += 1 / (1 / shape + 1 / (mean * e));
        }
        return sum;
    }

    private static double logShape(int i) {
        return LOG_SHAPE_FROM + (LOG_SHAPE_TO - LOG_SHAPE_FROM) * i / SCAN;
    }

    private static double profile(
            double[] failures, double[] expected, double logShape, double around, Criterion criterion) {
        double shape = Math.exp(logShape);
        double value = logLikelihood(failures, expected, shape, mean(failures, expected, shape, around));
        return criterion == Criterion.KEPT_FROM_ZERO ? value - logShape / 2 : value;
    }

    /** Root in the mean m of sum (y - m E) / (shape + m E), which falls in m; by halving on the log scale. */
    private static double mean(double[] failures, double[] expected, double shape, double around) {
        double low = Math.log(around) - 12;
        double high = Math.log(around) + 12;
        for (int step = 0; step < 60; step++) {
            double middle = (low + high) / 2;
            double sum = 0;
            for (int i = 0; i < failures.length; i++) {
                double foreseen = Math.exp(middle) * expected[i];
                sum += (failures[i] - foreseen) / (shape + foreseen);
            }
            if (sum > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Math.exp((low + high) / 2);
    }

    /** Negative binomial log-likelihood: Clayton and Kaldor (1987), section 2. */
    static double logLikelihood(double[] failures, double[] expected, double shape, double mean) {
        double base = GammaFunction.logGamma(shape);
        double sum = 0;
        for (int i = 0; i < failures.length; i++) {
            double foreseen = mean * expected[i];
            sum += GammaFunction.logGamma(shape + failures[i])
                    - base
                    - GammaFunction.logGamma(failures[i] + 1)
                    - shape * Math.log1p(foreseen / shape)
                    + failures[i] * Math.log(foreseen / (shape + foreseen));
        }
        return sum;
    }
}
