package sensorrounds.condition;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.Set;
import sensorrounds.history.Finding;
import sensorrounds.history.VehicleHistory;

/** Visits at which a reader heard nothing at all: their silence says nothing of any one sensor. */
public final class UnheardVisits {
    private UnheardVisits() {}

    /** Days of such visits, by the history's findings. */
    public static Set<LocalDate> days(VehicleHistory history) {
        Set<LocalDate> days = new HashSet<>();
        for (Finding f : history.findings()) {
            if (f.kind() == Finding.Kind.READER_HEARD_NOTHING && f.day() != null) {
                days.add(f.day());
            }
        }
        return days;
    }
}
