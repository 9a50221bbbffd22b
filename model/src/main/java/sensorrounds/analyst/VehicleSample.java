package sensorrounds.analyst;

import java.io.Serializable;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;

/**
 * Whole vehicles up to a number of lives, drawn by a hash of their IDs: a mergeable state whose outcome depends neither
 * on the order nor on the partitioning. What needs to know which sensors share a vehicle cannot work on cells, and past
 * the limit more lives would sharpen limits that are narrow already. Not thread safe.
 */
public final class VehicleSample implements Serializable {
    private static final long serialVersionUID = 1;

    private final int most;
    private final TreeMap<Draw, SampledVehicle> vehicles = new TreeMap<>();
    private int held;
    private long lives;

    /** The place of a vehicle in the draw. */
    private record Draw(long hash, String vehicleId) implements Comparable<Draw>, Serializable {
        private static final Comparator<Draw> ORDER =
                Comparator.comparingLong(Draw::hash).thenComparing(Draw::vehicleId);

        @Override
        public int compareTo(Draw other) {
            return ORDER.compare(this, other);
        }
    }

    /** @param most lives to hold at most */
    public VehicleSample(int most) {
        this.most = most;
    }

    /** Takes in one vehicle; one without lives is passed over. */
    public VehicleSample add(SampledVehicle vehicle) {
        lives += vehicle.lives().size();
        hold(vehicle);
        return this;
    }

    /** Takes in the vehicles of another part of the fleet. */
    public VehicleSample merge(VehicleSample other) {
        lives += other.lives;
        other.vehicles.values().forEach(this::hold);
        return this;
    }

    /** The vehicles drawn, in the order of the draw. */
    public List<SampledVehicle> vehicles() {
        return List.copyOf(vehicles.values());
    }

    /** Lives of all vehicles, drawn or not. */
    public long lives() {
        return lives;
    }

    /** Lives of the vehicles drawn. */
    public int held() {
        return held;
    }

    private void hold(SampledVehicle vehicle) {
        if (vehicle.lives().isEmpty()) {
            return;
        }
        vehicles.put(new Draw(hash(vehicle.vehicleId()), vehicle.vehicleId()), vehicle);
        held += vehicle.lives().size();
        // Whoever is last among some is last among all, so letting go early never changes who is drawn.
        while (held > most && vehicles.size() > 1) {
            held -= vehicles.pollLastEntry().getValue().lives().size();
        }
    }

    /** FNV-1a over the ID's characters, then the finaliser of MurmurHash3: neighbours in the register fall far apart. */
    private static long hash(String id) {
        long h = 0xcbf29ce484222325L;
        for (int i = 0; i < id.length(); i++) {
            h = (h ^ id.charAt(i)) * 0x100000001b3L;
        }
        h = (h ^ (h >>> 33)) * 0xff51afd7ed558ccdL;
        h = (h ^ (h >>> 33)) * 0xc4ceb9fe1a85ec53L;
        return h ^ (h >>> 33);
    }
}
