package sensorrounds.survival;

import java.io.Serializable;

/**
 * An estimated quantity with its limits; NaN where a figure does not exist (a quantile the curve never reaches, say).
 *
 * @param lower lower limit at the level the estimator was asked for
 * @param upper upper limit
 */
public record Estimate(double value, double lower, double upper) implements Serializable {}
