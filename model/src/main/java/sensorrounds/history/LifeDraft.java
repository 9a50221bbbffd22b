package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelReading;

/** A sensor's life while the visits are walked through: facts are added in time order and nothing is judged yet. */
final class LifeDraft {
    /** How a life came to an end for good, with the dates the survival sample needs. */
    record Ending(LifeEnd end, FailureCause cause, LocalDate lastGood, LocalDate failedBy) {}

    /**
     * What the age rests on.
     *
     * @param notBefore earliest day of its fitting; null when nothing bounds it
     * @param why in words why the age is unknown, else null
     */
    record Origin(OriginBasis basis, LocalDate fittedOn, LocalDate notBefore, String why) {
        /** The same with an earliest day. */
        Origin notBefore(LocalDate day) {
            return new Origin(basis, fittedOn, day, why);
        }
    }

    private final Origin origin;
    private final LocalDate begunOn;
    private final Weakness weakness = new Weakness();
    private final List<LifeReading> readings = new ArrayList<>();
    private LifeReading lastReport;
    private String sensorId;
    private String part;
    private Place place;
    private Source fittedBy;
    private String continues;

    private LocalDate firstAnswered;
    private LocalDate answeredBefore;
    private LocalDate tyre;
    private LocalDate lastAnswered;

    private LocalDate silentSince;
    private LocalDate lastSilent;
    private int silentDays;
    private LocalDate warnedSince;

    private LocalDate endedOn;
    private Ending ending;
    private boolean laidAside;

    LifeDraft(Place place, String sensorId, String part, Origin origin, LocalDate begunOn) {
        this.place = place;
        this.sensorId = sensorId;
        this.part = part;
        this.origin = origin;
        this.begunOn = begunOn;
    }

    void addReading(VisitHeader visit, LoggedWheel row, HistorySettings settings) {
        WheelReading w = row.wheel();
        LifeReading reading = new LifeReading(
                visit.day(),
                visit.visitId(),
                w.position(),
                visit.readerId(),
                visit.technicianId(),
                w.read(),
                w.wakeAttempts(),
                w.battery(),
                w.pressureKpa(),
                w.gaugePressureKpa(),
                visit.ambientCelsius(),
                row.source());
        readings.add(reading);
        if (reading.battery() != null) {
            lastReport = reading;
        }
        weakness.add(reading, settings);
        if (w.tyreDate() != null && (tyre == null || w.tyreDate().isAfter(tyre))) {
            tyre = w.tyreDate();
        }
        if (part == null) {
            part = w.part();
        }
    }

    /** It answered: any silence before was none of its own making. */
    void answered(LocalDate day) {
        if (firstAnswered == null) {
            firstAnswered = day;
        }
        if (!day.equals(lastAnswered)) {
            answeredBefore = lastAnswered;
            lastAnswered = day;
        }
        silentSince = null;
        lastSilent = null;
        silentDays = 0;
        warnedSince = null;
    }

    /** It was silent while the reader could be heard by others. Two tries on one day are one silence. */
    void silent(LocalDate day) {
        if (silentSince == null) {
            silentSince = day;
        }
        if (!day.equals(lastSilent)) {
            silentDays++;
            lastSilent = day;
        }
    }

    /** The driver's warning, with this sensor the only silent one, dates the beginning of the silence. */
    void warnedSince(LocalDate since) {
        LocalDate lastGood = lastAnswered == null ? origin.fittedOn() : lastAnswered;
        LocalDate failedBy = silentBy();
        if (lastGood != null && failedBy != null && since.isAfter(lastGood) && since.isBefore(failedBy)) {
            warnedSince = since;
        }
    }

    /** First day of the present silence as far as known; null when it answered last. */
    LocalDate silentBy() {
        return warnedSince != null ? warnedSince : silentSince;
    }

    /** Last day of the present silence; null when it answered last. */
    LocalDate lastSilent() {
        return lastSilent;
    }

    void end(LocalDate day, Ending how) {
        endedOn = day;
        ending = how;
        laidAside = false;
    }

    /** Another sensor sits in its place and nobody wrote down why. It may come back, then this is undone. */
    void layAside(LocalDate day) {
        endedOn = day;
        laidAside = true;
    }

    void takeUpAgain() {
        endedOn = null;
        laidAside = false;
    }

    /** Takes this as its ID from now on. */
    void adopt(String id) {
        sensorId = id;
    }

    void adoptPart(String partNumber) {
        part = partNumber;
    }

    void moveTo(Place to) {
        place = to;
    }

    /** Its life began on another vehicle. */
    void cameFrom(Arrival arrival) {
        continues = arrival.takenForDead() ? null : arrival.lifeId();
        part = part == null ? arrival.part() : part;
    }

    /** Key of its life on the vehicle before; null when it was on none. */
    String continues() {
        return continues;
    }

    /** Last day it was surely there: its last answer, or its fitting; null when neither is known. */
    LocalDate lastSign() {
        return lastAnswered != null ? lastAnswered : fittedBy != null ? begunOn : null;
    }

    void fittedBy(Source source) {
        fittedBy = source;
    }

    /** Sources of its last answer, or else of its fitting, to show with a finding. */
    List<Source> lastSources() {
        return lastReading().map(r -> List.of(r.source())).orElse(fittedBy == null ? List.of() : List.of(fittedBy));
    }

    Optional<LifeReading> lastReading() {
        return readings.isEmpty() ? Optional.empty() : Optional.of(readings.get(readings.size() - 1));
    }

    /** Fitted by record and not yet tried. */
    boolean isFresh() {
        return origin.basis() == OriginBasis.RECORDED_FITTING && readings.isEmpty();
    }

    /** The ID in words, for findings. */
    String name() {
        return sensorId == null ? "the sensor without a known ID" : "sensor " + sensorId;
    }

    Origin origin() {
        return origin;
    }

    LocalDate begunOn() {
        return begunOn;
    }

    String sensorId() {
        return sensorId;
    }

    String part() {
        return part;
    }

    Place place() {
        return place;
    }

    LocalDate firstAnswered() {
        return firstAnswered;
    }

    LocalDate lastAnswered() {
        return lastAnswered;
    }

    /** Last answer on an earlier day than the last one; null when there was none. */
    LocalDate answeredBefore() {
        return answeredBefore;
    }

    Weakness weakness() {
        return weakness;
    }

    /** Week of the newest tyre it was seen in; null when none was written down. */
    LocalDate tyre() {
        return tyre;
    }

    int silentDays() {
        return silentDays;
    }

    LocalDate endedOn() {
        return endedOn;
    }

    /** The recorded ending; null while none is recorded. */
    Ending ending() {
        return ending;
    }

    boolean isLaidAside() {
        return laidAside;
    }

    /** The last reading that says something of the battery; null without one. */
    LifeReading lastReport() {
        return lastReport;
    }

    List<LifeReading> readings() {
        return List.copyOf(readings);
    }
}
