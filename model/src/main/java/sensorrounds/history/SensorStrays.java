package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sensorrounds.history.MovedSensors.Heard;

/**
 * Sensors heard in the visits of a vehicle they do not sit on. The sign, common practice without a source: they were heard on
 * few days here, on more days on the other vehicle, and there before and after each of the days here. A set of wheels that
 * was lent is heard on the other vehicle for a while and not at home meanwhile, and is no stray.
 */
final class SensorStrays implements Serializable {
    private static final long serialVersionUID = 1;

    /** A sensor that is heard here oftener is more likely two sensors with one ID. */
    private static final int MOST_DAYS = 2;

    /** Vehicle → sensor ID → the vehicle it sits on. */
    private final Map<String, Map<String, String>> homes = new TreeMap<>();

    /** Takes the strays out of the answers of one sensor, when there is a vehicle that it sits on. */
    void takeFrom(List<Heard> ofId) {
        List<Heard> gone = ofId.stream()
                .filter(here -> {
                    Heard home = ofId.stream()
                            .filter(other -> sitsOn(other, here))
                            .max((a, b) -> a.days().size() != b.days().size()
                                    ? Integer.compare(a.days().size(), b.days().size())
                                    : b.vehicleId().compareTo(a.vehicleId()))
                            .orElse(null);
                    if (home != null) {
                        homes.computeIfAbsent(here.vehicleId(), v -> new TreeMap<>())
                                .put(here.sensorId(), home.vehicleId());
                    }
                    return home != null;
                })
                .toList();
        ofId.removeAll(gone);
    }

    private static boolean sitsOn(Heard home, Heard here) {
        int days = here.days().size();
        if (days > MOST_DAYS || home.days().size() <= days) {
            return false;
        }
        NavigableSet<LocalDate> atHome = new TreeSet<>(home.days());
        LocalDate before = atHome.floor(here.first());
        if (before == null || atHome.ceiling(here.last()) == null) {
            return false;
        }
        for (int i = 1; i < days; i++) {
            LocalDate between = atHome.ceiling(here.days().get(i - 1));
            if (between == null || between.isAfter(here.days().get(i))) {
                return false;
            }
        }
        return true;
    }

    /** Vehicles with strays among their visits. */
    Set<String> vehicles() {
        return Collections.unmodifiableSet(homes.keySet());
    }

    /** Sensor ID → the vehicle it sits on, of the strays in a vehicle's visits. */
    Map<String, String> of(String vehicleId) {
        return Collections.unmodifiableMap(homes.getOrDefault(vehicleId, Map.of()));
    }
}
