package sensorrounds.survival;

import java.io.Serializable;

/**
 * A fit of a run with what it says of itself.
 *
 * @param fit what was fitted, in words
 * @param cohort to whose lives; the name of the pool for all
 */
public record FitLine(String fit, String cohort, FitReport report) implements Serializable {}
