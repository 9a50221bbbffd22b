package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Sensors that went from one vehicle to another, which no vehicle's own visits can tell: an ID that is heard on one vehicle,
 * and later on another, and never on both over the same time. One heard on two vehicles over the same time has not moved.
 * Where one of them hears it before and after each of a few days on the other, it sits on the one and strayed into the
 * visits of the other: a trailer logged under its tractor, a neighbour's wheel that answered ({@link SensorStrays}). Else it
 * travels or is two, and is left alone here.
 */
public final class MovedSensors implements Serializable {
    private static final long serialVersionUID = 1;

    /** On more vehicles than this an ID is nobody's own. */
    private static final int MOST_VEHICLES = 5;

    private static final Comparator<Heard> IN_TIME =
            Comparator.comparing(Heard::first).thenComparing(Heard::last).thenComparing(Heard::vehicleId);

    private final TreeMap<String, List<Heard>> chains;
    private final SensorStrays strays;

    private MovedSensors(TreeMap<String, List<Heard>> chains, SensorStrays strays) {
        this.chains = chains;
        this.strays = strays;
    }

    /**
     * When an ID answered on one vehicle.
     *
     * @param days days of its answers there, without repeats and in order; never empty
     */
    public record Heard(String sensorId, String vehicleId, List<LocalDate> days) implements Serializable {
        public Heard {
            days = days.stream().distinct().sorted().toList();
            if (days.isEmpty()) {
                throw new IllegalArgumentException(
                        "sensor " + sensorId + " on vehicle " + vehicleId + " without a day");
            }
        }

        /** Day of the first answer there. */
        public LocalDate first() {
            return days.get(0);
        }

        /** Day of the last answer there. */
        public LocalDate last() {
            return days.get(days.size() - 1);
        }
    }

    /**
     * What one vehicle knows of a sensor that went on.
     *
     * @param fittedOn day of age zero; null when not known, as {@code notBefore} and {@code part}
     * @param failed true when it counts as failed there
     */
    public record Known(
            String vehicleId,
            String sensorId,
            String lifeId,
            LocalDate lastAnswered,
            LocalDate fittedOn,
            LocalDate notBefore,
            String part,
            boolean failed)
            implements Serializable {}

    /** @param heard at most one for each ID and vehicle, in any order; IDs on one vehicle may be left out */
    public static MovedSensors of(Collection<Heard> heard) {
        TreeMap<String, List<Heard>> byId = new TreeMap<>();
        heard.forEach(
                h -> byId.computeIfAbsent(h.sensorId(), id -> new ArrayList<>()).add(h));
        byId.values().removeIf(ofId -> ofId.size() < 2 || ofId.size() > MOST_VEHICLES);
        SensorStrays strays = new SensorStrays();
        byId.values().stream().filter(MovedSensors::contradict).forEach(strays::takeFrom);
        byId.values().removeIf(ofId -> ofId.size() < 2 || contradict(ofId));
        byId.values().forEach(ofId -> ofId.sort(IN_TIME));
        return new MovedSensors(byId, strays);
    }

    /**
     * True when the sensor sits on another vehicle and was heard on this one by mistake.
     *
     * @param sensorId null for none
     */
    public boolean isStray(String sensorId, String vehicleId) {
        return sensorId != null && strays.of(vehicleId).containsKey(sensorId);
    }

    /** A day is an interval of its own, so that two vehicles on one day overlap. */
    private static boolean contradict(List<Heard> ofId) {
        return LifeIntervals.check(ofId.stream()
                        .map(h -> new LifeIntervals.Interval(
                                h.sensorId(),
                                2 * h.first().toEpochDay(),
                                2 * h.last().toEpochDay() + 1,
                                h.vehicleId(),
                                null))
                        .toList())
                .stream()
                .anyMatch(c -> c.kind() != LifeIntervals.Kind.JUMP);
    }

    /** IDs that moved. */
    public int count() {
        return chains.size();
    }

    /** Vehicles that a sensor went from. */
    public SortedSet<String> sources() {
        SortedSet<String> vehicles = new TreeSet<>();
        chains.values().forEach(chain -> chain.subList(0, chain.size() - 1).forEach(h -> vehicles.add(h.vehicleId())));
        return vehicles;
    }

    /** What is known without any history: the departures from each vehicle. */
    public Map<String, VehicleMoves> departures() {
        return moves(List.of());
    }

    /** What a vehicle's history, built with its {@link #departures}, tells of the sensors that went on. */
    public List<Known> known(VehicleHistory history) {
        List<Known> known = new ArrayList<>();
        chains.forEach((id, chain) -> {
            if (chain.subList(0, chain.size() - 1).stream()
                    .anyMatch(h -> h.vehicleId().equals(history.vehicleId()))) {
                life(history, id).ifPresent(l -> known.add(known(l)));
            }
        });
        return known;
    }

    private static Optional<SensorLife> life(VehicleHistory history, String id) {
        return history.lives().stream()
                .filter(l -> l.sensorId().equals(id) && l.lastAnswered() != null)
                .max(Comparator.comparingInt(SensorLife::generation));
    }

    private static Known known(SensorLife life) {
        return new Known(
                life.vehicleId(),
                life.sensorId(),
                life.lifeId(),
                life.lastAnswered(),
                life.fittedOn(),
                life.fittedNotBefore(),
                life.part(),
                life.end() == LifeEnd.FAILED);
    }

    /**
     * Departures and arrivals of each vehicle that has any.
     *
     * @param known of all {@link #sources}
     */
    public Map<String, VehicleMoves> moves(Collection<Known> known) {
        Map<String, Known> byLife = new HashMap<>();
        known.forEach(k -> byLife.put(k.vehicleId() + "/" + k.sensorId(), k));
        Map<String, Map<String, VehicleMoves.Departure>> departures = new HashMap<>();
        Map<String, Map<String, Arrival>> arrivals = new HashMap<>();
        chains.forEach((id, chain) -> {
            Known head = null;
            for (int i = 0; i + 1 < chain.size(); i++) {
                String from = chain.get(i).vehicleId();
                Heard to = chain.get(i + 1);
                departures
                        .computeIfAbsent(from, v -> new HashMap<>())
                        .put(id, new VehicleMoves.Departure(to.first(), to.vehicleId()));
                Known here = byLife.get(from + "/" + id);
                if (here == null) {
                    head = null;
                    continue;
                }
                // The age is the one it had on the first vehicle, unless it was counted as failed on the way.
                head = head == null || head.failed() ? here : head;
                arrivals.computeIfAbsent(to.vehicleId(), v -> new HashMap<>())
                        .put(
                                id,
                                new Arrival(
                                        from,
                                        here.lifeId(),
                                        here.lastAnswered(),
                                        head.fittedOn(),
                                        head.notBefore(),
                                        head.part(),
                                        here.failed()));
            }
        });
        Map<String, VehicleMoves> moves = new HashMap<>();
        SortedSet<String> vehicles = new TreeSet<>(departures.keySet());
        vehicles.addAll(arrivals.keySet());
        vehicles.addAll(strays.vehicles());
        vehicles.forEach(v -> moves.put(
                v,
                new VehicleMoves(
                        departures.getOrDefault(v, Map.of()), arrivals.getOrDefault(v, Map.of()), strays.of(v))));
        return moves;
    }
}
