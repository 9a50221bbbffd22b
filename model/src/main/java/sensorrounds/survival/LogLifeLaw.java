package sensorrounds.survival;

/**
 * Standardised law of W in log T = location + W / shape, by its log survival and log density. Likelihoods under any mix
 * of censoring and truncation need no more than these. Source: Meeker and Escobar (1998), Statistical Methods for
 * Reliability Data, 4.2-4.6.
 */
public interface LogLifeLaw {
    /** log P(W > z). */
    double logSurvival(double z);

    /** log of the density of W at z. */
    double logDensity(double z);

    /** First derivative of {@link #logDensity}. */
    double logDensitySlope(double z);

    /** Second derivative of {@link #logDensity}. */
    double logDensityCurvature(double z);

    /** z with P(W <= z) = p, for 0 < p < 1. */
    double quantile(double p);
}
