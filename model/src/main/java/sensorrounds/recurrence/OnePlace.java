package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.List;
import sensorrounds.history.Finding;
import sensorrounds.history.VehicleHistory;

/** Findings that sensors fall silent one after the other at one place, which speaks against the place. */
final class OnePlace {
    private OnePlace() {}

    /** Such findings in the window of recurrence, in time order; one without a day counts. */
    static List<Finding> findings(VehicleHistory history, RecurrenceSettings settings, LocalDate asOf) {
        LocalDate from = asOf.minusDays(settings.windowDays());
        return history.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.PLACE_KEEPS_FAILING)
                .filter(f ->
                        f.day() == null || !f.day().isBefore(from) && !f.day().isAfter(asOf))
                .toList();
    }
}
