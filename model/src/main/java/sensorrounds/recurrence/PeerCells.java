package sensorrounds.recurrence;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import sensorrounds.history.VehicleHistory;

/**
 * How often system warnings come to the vehicles of each class: the number of vehicles by class, events (episodes and
 * returns after repair) and exposure in bins of 30 days. Whole numbers only, so that any split of the fleet merged in
 * any order gives the same cells. Not thread safe.
 */
public final class PeerCells implements Serializable {
    /** Width of an exposure bin, days. */
    public static final int BIN_DAYS = 30;

    /**
     * One cell.
     *
     * @param vehicleClass empty for vehicles without a class
     * @param events episodes and returns
     * @param bins exposure in bins, at least 1
     */
    public record Key(String vehicleClass, int events, int bins) implements Serializable, Comparable<Key> {
        private static final Comparator<Key> ORDER = Comparator.comparing(Key::vehicleClass)
                .thenComparing(Key::events)
                .thenComparing(Key::bins);

        /** Exposure in years, to the bin. */
        public double years() {
            return bins * BIN_DAYS / SystemWarnings.DAYS_PER_YEAR;
        }

        @Override
        public int compareTo(Key o) {
            return ORDER.compare(this, o);
        }
    }

    private final SortedMap<Key, Long> vehicles = new TreeMap<>();

    /** Counts one vehicle as it stood on {@code asOf}; a vehicle without a visit by then is under no observation. */
    public PeerCells add(VehicleHistory history, LocalDate asOf) {
        SystemWarnings.exposureDays(history, asOf).ifPresent(days -> {
            String vehicleClass = history.vehicle().vehicleClass();
            int events = SystemWarnings.events(SystemWarnings.episodes(history, asOf));
            count(vehicleClass, events, bins(days), 1);
        });
        return this;
    }

    /** Counts a vehicle that was judged. */
    public PeerCells add(RecurringVehicle v) {
        long days = Math.round(v.exposureYears() * SystemWarnings.DAYS_PER_YEAR);
        return count(v.vehicleClass(), v.episodes() + v.returnsAfterRepair(), bins(days), 1);
    }

    private static int bins(long days) {
        return (int) Math.max(1, Math.round(days / (double) BIN_DAYS));
    }

    /** Takes the counts of another part of the fleet in. */
    public PeerCells merge(PeerCells other) {
        other.vehicles.forEach((key, n) -> vehicles.merge(key, n, Long::sum));
        return this;
    }

    /** Counts {@code number} vehicles alike. */
    PeerCells count(String vehicleClass, int events, int bins, long number) {
        vehicles.merge(new Key(vehicleClass == null ? "" : vehicleClass, events, bins), number, Long::sum);
        return this;
    }

    /** Vehicles by cell, in order. */
    public SortedMap<Key, Long> vehicles() {
        return new TreeMap<>(vehicles);
    }

    /** Classes with a name, in order. */
    public SortedSet<String> classes() {
        SortedSet<String> all = new TreeSet<>();
        vehicles.keySet().stream()
                .map(Key::vehicleClass)
                .filter(c -> !c.isEmpty())
                .forEach(all::add);
        return all;
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof PeerCells other && vehicles.equals(other.vehicles);
    }

    @Override
    public int hashCode() {
        return vehicles.hashCode();
    }
}
