package sensorrounds.assemble;

import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.AbstractMap;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.function.Function;
import sensorrounds.fleet.AxleLayout;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;

/**
 * The fleet register as it is sent to every executor. Vehicles lie in one array: Spark weighs what it sends by walking all
 * of its objects one by one, and takes a sample only of arrays. They travel as columns, a fraction of the work of writing
 * each date and figure as an object of its own.
 */
public final class Register extends AbstractMap<String, Vehicle> implements Serializable {
    private static final long serialVersionUID = 1L;

    private final String[] ids;
    private final Vehicle[] vehicles;

    private Register(String[] ids, Vehicle[] vehicles) {
        this.ids = ids;
        this.vehicles = vehicles;
    }

    /** @param vehicles in the natural order of their IDs */
    public static Register of(SortedMap<String, Vehicle> vehicles) {
        if (vehicles.comparator() != null) {
            throw new IllegalArgumentException("a register in an order of its own, expected the natural one");
        }
        return new Register(
                vehicles.keySet().toArray(String[]::new), vehicles.values().toArray(Vehicle[]::new));
    }

    @Override
    public Vehicle get(Object id) {
        int at = id instanceof String text ? Arrays.binarySearch(ids, text) : -1;
        return at < 0 ? null : vehicles[at];
    }

    @Override
    public int size() {
        return ids.length;
    }

    @Override
    public boolean containsKey(Object id) {
        return get(id) != null;
    }

    @Override
    public Set<Map.Entry<String, Vehicle>> entrySet() {
        Set<Map.Entry<String, Vehicle>> entries = new LinkedHashSet<>();
        for (int i = 0; i < ids.length; i++) {
            entries.add(Map.entry(ids[i], vehicles[i]));
        }
        return entries;
    }

    private Object writeReplace() {
        return new Columns(this);
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("a register travels as columns");
    }

    /** What a register is on its way. */
    private static final class Columns implements Serializable {
        private static final long serialVersionUID = 1L;
        private static final long UNKNOWN_DAY = Long.MIN_VALUE;

        private final String[] ids;
        private final String[][] words;
        private final long[][] days;
        private final double[] annualKm;
        private final MonitoringSystem[] systems;
        private final AxleLayout[] axles;

        Columns(Register register) {
            Vehicle[] all = register.vehicles;
            ids = register.ids;
            // Equal words and layouts become the same object, which is written once.
            Map<Object, Object> once = new HashMap<>();
            for (String id : ids) {
                once.put(id, id);
            }
            words = new String[][] {
                words(all, Vehicle::vehicleId, once),
                words(all, Vehicle::vehicleClass, once),
                words(all, Vehicle::modelGroup, once),
                words(all, Vehicle::depot, once),
                words(all, Vehicle::drivingSide, once),
                words(all, Vehicle::originalPart, once)
            };
            days = new long[][] {
                days(all, Vehicle::firstUsed), days(all, Vehicle::nextPlannedVisit), days(all, Vehicle::leftFleet)
            };
            annualKm = Arrays.stream(all)
                    .mapToDouble(v -> v.annualKm() == null ? Double.NaN : v.annualKm())
                    .toArray();
            systems = Arrays.stream(all).map(Vehicle::system).toArray(MonitoringSystem[]::new);
            axles = Arrays.stream(all).map(v -> once(v.axles(), once)).toArray(AxleLayout[]::new);
        }

        private Object readResolve() {
            Vehicle[] all = new Vehicle[ids.length];
            for (int i = 0; i < all.length; i++) {
                all[i] = new Vehicle(
                        words[0][i],
                        words[1][i],
                        words[2][i],
                        day(days[0][i]),
                        words[3][i],
                        words[4][i],
                        systems[i],
                        axles[i],
                        words[5][i],
                        Double.isNaN(annualKm[i]) ? null : annualKm[i],
                        day(days[1][i]),
                        day(days[2][i]));
            }
            return new Register(ids, all);
        }

        private static String[] words(Vehicle[] all, Function<Vehicle, String> word, Map<Object, Object> once) {
            return Arrays.stream(all).map(v -> once(word.apply(v), once)).toArray(String[]::new);
        }

        @SuppressWarnings("unchecked")
        private static <T> T once(T value, Map<Object, Object> once) {
            if (value == null) {
                return null;
            }
            Object first = once.putIfAbsent(value, value);
            return first == null ? value : (T) first;
        }

        private static long[] days(Vehicle[] all, Function<Vehicle, LocalDate> day) {
            return Arrays.stream(all)
                    .map(day)
                    .mapToLong(d -> d == null ? UNKNOWN_DAY : d.toEpochDay())
                    .toArray();
        }

        private static LocalDate day(long day) {
            return day == UNKNOWN_DAY ? null : LocalDate.ofEpochDay(day);
        }
    }
}
