package sensorrounds.assemble;

import java.io.Serializable;
import java.util.AbstractMap;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import sensorrounds.fleet.Vehicle;

/**
 * The fleet register as it is sent to every executor. Vehicles lie in one array: Spark weighs what it sends by walking all
 * of its objects one by one, and takes a sample only of arrays.
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
}
