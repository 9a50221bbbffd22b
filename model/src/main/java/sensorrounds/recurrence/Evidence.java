package sensorrounds.recurrence;

import java.util.Comparator;
import java.util.Locale;

/**
 * One sign for or against a suspect.
 *
 * @param words the sign with its figures
 * @param logWeight natural logarithm of its weight: above 0 speaks for the suspect, below 0 against it
 */
public record Evidence(Sign sign, String words, double logWeight) {
    /** What was looked at. */
    public enum Sign {
        /** Standing before any evidence, by age for a sensor. */
        PRIOR,
        SLOW_WAKING,
        LOW_BATTERY,
        FAULT_CODE,
        /** Sensor and hand gauge disagree. */
        PRESSURE_APART,
        /** One ID in trouble at more than one place. */
        ACROSS_PLACES,
        /** IDs on the wheels that the vehicle was never taught. */
        NOT_LEARNED,
        /** A wheel without a sensor. */
        NO_SENSOR,
        SILENCE,
        FITTED_AFTER,
        /** Earlier episodes that ended with a dead sensor found and replaced. */
        FOUND_DEAD,
        ONE_PLACE,
        KNOWN_FAILED
    }

    /** Strongest first, whichever way it points; equals keep the order in which they were found. */
    static final Comparator<Evidence> STRONGEST_FIRST = Comparator.comparingDouble(e -> -Math.abs(e.logWeight()));

    static Evidence of(Sign sign, String words, double weight) {
        return new Evidence(sign, words, Math.log(weight));
    }

    /** The sign in words with its weight: {@code battery reported low on 2026-05-02 (×8.0)}. */
    public String text() {
        double weight = Math.exp(logWeight);
        String format =
                weight >= 10 ? "%s (×%.0f)" : weight >= 1 ? "%s (×%.1f)" : weight >= 0.01 ? "%s (×%.2f)" : "%s (×%.4f)";
        return String.format(Locale.ROOT, format, words, weight);
    }
}
