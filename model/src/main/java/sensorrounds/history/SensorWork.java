package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** Recorded work that ends one life and begins the next. */
final class SensorWork {
    private final WheelBook book;
    private final Origins origins;
    private final FindingLog findings;
    private final HistorySettings settings;

    SensorWork(WheelBook book, Origins origins, FindingLog findings, HistorySettings settings) {
        this.book = book;
        this.origins = origins;
        this.findings = findings;
        this.settings = settings;
    }

    static boolean isReplacement(LoggedWheel row) {
        return row.wheel().work() == WheelWork.SENSOR_REPLACED;
    }

    static boolean endsALife(LoggedWheel row) {
        return isReplacement(row) || row.wheel().work() == WheelWork.PLAIN_VALVE_FITTED;
    }

    /**
     * Ends the life at the row's place.
     *
     * @param old null when nothing is known of the sensor taken off
     * @param answered whether that sensor answered at this visit, before the work
     */
    void takeOff(LoggedWheel row, Place place, LifeDraft old, boolean answered, LocalDate day) {
        if (old != null) {
            book.unseat(old);
            old.end(day, ending(old, row.wheel(), answered, day));
        }
        if (row.wheel().work() == WheelWork.PLAIN_VALVE_FITTED) {
            book.fitPlainValve(place);
        }
    }

    /** Begins the life of the sensor fitted. */
    LifeDraft fit(LoggedWheel row, Place place, LifeDraft old, boolean readAfterWork, LocalDate day) {
        WheelReading w = row.wheel();
        String id = w.newSensorId();
        if (id == null && readAfterWork) {
            id = w.sensorId();
        }
        if (id == null && Boolean.TRUE.equals(w.cloned())) {
            id = w.sensorId() != null ? w.sensorId() : old == null ? null : old.sensorId();
        }
        if (id != null) {
            noteKnownId(row, place, id, day);
        }
        Arrival arrival = origins.arrival(id);
        boolean used =
                arrival != null && !arrival.takenForDead() && book.lastWith(id).isEmpty();
        LifeDraft life = new LifeDraft(place, id, w.newPart(), used ? Origins.of(arrival) : Origins.fitted(day), day);
        life.fittedBy(row.source());
        if (used) {
            life.cameFrom(arrival);
            noteUsed(row, place, arrival, day);
        }
        return book.begin(life);
    }

    private void noteKnownId(LoggedWheel row, Place place, String id, LocalDate day) {
        LifeDraft carrier = book.lastWith(id).orElse(null);
        if (carrier == null) {
            return;
        }
        List<Source> sources = new ArrayList<>(carrier.lastSources());
        sources.add(row.source());
        if (book.isSeated(carrier)) {
            findings.sensor(
                    Finding.Kind.TWO_PLACES_AT_ONCE,
                    id,
                    place,
                    day,
                    "sensor " + id + " is written down as fitted at " + place.words() + " while it sits at "
                            + carrier.place().words(),
                    "the one fitted begins a life of its own under the same ID; the next reads will tell",
                    sources);
        } else {
            findings.sensor(
                    Finding.Kind.CLONED_ID,
                    id,
                    place,
                    day,
                    "the sensor fitted at " + place.words() + " carries the ID of one taken off",
                    "the ID is taken as programmed anew: a new life begins",
                    sources);
        }
    }

    private void noteUsed(LoggedWheel row, Place place, Arrival arrival, LocalDate day) {
        String id = row.wheel().newSensorId() == null
                ? row.wheel().sensorId()
                : row.wheel().newSensorId();
        findings.sensor(
                Finding.Kind.MOVED,
                id,
                place,
                day,
                "the sensor fitted at " + place.words() + ", " + id + ", was on vehicle " + arrival.fromVehicle()
                        + " until " + arrival.lastAnswered(),
                arrival.fittedOn() == null
                        ? "it counts as a used one whose age is not known"
                        : "it counts as a used one with the age it had: age zero on " + arrival.fittedOn(),
                List.of(row.source()));
    }

    private LifeDraft.Ending ending(LifeDraft old, WheelReading w, boolean answered, LocalDate day) {
        boolean silent = old.silentBy() != null || (w.read() == ReadOutcome.NO_ANSWER && !answered);
        WorkReason reason = w.workReason() == null ? WorkReason.UNKNOWN : w.workReason();
        return switch (reason) {
            case BATTERY_EXHAUSTED ->
                answered ? alive(old, LifeEnd.PREVENTIVE) : silentFailure(old, FailureCause.BATTERY, day);
            case NO_ANSWER -> answered ? alive(old, LifeEnd.PREVENTIVE) : silentFailure(old, FailureCause.UNKNOWN, day);
            case UNKNOWN -> silent ? silentFailure(old, FailureCause.UNKNOWN, day) : alive(old, LifeEnd.PREVENTIVE);
            case STEM_BROKEN, CORROSION -> visibleFailure(old, FailureCause.STEM_OR_CORROSION, answered, day);
            case INGRESS -> visibleFailure(old, FailureCause.INGRESS, answered, day);
            // It answered before the tyre came off and broke in the work: the day of failure is known.
            case TYRE_CHANGE_DAMAGE ->
                answered
                        ? new LifeDraft.Ending(LifeEnd.FAILED, FailureCause.TYRE_CHANGE_DAMAGE, day, day)
                        : silentFailure(old, FailureCause.TYRE_CHANGE_DAMAGE, day);
            case WRONG_TYPE, NOT_LEARNED -> alive(old, LifeEnd.PROCESS);
            case LOST, CUSTOMER_WHEELS -> alive(old, LifeEnd.LOST);
            case PREVENTIVE ->
                old.silentDays() >= settings.silentVisitsForFailure()
                        ? silentFailure(old, FailureCause.UNKNOWN, day)
                        : alive(old, LifeEnd.PREVENTIVE);
        };
    }

    private static LifeDraft.Ending alive(LifeDraft old, LifeEnd end) {
        return new LifeDraft.Ending(end, null, old.lastAnswered(), null);
    }

    /** It failed after its last answer and by the first day of the silence that led to the work. */
    private static LifeDraft.Ending silentFailure(LifeDraft old, FailureCause cause, LocalDate day) {
        LocalDate by = old.silentBy() == null ? day : old.silentBy();
        return new LifeDraft.Ending(LifeEnd.FAILED, cause, old.lastAnswered(), by);
    }

    /** A failure that is seen, not heard: a sensor that still answers may be broken since the visit before. */
    private static LifeDraft.Ending visibleFailure(LifeDraft old, FailureCause cause, boolean answered, LocalDate day) {
        return answered
                ? new LifeDraft.Ending(LifeEnd.FAILED, cause, old.answeredBefore(), day)
                : silentFailure(old, cause, day);
    }
}
