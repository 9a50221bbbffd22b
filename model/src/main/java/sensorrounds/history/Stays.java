package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** From when to when each sensor sat at each place of one vehicle: what a place that holds one sensor is held against. */
final class Stays {
    /** A sensor at a place; {@code to} is null while it sits there. */
    record Stay(LifeDraft life, Place place, LocalDate from, LocalDate to) {}

    private final Map<LifeDraft, Stay> open = new IdentityHashMap<>();
    private final List<Stay> ended = new ArrayList<>();

    void begin(LifeDraft life, Place place, LocalDate day) {
        open.put(life, new Stay(life, place, day, null));
    }

    void end(LifeDraft life, LocalDate day) {
        Stay stay = open.remove(life);
        if (stay != null) {
            ended.add(new Stay(life, stay.place(), stay.from(), day));
        }
    }

    /** The set had no name when these stays began; it has one now. */
    void nameSet(String name) {
        open.replaceAll((life, stay) -> named(stay, name));
        ended.replaceAll(stay -> named(stay, name));
    }

    private static Stay named(Stay stay, String name) {
        return stay.place().wheelSet() != null
                ? stay
                : new Stay(stay.life(), new Place(name, stay.place().position()), stay.from(), stay.to());
    }

    List<Stay> all() {
        List<Stay> all = new ArrayList<>(ended);
        all.addAll(open.values());
        return all;
    }

    /**
     * Holds the stays against each other, at each place and for each sensor.
     *
     * @param lastDay day until which those still there are taken to stay
     * @throws IllegalStateException when two sensors sit at one place at once, or one sensor at two: a fault of ours
     */
    void check(String vehicleId, LocalDate lastDay) {
        List<LifeIntervals.Interval> intervals = new ArrayList<>();
        Map<LifeDraft, String> names = new IdentityHashMap<>();
        for (Stay stay : all()) {
            String life = names.computeIfAbsent(stay.life(), l -> "sensor " + names.size());
            LocalDate to = stay.to() == null ? lastDay : stay.to();
            if (to.isAfter(stay.from())) {
                long from = stay.from().toEpochDay();
                intervals.add(new LifeIntervals.Interval(stay.place().words(), from, to.toEpochDay(), life, null));
                intervals.add(new LifeIntervals.Interval(
                        life, from, to.toEpochDay(), stay.place().words(), null));
            }
        }
        for (LifeIntervals.Contradiction c : LifeIntervals.check(intervals)) {
            // A place may stand empty, and sensors follow one another and move: only overlaps contradict.
            if (c.kind() == LifeIntervals.Kind.OVERLAP) {
                throw new IllegalStateException(
                        "the lives built for vehicle " + vehicleId + " contradict each other at "
                                + c.later().subject() + ": " + days(c.earlier()) + " and " + days(c.later())
                                + "; this is a fault of the program, not of the logs");
            }
        }
    }

    private static String days(LifeIntervals.Interval i) {
        return i.state() + " from " + LocalDate.ofEpochDay(i.from()) + " to " + LocalDate.ofEpochDay(i.to());
    }
}
