package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelPosition;

/**
 * Finds, for the rows of one visit, the lives that their sensor IDs name, and moves sensors to where they were read. All
 * rows are looked at before anything moves, so that a rotation of four wheels is four moves and no loss.
 */
final class RowMatcher {
    private static final int USUAL_WHEELS = 6;
    private static final String REVIVED =
            "it begins a new life of unknown age, judged by its own reads from now on; the old life stays as recorded";

    private final WheelBook book;
    private final Origins origins;
    private final FindingLog findings;
    private final HistorySettings settings;
    private final LocalDate day;
    private final String wheelSet;
    private final Map<LoggedWheel, LifeDraft> matched = new IdentityHashMap<>(USUAL_WHEELS);
    private final Map<String, LoggedWheel> homeOf = new LinkedHashMap<>();
    private final List<LoggedWheel> misread = new ArrayList<>();
    private final List<LoggedWheel> newcomers = new ArrayList<>();
    private final List<LoggedWheel> afterWork = new ArrayList<>();

    RowMatcher(
            WheelBook book,
            Origins origins,
            FindingLog findings,
            HistorySettings settings,
            LocalDate day,
            String wheelSet) {
        this.book = book;
        this.origins = origins;
        this.findings = findings;
        this.settings = settings;
        this.day = day;
        this.wheelSet = wheelSet;
    }

    /** Matches the rows, which come in order of position. */
    void match(List<LoggedWheel> rows) {
        rows.stream().filter(this::isReadAfterWork).forEach(afterWork::add);
        findHomes(rows);
        Collection<LifeDraft> taken = matched.values();
        for (LoggedWheel row : rows) {
            if (isHome(row)) {
                Optional<LifeDraft> life = book.onVehicle(row.wheel().sensorId(), place(row), taken);
                life.ifPresentOrElse(l -> matched.put(row, l), () -> newcomers.add(row));
            }
        }
        for (LoggedWheel row : rows) {
            String id = row.wheel().sensorId();
            if (row.wheel().read() == ReadOutcome.NO_ANSWER && id != null && !homeOf.containsKey(id)) {
                // A silent row's ID comes from the vehicle's list, which may still be the other set's.
                book.onVehicle(id, place(row), taken)
                        .filter(l -> Objects.equals(l.place().wheelSet(), wheelSet))
                        .ifPresent(l -> matched.put(row, l));
            }
        }
        moveAll(rows);
        newcomers.forEach(this::welcome);
        for (LoggedWheel row : misread) {
            matched.put(row, matched.get(homeOf.get(row.wheel().sensorId())));
        }
    }

    /** The life that the row's ID names; null when the row names none. */
    LifeDraft matched(LoggedWheel row) {
        return matched.get(row);
    }

    /** The row's ID is another wheel's: the wrong wheel answered, and nothing is known of this one. */
    boolean isMisread(LoggedWheel row) {
        return misread.contains(row);
    }

    /** The row was read after the work: its ID is the new sensor's. */
    boolean isAfterWork(LoggedWheel row) {
        return afterWork.contains(row);
    }

    private boolean isHome(LoggedWheel row) {
        return isHeard(row) && !isMisread(row);
    }

    private boolean isHeard(LoggedWheel row) {
        return row.wheel().read() == ReadOutcome.OK && row.wheel().sensorId() != null && !isAfterWork(row);
    }

    /** A replacement whose row carries an ID nobody knows, on a wheel whose sensor is known by another one. */
    private boolean isReadAfterWork(LoggedWheel row) {
        if (!SensorWork.isReplacement(row)) {
            return false;
        }
        String id = row.wheel().sensorId();
        LifeDraft here = book.at(place(row));
        return row.wheel().read() == ReadOutcome.OK
                && id != null
                && !Boolean.TRUE.equals(row.wheel().cloned())
                && (row.wheel().newSensorId() == null
                        || row.wheel().newSensorId().equals(id))
                && here != null
                && here.sensorId() != null
                && book.lastWith(id).isEmpty();
    }

    private void findHomes(List<LoggedWheel> rows) {
        Map<String, List<LoggedWheel>> byId = new LinkedHashMap<>();
        rows.stream()
                .filter(this::isHeard)
                .forEach(r -> byId.computeIfAbsent(r.wheel().sensorId(), k -> new ArrayList<>())
                        .add(r));
        byId.forEach((id, same) -> {
            List<LoggedWheel> home = new ArrayList<>(1);
            for (LoggedWheel r : same) {
                LifeDraft here = book.at(place(r));
                if (here != null && id.equals(here.sensorId())) {
                    home.add(r);
                }
            }
            List<LoggedWheel> kept = home.isEmpty() ? same.subList(0, 1) : home;
            homeOf.put(id, kept.get(0));
            if (kept.size() == same.size()) {
                return;
            }
            same.stream().filter(r -> !kept.contains(r)).forEach(r -> {
                misread.add(r);
                findings.sensor(
                        Finding.Kind.TWO_PLACES_AT_ONCE,
                        id,
                        place(r),
                        day,
                        "sensor " + id + " answered at "
                                + kept.get(0).wheel().position().words() + " and at "
                                + r.wheel().position().words() + " of one visit",
                        "it is taken to sit at "
                                + kept.get(0).wheel().position().words()
                                + "; the second answer is kept as one more reading of it and says nothing about the"
                                + " wheel at " + r.wheel().position().words(),
                        List.of(kept.get(0).source(), r.source()));
            });
        });
    }

    private void moveAll(List<LoggedWheel> rows) {
        List<LoggedWheel> movers = rows.stream()
                .filter(r -> matched.get(r) != null && !matched.get(r).place().equals(place(r)))
                .toList();
        Set<WheelPosition> free = new TreeSet<>();
        for (LoggedWheel row : movers) {
            LifeDraft life = matched.get(row);
            book.unseat(life);
            if (Objects.equals(life.place().wheelSet(), wheelSet)) {
                free.add(life.place().position());
            }
        }
        List<LifeDraft> displaced = new ArrayList<>();
        for (LoggedWheel row : movers) {
            LifeDraft life = matched.get(row);
            Place from = life.place();
            LifeDraft incumbent = book.at(place(row));
            if (incumbent != null) {
                book.unseat(incumbent);
                displaced.add(incumbent);
            }
            book.seat(life, place(row));
            List<Source> sources = new ArrayList<>(life.lastSources());
            sources.add(row.source());
            findings.sensor(
                    Finding.Kind.MOVED,
                    life.sensorId(),
                    place(row),
                    day,
                    life.name() + " was last at " + from.words() + " and is now at "
                            + place(row).words(),
                    "its life goes on at the new place",
                    sources);
        }
        free.removeIf(p -> book.at(new Place(wheelSet, p)) != null);
        newcomers.forEach(r -> free.remove(r.wheel().position()));
        List<WheelPosition> left = new ArrayList<>(free);
        for (LifeDraft life : displaced) {
            if (left.isEmpty()) {
                layAside(life, null);
            } else {
                swapTo(life, left);
            }
        }
    }

    private void swapTo(LifeDraft life, List<WheelPosition> left) {
        String certainty =
                left.size() == 1 ? "the only place left free" : "one of " + left.size() + " places left free";
        Place from = life.place();
        Place to = new Place(wheelSet, left.remove(0));
        book.seat(life, to);
        findings.sensor(
                Finding.Kind.MOVED,
                life.sensorId(),
                to,
                day,
                life.name() + " was at " + from.words() + ", where another sensor now answers",
                "it is taken to sit at " + to.words() + ", " + certainty,
                life.lastSources());
    }

    private void layAside(LifeDraft life, LoggedWheel row) {
        life.layAside(day);
        List<Source> sources = new ArrayList<>(life.lastSources());
        if (row != null) {
            sources.add(row.source());
        }
        findings.sensor(
                Finding.Kind.UNRECORDED_CHANGE,
                life.sensorId(),
                life.place(),
                day,
                life.name() + " was at " + life.place().words()
                        + ", where another sensor now answers; no replacement is" + " written down",
                life.silentDays() >= settings.silentVisitsForFailure()
                        ? "it had fallen silent before and stays counted as failed"
                        : "its life ends as lost at its last answer; that is no failure",
                sources);
    }

    /** A heard ID that no sensor on the vehicle carries. */
    private void welcome(LoggedWheel row) {
        String id = row.wheel().sensorId();
        Place here = place(row);
        LifeDraft incumbent = book.at(here);
        Optional<LifeDraft> returning = book.laidAside(id);
        if (returning.isEmpty() && incumbent != null && mayTakeId(incumbent)) {
            adopt(row, incumbent);
            matched.put(row, incumbent);
            return;
        }
        if (incumbent != null) {
            book.unseat(incumbent);
            layAside(incumbent, row);
        }
        if (returning.isPresent()) {
            comeBack(row, returning.get());
            matched.put(row, returning.get());
            return;
        }
        LifeDraft life = new LifeDraft(here, id, row.wheel().part(), originOf(row, incumbent), day);
        if (life.part() == null && life.origin().basis().isOriginal()) {
            life.adoptPart(origins.originalPart());
        }
        if (origins.arrival(id) != null) {
            life.cameFrom(origins.arrival(id));
        }
        matched.put(row, book.begin(life));
    }

    /** An ID not written down at the fitting, or written down wrong, is learnt from the first answer there. */
    private boolean mayTakeId(LifeDraft incumbent) {
        return incumbent.isFresh()
                || (incumbent.sensorId() == null && incumbent.silentDays() < settings.silentVisitsForFailure());
    }

    private void adopt(LoggedWheel row, LifeDraft incumbent) {
        String id = row.wheel().sensorId();
        String written = incumbent.sensorId();
        boolean carriedBefore = book.lastWith(id).isPresent();
        incumbent.adopt(id);
        List<Source> sources = new ArrayList<>(incumbent.lastSources());
        sources.add(row.source());
        if (carriedBefore) {
            findings.sensor(
                    Finding.Kind.CLONED_ID,
                    id,
                    place(row),
                    day,
                    "the sensor fitted at " + place(row).words() + " answers with the ID of one taken off before",
                    "it is taken as a new sensor programmed with the old ID, fitted on " + incumbent.begunOn(),
                    sources);
        } else if (written != null) {
            findings.sensor(
                    Finding.Kind.UNRECORDED_CHANGE,
                    id,
                    place(row),
                    day,
                    "sensor " + written + " is written down as fitted at "
                            + place(row).words() + " on " + incumbent.begunOn() + ", and the first to answer there is "
                            + id,
                    "the ID is taken as written down wrong: the sensor fitted on that day is " + id,
                    sources);
        }
    }

    private void comeBack(LoggedWheel row, LifeDraft life) {
        List<Source> sources = new ArrayList<>(life.lastSources());
        sources.add(row.source());
        findings.sensor(
                Finding.Kind.UNRECORDED_CHANGE,
                life.sensorId(),
                place(row),
                day,
                life.name() + " had given way to another sensor on " + life.endedOn() + " and answers again at "
                        + place(row).words(),
                "its life goes on",
                sources);
        life.takeUpAgain();
        book.seat(life, place(row));
    }

    private LifeDraft.Origin originOf(LoggedWheel row, LifeDraft incumbent) {
        String id = row.wheel().sensorId();
        Place here = place(row);
        Optional<LifeDraft> before = book.lastWith(id);
        if (before.isPresent()) {
            LifeDraft old = before.get();
            List<Source> sources = new ArrayList<>(old.lastSources());
            sources.add(row.source());
            findings.sensor(
                    Finding.Kind.ALIVE_AGAIN,
                    id,
                    place(row),
                    day,
                    "sensor " + id + " was taken off on " + old.endedOn() + (isFailed(old) ? " as failed" : "")
                            + " and answers again at " + here.words(),
                    REVIVED,
                    sources);
            return Origins.unknown("its ID is that of a sensor taken off on " + old.endedOn());
        }
        Arrival arrival = origins.arrival(id);
        if (arrival != null) {
            noteArrival(row, arrival);
            return Origins.of(arrival);
        }
        if (incumbent == null && !book.hasHistory(here)) {
            return origins.original(wheelSet, row.wheel());
        }
        if (incumbent == null) {
            findings.sensor(
                    Finding.Kind.UNRECORDED_CHANGE,
                    id,
                    place(row),
                    day,
                    "sensor " + id + " answers at " + here.words() + ", and nobody wrote down that it was fitted there",
                    "it begins a life of unknown age",
                    List.of(row.source()));
        }
        return Origins.unknown("nobody wrote down its fitting, on or before " + day)
                .notBefore(notBefore(row, incumbent));
    }

    /** It came after the last sign of the sensor before it, and after the tyre was made: the bead is off for both. */
    private LocalDate notBefore(LoggedWheel row, LifeDraft incumbent) {
        LocalDate since = incumbent == null ? book.emptySince(place(row)) : incumbent.lastSign();
        LocalDate tyre = row.wheel().tyreDate();
        return since != null && tyre != null && tyre.isAfter(since) && !tyre.isAfter(day) ? tyre : since;
    }

    private static boolean isFailed(LifeDraft life) {
        return life.ending() != null && life.ending().end() == LifeEnd.FAILED;
    }

    private void noteArrival(LoggedWheel row, Arrival arrival) {
        String id = row.wheel().sensorId();
        if (arrival.takenForDead()) {
            findings.sensor(
                    Finding.Kind.ALIVE_AGAIN,
                    id,
                    place(row),
                    day,
                    "sensor " + id + " was taken off vehicle " + arrival.fromVehicle()
                            + " as failed and answers here at " + place(row).words(),
                    REVIVED,
                    List.of(row.source()));
        } else {
            findings.sensor(
                    Finding.Kind.MOVED,
                    id,
                    place(row),
                    day,
                    "sensor " + id + " was on vehicle " + arrival.fromVehicle() + " until " + arrival.lastAnswered()
                            + " and answers here since " + day,
                    arrival.fittedOn() == null
                            ? "its life goes on; its age was not known there either"
                            : "its life goes on with the age it had: age zero on " + arrival.fittedOn(),
                    List.of(row.source()));
        }
    }

    private Place place(LoggedWheel row) {
        return new Place(wheelSet, row.wheel().position());
    }

    /** IDs heard at this visit. */
    static Set<String> heardIds(List<LoggedWheel> rows) {
        Set<String> ids = new HashSet<>();
        for (LoggedWheel row : rows) {
            if (row.wheel().read() == ReadOutcome.OK && row.wheel().sensorId() != null) {
                ids.add(row.wheel().sensorId());
            }
        }
        return ids;
    }
}
