package sensorrounds.condition;

import java.io.Serializable;

/**
 * What the reads of one sensor say of its condition.
 *
 * @param probabilitySlow posterior probability that it wakes worse than a sound sensor under the same readers
 * @param reads reads with a count of tries that went into it
 * @param expectedAttempts tries a sound sensor would have needed at the last read under that reader; NaN without one
 * @param lastAttempts tries it needed at the last read; null without one
 */
public record SensorCondition(double probabilitySlow, int reads, double expectedAttempts, Integer lastAttempts)
        implements Serializable {}
