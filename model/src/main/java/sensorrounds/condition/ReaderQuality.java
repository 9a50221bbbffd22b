package sensorrounds.condition;

import java.io.Serializable;

/**
 * How easily a reader wakes sensors, over all sensors it tried. A slow reader is a property of the reader, never a
 * sign against a sensor.
 *
 * @param reads wheels it tried
 * @param meanAttempts mean number of tries per wheel
 * @param chance chance that one try wakes a sound sensor, shrunk to all readers
 * @param chanceLower lower 95 % limit
 * @param chanceUpper upper 95 % limit
 * @param slow true when the upper limit lies under the chance over all readers
 */
public record ReaderQuality(
        String readerId,
        long reads,
        double meanAttempts,
        double chance,
        double chanceLower,
        double chanceUpper,
        boolean slow)
        implements Serializable {}
