package sensorrounds.season;

import java.io.Serializable;
import java.time.Month;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;

/**
 * Air temperatures written down at visits, counted by depot, month of the year and whole degree: a mergeable state of whole
 * numbers. A visit counts once, however many sensors it read. Not thread safe.
 */
public final class MonthTemperatures implements Serializable {
    private static final long serialVersionUID = 1;
    /** Place of vehicles whose depot is not known. */
    private static final String NOWHERE = "";

    /** Visits by whole degree, of each month of each depot. */
    private final Map<Place, TreeMap<Integer, Long>> degrees = new HashMap<>();

    private record Place(String depot, Month month) implements Serializable {}

    /** Counts the visits of one vehicle. */
    public MonthTemperatures add(VehicleHistory history) {
        Set<String> counted = new HashSet<>();
        for (SensorLife life : history.lives()) {
            for (LifeReading reading : life.readings()) {
                if (reading.ambientCelsius() != null && counted.add(visit(reading))) {
                    add(history.vehicle().depot(), reading.day().getMonth(), reading.ambientCelsius());
                }
            }
        }
        return this;
    }

    private static String visit(LifeReading reading) {
        return reading.visitId() == null ? reading.day().toString() : reading.visitId();
    }

    /** @param depot null when not known */
    void add(String depot, Month month, double celsius) {
        cell(new Place(depot == null ? NOWHERE : depot, month)).merge((int) Math.rint(celsius), 1L, Long::sum);
    }

    /** Takes in the counts of another part of the fleet. */
    public MonthTemperatures merge(MonthTemperatures other) {
        other.degrees.forEach((place, cells) -> {
            TreeMap<Integer, Long> mine = cell(place);
            cells.forEach((degree, visits) -> mine.merge(degree, visits, Long::sum));
        });
        return this;
    }

    /** Depots with a temperature, by name. */
    Set<String> depots() {
        Set<String> depots = new TreeSet<>();
        degrees.keySet().forEach(place -> depots.add(place.depot()));
        depots.remove(NOWHERE);
        return depots;
    }

    /** Temperatures of a month at one depot. */
    Sampled of(String depot, Month month) {
        return new Sampled(degrees.getOrDefault(new Place(depot == null ? NOWHERE : depot, month), new TreeMap<>()));
    }

    /** Temperatures of a month in the whole fleet. */
    Sampled of(Month month) {
        TreeMap<Integer, Long> all = new TreeMap<>();
        degrees.forEach((place, cells) -> {
            if (place.month() == month) {
                cells.forEach((degree, visits) -> all.merge(degree, visits, Long::sum));
            }
        });
        return new Sampled(all);
    }

    private TreeMap<Integer, Long> cell(Place place) {
        return degrees.computeIfAbsent(place, p -> new TreeMap<>());
    }

    /** Visits by whole degree. */
    record Sampled(TreeMap<Integer, Long> visits) {
        long count() {
            return visits.values().stream().mapToLong(Long::longValue).sum();
        }

        /** The middle one, or between the two middle ones, to the whole degree they were counted in. */
        Optional<Double> median() {
            long count = count();
            return count == 0 ? Optional.empty() : Optional.of((at((count - 1) / 2) + at(count / 2)) / 2.0);
        }

        private int at(long place) {
            long passed = 0;
            for (Map.Entry<Integer, Long> degree : visits.entrySet()) {
                passed += degree.getValue();
                if (passed > place) {
                    return degree.getKey();
                }
            }
            throw new IllegalStateException("no temperature at place " + place + " of " + passed);
        }
    }
}
