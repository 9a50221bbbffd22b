package sensorrounds.history;

import java.time.LocalDate;

/**
 * The first end point of a sensor, apart from its failure: its first low battery report. A cell is weaker in the cold, so a
 * low report may be followed by a sound one; both are kept, and neither undoes the other.
 */
final class Weakness {
    private LocalDate lastSound;
    private LocalDate first;
    private LocalDate recovered;

    void add(LifeReading reading, HistorySettings settings) {
        if (reading.battery() == null) {
            return;
        }
        if (reading.battery().isLow(settings.battery())) {
            first = first == null ? reading.day() : first;
            recovered = null;
        } else if (first == null) {
            lastSound = reading.day();
        } else if (recovered == null) {
            recovered = reading.day();
        }
    }

    /** Last sound battery report before the first low one; null when there was none. */
    LocalDate lastSound() {
        return lastSound;
    }

    /** First low battery report; null when there was none. */
    LocalDate first() {
        return first;
    }

    /** First sound battery report since the last low one; null when the last report was low, or none was. */
    LocalDate recovered() {
        return recovered;
    }
}
