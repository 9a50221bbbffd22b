package sensorrounds.condition;

import java.io.Serializable;

/**
 * How easily a reader, or a technician, wakes sensors over all sensors tried. Slowness is a property of the reader or of how
 * it is held, never a sign against a sensor.
 *
 * @param of what the line is of
 * @param readerId null for a technician
 * @param technicianId null for a reader told apart from who uses it
 * @param reads wheels tried
 * @param meanAttempts mean number of tries per wheel
 * @param chance chance that one try wakes a sound sensor on an ordinary wheel in ordinary weather, shrunk to all readers; of
 *     a technician: with an average reader, shrunk to all technicians
 * @param chanceLower lower 95 % limit
 * @param chanceUpper upper 95 % limit
 * @param slow of a reader: reads enough, and the upper limit lies under the chance over all readers; of a technician: also
 *     slower than the colleagues with the same readers
 */
public record ReaderQuality(
        Of of,
        String readerId,
        String technicianId,
        long reads,
        double meanAttempts,
        double chance,
        double chanceLower,
        double chanceUpper,
        boolean slow)
        implements Serializable {
    /** What a line is of. */
    public enum Of {
        /** A reader, told apart from the technicians who use it as far as the reads allow; or no technician is named. */
        READER,
        /**
         * A reader with the technician who makes most reads with it and shares none with a colleague, so the two cannot be told
         * apart; unless it is slow and the same technician has a reader that is not.
         */
        PAIR,
        /** A technician, told apart from the readers by colleagues who use the same. */
        TECHNICIAN
    }

    /** The same as a line on the reader alone. */
    ReaderQuality withoutTechnician() {
        return new ReaderQuality(
                Of.READER, readerId, null, reads, meanAttempts, chance, chanceLower, chanceUpper, slow);
    }
}
