package sensorrounds.condition;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;

/**
 * The days on which a vehicle was visited, what its system's warning showed on arrival, and which wheel set was on it from
 * then on. A sensor speaks through the warning only while its set is on the road: a stored set, a spare, a vehicle that
 * shows no warning are not monitored, and quiet says nothing of them.
 */
final class RoadVisits {
    /** What the system's warning says at a visit; a low-pressure warning hides it. */
    enum Sign {
        /** Not written down, hidden, or not shown by such vehicles. */
        NONE,
        /** The warning was why the visit took place. */
        CALLED,
        /** On, at a visit for another reason. */
        LIT,
        /** Off. */
        DARK
    }

    private final boolean shows;
    private final List<LocalDate> days = new ArrayList<>();
    private final Map<LocalDate, Sign> signs = new HashMap<>();
    private final Set<LocalDate> called = new HashSet<>();
    private final Map<LocalDate, String> sets = new HashMap<>();

    private RoadVisits(boolean shows) {
        this.shows = shows;
    }

    /** @param shows whether vehicles of this class show a warning */
    static RoadVisits of(VehicleHistory history, boolean shows) {
        RoadVisits visits = new RoadVisits(shows && history.vehicle().system() != MonitoringSystem.INDIRECT);
        TreeMap<LocalDate, Sign> byDay = new TreeMap<>();
        for (VisitSummary v : history.visits()) {
            byDay.merge(v.day(), sign(v), RoadVisits::stronger);
            if (v.reason() == VisitReason.WARNING) {
                visits.called.add(v.day());
            }
        }
        history.lives().forEach(l -> l.readings().forEach(r -> byDay.putIfAbsent(r.day(), Sign.NONE)));
        visits.signs.putAll(byDay);
        visits.days.addAll(byDay.keySet());
        visits.noteSets(history);
        return visits;
    }

    private static Sign sign(VisitSummary visit) {
        Warning warning = visit.warning();
        if (warning == Warning.SYSTEM_FAULT || warning == Warning.MESSAGE) {
            return visit.reason() == VisitReason.WARNING ? Sign.CALLED : Sign.LIT;
        }
        return warning == Warning.NONE && visit.reason() != VisitReason.WARNING ? Sign.DARK : Sign.NONE;
    }

    private static Sign stronger(Sign a, Sign b) {
        if (a == Sign.NONE || b == Sign.NONE) {
            return a == Sign.NONE ? b : a;
        }
        return a.compareTo(b) <= 0 ? a : b;
    }

    /** The set on the vehicle after each visit is the one read there; at visits that read none it is the one before. */
    private void noteSets(VehicleHistory history) {
        Set<String> named = new HashSet<>();
        history.lives().forEach(l -> named.add(l.wheelSet()));
        named.remove(null);
        if (named.isEmpty()) {
            return;
        }
        for (SensorLife life : history.lives()) {
            boolean spare = life.position() != null && life.position().isSpare();
            for (LifeReading r : life.readings()) {
                if (!spare && life.wheelSet() != null && r.answered()) {
                    sets.put(r.day(), life.wheelSet());
                }
            }
        }
        String before = null;
        for (LocalDate day : days) {
            before = sets.getOrDefault(day, before);
            sets.put(day, before);
        }
    }

    /** In order. */
    List<LocalDate> days() {
        return days;
    }

    /** Sign at the visit of a day; NONE on a day without one. */
    Sign sign(LocalDate day) {
        return signs.getOrDefault(day, Sign.NONE);
    }

    /**
     * The same for a sensor found broken: a stem that leaks shows as low pressure, and that is what the driver came for.
     */
    Sign signOfBreak(LocalDate day) {
        return called.contains(day) ? Sign.CALLED : sign(day);
    }

    /** Whether a sensor's death would show in the time after a visit; before the first visit, as after it. */
    boolean monitored(SensorLife life, int visit) {
        if (!shows
                || days.isEmpty()
                || (life.position() != null && life.position().isSpare())) {
            return false;
        }
        return life.wheelSet() == null
                || sets.isEmpty()
                || Objects.equals(sets.get(days.get(Math.max(0, visit))), life.wheelSet());
    }
}
