package sensorrounds.condition;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;

/** Visits at which a reader heard nothing at all: their silence says nothing of any one sensor. */
public final class UnheardVisits {
    private final Set<LocalDate> deaf;
    private final List<Finding> places = new ArrayList<>();

    private UnheardVisits(VehicleHistory history) {
        deaf = days(history);
        for (Finding f : history.findings()) {
            if (f.kind() == Finding.Kind.PLACE_KEEPS_FAILING && f.position() != null) {
                places.add(f);
            }
        }
    }

    static UnheardVisits of(VehicleHistory history) {
        return new UnheardVisits(history);
    }

    /**
     * Days whose silence says nothing of this sensor: those of a deaf reader, and its own where sensor after sensor falls
     * silent at its place, which is then suspected and not the sensor.
     */
    Set<LocalDate> days(SensorLife life) {
        boolean suspected = places.stream()
                .anyMatch(f -> f.position().equals(life.position()) && Objects.equals(f.wheelSet(), life.wheelSet()));
        if (!suspected) {
            return deaf;
        }
        Set<LocalDate> days = new HashSet<>(deaf);
        for (LifeReading r : life.readings()) {
            if (!r.answered()) {
                days.add(r.day());
            }
        }
        return days;
    }

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
