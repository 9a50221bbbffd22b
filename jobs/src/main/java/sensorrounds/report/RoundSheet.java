package sensorrounds.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sensorrounds.condition.WatchEntry;
import sensorrounds.history.FollowUp;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.replacement.Advice.Urgency;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.rounds.RoundStop;
import sensorrounds.visit.WheelPosition;

/**
 * What is to be done at one depot, gathered from all lists by vehicle.
 *
 * @param depot null for vehicles without one on record
 * @param vehicles those on the round of the week in its order; then the others, with a wheel without warning first, then those
 *     worth a stop, by saving
 */
record RoundSheet(String depot, List<VehicleTasks> vehicles) {

    /**
     * Tasks on one vehicle, wheels front to back, tasks for the whole vehicle first.
     *
     * @param stop its place on the round; null when it is not on it
     */
    record VehicleTasks(String vehicleId, List<Task> tasks, RoundStop stop) {
        double saving() {
            return tasks.stream().mapToDouble(Task::saving).sum();
        }

        /** The strongest of its tasks. */
        Weight weight() {
            return tasks.stream()
                    .map(Task::weight)
                    .min(Comparator.naturalOrder())
                    .orElse(Weight.WHILE_THERE);
        }
    }

    /** How much a task asks of the round, strongest first. */
    enum Weight {
        /** A wheel without a low-pressure warning: not weighed against money. */
        NO_WARNING,
        REASON_TO_STOP,
        WHILE_THERE
    }

    /**
     * One line with a box to tick.
     *
     * @param place in words; null for the vehicle as a whole
     * @param position orders the places; null for the vehicle, or when not known
     * @param sensorId null when no sensor is meant
     * @param part part to take along; null when none
     * @param what what to do
     * @param detail why, in a few words
     * @param saving what it saves, 0 where it is not about money
     */
    record Task(
            Weight weight,
            String place,
            WheelPosition position,
            String sensorId,
            String part,
            String what,
            String detail,
            double saving) {}

    private record SensorOn(String vehicleId, String sensorId) {}

    private static final String NO_DEPOT = "\uffff";

    long taskCount() {
        return vehicles.stream().mapToLong(v -> v.tasks().size()).sum();
    }

    /** The sheets by depot; vehicles without a depot last. */
    static List<RoundSheet> of(ReportData data) {
        Map<String, Map<String, List<Task>>> byDepot = new TreeMap<>();
        Map<String, RoundStop> stops = new HashMap<>();
        for (RoundStop stop : data.decisions().firstWeek()) {
            stops.put(stop.call().vehicleId(), stop);
            for (RankedReplacement r : stop.call().lines()) {
                add(byDepot, stop.depot(), stop.call().vehicleId(), replacement(data, r));
            }
            for (UnmonitoredWheel w : stop.call().unmonitored()) {
                add(byDepot, stop.depot(), w.vehicleId(), unmonitored(w));
            }
        }
        for (RankedReplacement r : data.ranked().rows()) {
            RoundStop stop = stops.get(r.outlook().sensor().vehicleId());
            if (stop != null && stop.call().lines().stream().anyMatch(l -> sameLife(l, r))) {
                continue;
            }
            if (r.advice().urgency().compareTo(Urgency.WHEN_IT_SUITS) <= 0) {
                add(byDepot, r.outlook().sensor().depot(), r.outlook().sensor().vehicleId(), replacement(data, r));
            }
        }
        for (UnmonitoredWheel w : data.unmonitored().rows()) {
            RoundStop stop = stops.get(w.vehicleId());
            if (stop == null || !stop.call().unmonitored().contains(w)) {
                add(byDepot, w.depot(), w.vehicleId(), unmonitored(w));
            }
        }
        for (RecurringVehicle v : Headline.recurring(data)) {
            v.suspects().stream()
                    .limit(1)
                    .forEach(s -> add(
                            byDepot,
                            v.depot(),
                            v.vehicleId(),
                            new Task(
                                    Weight.REASON_TO_STOP,
                                    s.position() == null ? null : Words.place(s.position(), null),
                                    s.position(),
                                    s.sensorId(),
                                    null,
                                    "Find the returning warning",
                                    s.nextStep(),
                                    0)));
        }
        for (FollowUp f : Headline.owed(data)) {
            add(byDepot, data.depots().get(f.vehicleId()), f.vehicleId(), proof(f));
        }
        Set<SensorOn> silent = data.unmonitored().rows().stream()
                .map(u -> new SensorOn(u.vehicleId(), u.sensorId()))
                .collect(Collectors.toSet());
        for (WatchEntry w : data.watch().rows()) {
            // A silent wheel stands among those without warning already.
            if (w.sign() == WatchEntry.Sign.SILENT_ONCE && silent.contains(new SensorOn(w.vehicleId(), w.sensorId()))) {
                continue;
            }
            add(byDepot, w.depot(), w.vehicleId(), watch(w));
        }
        List<RoundSheet> sheets = new ArrayList<>();
        byDepot.forEach((depot, byVehicle) ->
                sheets.add(new RoundSheet(depot.equals(NO_DEPOT) ? null : depot, vehicles(byVehicle, stops))));
        return sheets;
    }

    private static void add(Map<String, Map<String, List<Task>>> byDepot, String depot, String vehicleId, Task task) {
        byDepot.computeIfAbsent(depot == null ? NO_DEPOT : depot, d -> new TreeMap<>())
                .computeIfAbsent(vehicleId, v -> new ArrayList<>())
                .add(task);
    }

    private static boolean sameLife(RankedReplacement a, RankedReplacement b) {
        return a.outlook().sensor().lifeId().equals(b.outlook().sensor().lifeId());
    }

    private static List<VehicleTasks> vehicles(Map<String, List<Task>> byVehicle, Map<String, RoundStop> stops) {
        Comparator<Task> places = Comparator.comparing(
                        Task::position, Comparator.nullsFirst(Comparator.<WheelPosition>naturalOrder()))
                .thenComparing(Task::weight)
                .thenComparing(Task::what);
        return byVehicle.entrySet().stream()
                .map(e -> new VehicleTasks(
                        e.getKey(), e.getValue().stream().sorted(places).toList(), stops.get(e.getKey())))
                .sorted(Comparator.comparingInt(RoundSheet::place)
                        .thenComparing(VehicleTasks::weight)
                        .thenComparing(
                                Comparator.comparingDouble(VehicleTasks::saving).reversed())
                        .thenComparing(VehicleTasks::vehicleId))
                .toList();
    }

    /** On the round in its order, the others behind. */
    private static int place(VehicleTasks v) {
        return v.stop() == null ? Integer.MAX_VALUE : v.stop().order();
    }

    private static Task unmonitored(UnmonitoredWheel w) {
        String what = switch (w.certainty()) {
            case KNOWN -> "No low-pressure warning here: gauge by hand, inspect, offer a sensor";
            case PROBABLE -> "Probably no low-pressure warning here: gauge by hand, read again";
            case SYSTEM -> "System warning was on: gauge every tyre by hand until it is seen off";
        };
        return new Task(
                switch (w.certainty()) {
                    case KNOWN -> Weight.NO_WARNING;
                    case PROBABLE -> Weight.REASON_TO_STOP;
                    case SYSTEM -> Weight.WHILE_THERE;
                },
                w.position() == null ? null : Words.place(w.position(), w.wheelSet()),
                w.position(),
                w.sensorId(),
                null,
                what,
                w.reason(),
                0);
    }

    private static Task replacement(ReportData data, RankedReplacement r) {
        String detail = (Double.isNaN(r.outlook().chances().pHorizon())
                        ? ""
                        : "chance of failing within " + Format.count(data.run().horizonDays(), "day") + " "
                                + Format.chance(r.outlook().chances().pHorizon()) + ", ")
                + Words.of(r.outlook().sensor().lastReport());
        String what = switch (r.advice()) {
            case REPLACE_NOW -> "Replace the sensor";
            case READ_FIRST -> "Read first; replace it if it does not answer";
            case CHECK_PLACE_FIRST -> "Check receiver, wiring and place before fitting another sensor";
            case AT_NEXT_STOP -> "Replace the sensor if the vehicle is in anyway";
            case AT_SEASONAL_CHANGE -> "Replace the sensor when this wheel set goes on";
            case WHEN_OFF -> "Read it; replace it when the spare is off";
            case WATCH -> "Read again";
            case KEEP -> "Keep";
        };
        return new Task(
                r.advice().urgency() == Urgency.NOW ? Weight.REASON_TO_STOP : Weight.WHILE_THERE,
                Words.place(
                        r.outlook().sensor().position(), r.outlook().sensor().wheelSet()),
                r.outlook().sensor().position(),
                r.outlook().sensor().sensorId(),
                r.outlook().sensor().part(),
                what,
                detail,
                r.advice().urgency() == Urgency.NOW && !Double.isNaN(r.saving()) ? r.saving() : 0);
    }

    private static Task proof(FollowUp f) {
        return new Task(
                Weight.WHILE_THERE,
                null,
                null,
                null,
                null,
                f.outcomeMissing()
                        ? "Ask the driver whether the lamp came back on the drive of " + f.repairedOn()
                                + "; nobody wrote it down"
                        : "Prove the repair of " + f.repairedOn() + ": drive "
                                + Format.count(Math.round(f.requiredMinutes()), "minute") + " and look at the lamp",
                Words.of(f.repair()),
                0);
    }

    private static Task watch(WatchEntry w) {
        return new Task(
                Weight.WHILE_THERE,
                Words.place(w.position(), w.wheelSet()),
                w.position(),
                w.sensorId(),
                null,
                "Read again: " + Words.of(w.sign()).toLowerCase(Locale.ROOT),
                w.settledBy(),
                0);
    }
}
