package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** From when to when each sensor sat at each place of one vehicle: what a place that holds one sensor is held against. */
final class Stays {
    /** A sensor at a place; {@code to} is null while it sits there. */
    record Stay(LifeDraft life, Place place, LocalDate from, LocalDate to) {}

    private final Map<LifeDraft, Stay> open = new LinkedHashMap<>();
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

    List<Stay> all() {
        List<Stay> all = new ArrayList<>(ended);
        all.addAll(open.values());
        return all;
    }

    /**
     * Holds the stays against each other, at each place and for each sensor: two sensors at one place at once, or one sensor
     * at two, would be a fault of ours. It is told among the findings, so that one vehicle does not stop a run.
     *
     * @param lastDay day until which those still there are taken to stay
     */
    void check(LocalDate lastDay, FindingLog findings) {
        List<LifeIntervals.Interval> intervals = new ArrayList<>();
        Map<LifeDraft, String> names = new LinkedHashMap<>();
        for (Stay stay : all()) {
            String life = names.computeIfAbsent(
                    stay.life(), l -> l.name() + " begun on " + l.begunOn() + ", number " + names.size());
            LocalDate to = stay.to() == null ? lastDay : stay.to();
            if (to.isAfter(stay.from())) {
                String place = stay.place().words();
                intervals.add(interval(place, stay.from(), to, life));
                intervals.add(interval(life, stay.from(), to, place));
            }
        }
        for (LifeIntervals.Contradiction c : LifeIntervals.check(intervals)) {
            // A place may stand empty, and sensors follow one another and move: only overlaps contradict.
            if (c.kind() == LifeIntervals.Kind.OVERLAP) {
                findings.vehicle(
                        Finding.Kind.IMPOSSIBLE_ORDER,
                        LocalDate.ofEpochDay(c.later().from()),
                        "the lives built here overlap at " + c.later().subject() + ": " + days(c.earlier()) + " and "
                                + days(c.later()),
                        "a fault of the program and not of the logs: please report it, and trust neither life",
                        List.of());
            }
        }
    }

    private static LifeIntervals.Interval interval(String subject, LocalDate from, LocalDate to, String state) {
        return new LifeIntervals.Interval(subject, from.toEpochDay(), to.toEpochDay(), state, null);
    }

    private static String days(LifeIntervals.Interval i) {
        return i.state() + " from " + LocalDate.ofEpochDay(i.from()) + " to " + LocalDate.ofEpochDay(i.to());
    }
}
