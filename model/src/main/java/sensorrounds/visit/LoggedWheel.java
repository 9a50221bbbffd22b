package sensorrounds.visit;

import java.io.Serializable;

/**
 * One row of a log: a wheel with its visit's columns. This is the unit in which rows are counted: a CSV line, or one
 * element of a JSON visit's wheels.
 *
 * @param wheel null for a visit at which no wheel was looked at
 */
public record LoggedWheel(VisitHeader visit, WheelReading wheel, Source source) implements Serializable {}
