package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.Warning;

/** Walks the visits of one vehicle in time order and puts together the lives of its sensors. */
final class LifeBuilder {
    /** From this many silent wheels on, with none heard, the reader is the likelier cause. */
    private static final int WHEELS_FOR_A_DEAF_READER = 3;

    private static final Comparator<LoggedWheel> BY_PLACE =
            Comparator.comparing((LoggedWheel r) -> r.wheel().position()).thenComparing(LoggedWheel::source);

    private final Vehicle vehicle;
    private final HistorySettings settings;
    private final FindingLog findings;
    private final WheelBook book = new WheelBook();
    private final Origins origins;
    private final SensorWork work;
    private final CloneCheck clones;
    private final VehicleMoves moves;
    private String lastSet;

    LifeBuilder(Vehicle vehicle, HistorySettings settings, VehicleMoves moves, FindingLog findings) {
        this.vehicle = vehicle;
        this.settings = settings;
        this.findings = findings;
        this.moves = moves;
        this.origins = new Origins(vehicle, settings, moves);
        this.work = new SensorWork(book, origins, findings, settings);
        this.clones = new CloneCheck(book, findings, settings);
    }

    /** @param visits in time order */
    List<LifeDraft> build(List<Visit> visits) {
        if (hasNoWheelSensors(visits)) {
            return List.of();
        }
        visits.forEach(this::walk);
        if (!visits.isEmpty()) {
            depart(LocalDate.MAX);
            book.stays().check(visits.get(visits.size() - 1).day(), findings);
        }
        return book.lives();
    }

    /** Silence all along: on an indirect system, or where nothing says that there is a sensor at all. */
    private boolean hasNoWheelSensors(List<Visit> visits) {
        boolean indirect = vehicle.system() == MonitoringSystem.INDIRECT;
        boolean none = (indirect || vehicle.system() == MonitoringSystem.UNKNOWN)
                && visits.stream().noneMatch(v -> anySign(v, indirect));
        if (!none && !indirect) {
            return false;
        }
        List<Source> silent = visits.stream()
                .flatMap(v -> rows(v).stream())
                .filter(r -> r.wheel().read() == ReadOutcome.NO_ANSWER)
                .map(LoggedWheel::source)
                .toList();
        if (!silent.isEmpty()) {
            findings.vehicle(
                    Finding.Kind.NO_WHEEL_SENSORS,
                    visits.get(0).day(),
                    silent.size() + " tries met silence"
                            + (indirect
                                    ? ", and by the fleet register the vehicle's system is indirect: it has no wheel"
                                            + " sensors"
                                    : ", no wheel ever answered, and the fleet register does not say what system the"
                                            + " vehicle has"),
                    "the silence counts for nothing" + (indirect ? "" : "; write the system into the fleet register"),
                    silent);
        }
        return none;
    }

    private static boolean anySign(Visit visit, boolean indirect) {
        return visit.rows().stream()
                .filter(r -> r.wheel() != null)
                .anyMatch(r -> r.wheel().read() == ReadOutcome.OK
                        || SensorWork.endsALife(r)
                        || (!indirect && r.wheel().sensorId() != null));
    }

    private void walk(Visit visit) {
        LocalDate day = visit.day();
        depart(day);
        book.today(day);
        List<LoggedWheel> rows = rows(visit);
        String set = wheelSet(visit, rows);
        origins.visited(day, set);
        lastSet = set;

        RowMatcher matcher = new RowMatcher(book, origins, findings, settings, day, set);
        matcher.match(rows);
        Map<LifeDraft, List<LoggedWheel>> read = new LinkedHashMap<>();
        for (LoggedWheel row : rows) {
            LifeDraft life = isTry(row, set) && !matcher.isAfterWork(row) ? lifeOf(row, set, matcher, day) : null;
            if (life != null) {
                addReading(life, visit.header(), row);
                read.computeIfAbsent(life, k -> new ArrayList<>()).add(row);
            }
        }
        settle(visit, read, rows.stream().filter(r -> isTry(r, set)).toList());
        for (LoggedWheel row : rows) {
            if (SensorWork.endsALife(row)) {
                doWork(visit, row, set, matcher, read);
            }
        }
    }

    /** Sensors that answer on another vehicle by this day sit here no longer, whether or not anyone wrote it down. */
    private void depart(LocalDate day) {
        if (moves.departures().isEmpty()) {
            return;
        }
        for (Map.Entry<String, VehicleMoves.Departure> gone : new TreeMap<>(moves.departures()).entrySet()) {
            LocalDate left = gone.getValue().day();
            LifeDraft life = left.isAfter(day)
                    ? null
                    : book.seatedWith(gone.getKey())
                            .or(() -> book.laidAside(gone.getKey()))
                            .orElse(null);
            if (life == null || life.begunOn().isAfter(left)) {
                continue;
            }
            // From its last sign here on the wheel is another one: what was silent since was not this sensor.
            LocalDate lastSign = life.lastAnswered() == null ? life.begunOn() : life.lastAnswered();
            book.today(book.isSeated(life) ? left : life.endedOn());
            book.unseat(life);
            life.end(
                    life.endedOn() == null ? left : life.endedOn(),
                    new LifeDraft.Ending(LifeEnd.MOVED, null, life.lastAnswered(), null));
            findings.sensor(
                    Finding.Kind.MOVED,
                    life.sensorId(),
                    life.place(),
                    left,
                    life.name() + " was last heard at " + life.place().words() + " on " + lastSign
                            + " and answers on vehicle " + gone.getValue().toVehicle() + " since " + left,
                    "its life here ends without a failure and goes on there; no silence here since " + lastSign
                            + " is its own",
                    life.lastSources());
        }
    }

    private void doWork(
            Visit visit, LoggedWheel row, String set, RowMatcher matcher, Map<LifeDraft, List<LoggedWheel>> read) {
        LocalDate day = visit.day();
        Place place = new Place(set, row.wheel().position());
        LifeDraft old = book.at(place);
        if (old == null && !book.hasPlainValve(place)) {
            old = meet(row, place, day);
        }
        boolean answered = old != null
                && read.getOrDefault(old, List.of()).stream()
                        .anyMatch(r -> r.wheel().read() == ReadOutcome.OK);
        work.takeOff(row, place, old, answered, day);
        if (SensorWork.isReplacement(row)) {
            boolean afterWork = matcher.isAfterWork(row);
            LifeDraft fitted = work.fit(row, place, old, afterWork, day);
            if (afterWork) {
                addReading(fitted, visit.header(), row);
                fitted.answered(day);
            }
        }
    }

    private void addReading(LifeDraft life, VisitHeader visit, LoggedWheel row) {
        life.addReading(visit, row, settings);
    }

    /** Whose try it was: the sensor named, or else the one last known at the place, or else a new acquaintance. */
    private LifeDraft lifeOf(LoggedWheel row, String set, RowMatcher matcher, LocalDate day) {
        LifeDraft named = matcher.matched(row);
        if (named != null) {
            return matcher.isMisread(row) ? named : clones.answered(named, row, day);
        }
        Place place = new Place(set, row.wheel().position());
        LifeDraft here = book.at(place);
        if (here != null) {
            return here;
        }
        return meet(row, place, day);
    }

    /** A sensor not known so far, under its ID unless that is another one's. */
    private LifeDraft meet(LoggedWheel row, Place place, LocalDate day) {
        String id = row.wheel().sensorId();
        boolean anothers = id != null && book.lastWith(id).isPresent();
        return book.begin(new LifeDraft(place, anothers ? null : id, row.wheel().part(), originAt(place, row), day));
    }

    private LifeDraft.Origin originAt(Place place, LoggedWheel row) {
        return book.hasHistory(place)
                ? Origins.unknown("nobody wrote down its fitting").notBefore(book.emptySince(place))
                : origins.original(place.wheelSet(), row.wheel());
    }

    /**
     * A try that could have woken a sensor. Silence is no try where no sensor is to be expected: a plain valve, a spare
     * never heard, an indirect system.
     */
    private boolean isTry(LoggedWheel row, String set) {
        if (row.wheel().read() == ReadOutcome.OK) {
            return true;
        }
        Place place = new Place(set, row.wheel().position());
        return row.wheel().read() == ReadOutcome.NO_ANSWER
                && vehicle.system() != MonitoringSystem.INDIRECT
                && !book.hasPlainValve(place)
                && !(place.position().isSpare() && book.at(place) == null);
    }

    private void settle(Visit visit, Map<LifeDraft, List<LoggedWheel>> read, List<LoggedWheel> tries) {
        LocalDate day = visit.day();
        long heard =
                tries.stream().filter(r -> r.wheel().read() == ReadOutcome.OK).count();
        boolean deaf = heard == 0 && tries.size() >= WHEELS_FOR_A_DEAF_READER;
        if (deaf) {
            findings.vehicle(
                    Finding.Kind.READER_HEARD_NOTHING,
                    day,
                    "none of the " + tries.size() + " wheels tried answered"
                            + (visit.header().readerId() == null
                                    ? ""
                                    : " reader " + visit.header().readerId()),
                    "the visit counts for no sensor's silence",
                    tries.stream().map(LoggedWheel::source).toList());
        }
        boolean oneSilent = tries.size() - heard == 1;
        read.forEach((life, rows) -> {
            if (rows.stream().anyMatch(r -> r.wheel().read() == ReadOutcome.OK)) {
                noteAliveAgain(life, rows.get(0), day);
                life.answered(day);
            } else if (!deaf) {
                life.silent(day);
                if (oneSilent
                        && visit.header().warning() == Warning.SYSTEM_FAULT
                        && visit.header().warningSince() != null) {
                    life.warnedSince(visit.header().warningSince());
                }
            }
        });
    }

    private void noteAliveAgain(LifeDraft life, LoggedWheel row, LocalDate day) {
        if (life.silentDays() >= settings.silentVisitsForFailure()) {
            List<Source> sources = new ArrayList<>();
            life.readings().stream().filter(r -> !r.answered()).forEach(r -> sources.add(r.source()));
            sources.add(row.source());
            findings.sensor(
                    Finding.Kind.ALIVE_AGAIN,
                    life.sensorId(),
                    new Place(life.place().wheelSet(), row.wheel().position()),
                    day,
                    life.name() + " was silent at " + life.silentDays() + " visits in a row, the last on "
                            + life.lastSilent() + ", and answers again",
                    "the silence was no death: its life goes on, and its silences still count as reads",
                    sources);
        }
    }

    /** The set on the vehicle: as written down, or else the one whose sensors answer. */
    private String wheelSet(Visit visit, List<LoggedWheel> rows) {
        Set<String> heard = RowMatcher.heardIds(rows);
        String named = visit.header().wheelSet();
        if (named != null) {
            boolean sameWheels = book.seatedInSet(null).stream().anyMatch(l -> heard.contains(l.sensorId()));
            if (book.seatedInSet(named).isEmpty() && sameWheels) {
                book.nameSet(named);
                origins.nameSet(named);
            }
            return named;
        }
        Map<String, Integer> votes = new LinkedHashMap<>();
        for (String set : sets(book.lives())) {
            long known = book.seatedInSet(set).stream()
                    .filter(l -> heard.contains(l.sensorId()))
                    .count();
            if (known > 0) {
                votes.put(set, (int) known);
            }
        }
        if (votes.isEmpty()) {
            return heard.size() > 1 ? null : lastSet;
        }
        return votes.entrySet().stream()
                .max(Map.Entry.<String, Integer>comparingByValue()
                        .thenComparing(Map.Entry::getKey, Comparator.nullsLast(Comparator.reverseOrder())))
                .orElseThrow()
                .getKey();
    }

    private static Set<String> sets(Collection<LifeDraft> lives) {
        Set<String> sets = new LinkedHashSet<>();
        lives.forEach(l -> sets.add(l.place().wheelSet()));
        return sets;
    }

    private static List<LoggedWheel> rows(Visit visit) {
        List<LoggedWheel> rows = new ArrayList<>(visit.rows().size());
        for (LoggedWheel row : visit.rows()) {
            if (row.wheel() != null) {
                rows.add(row);
            }
        }
        rows.sort(BY_PLACE);
        return rows;
    }
}
