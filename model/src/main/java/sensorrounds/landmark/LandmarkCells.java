package sensorrounds.landmark;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import sensorrounds.history.SensorLife;
import sensorrounds.outlook.LastReport;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;

/**
 * Life still to come at an age, by last report: a mergeable state. The landmark is the last visit within a window before
 * the age at which the sensor was tried. Its state is what that visit told, never a later one, and time counts from it on;
 * so a report cannot be a symptom of the failure it is counted with. Each life has one landmark for each age at most. A
 * sensor silent at its landmark may be dead already: its failure then lies somewhere from day 0 on.
 *
 * <p>Source: van Houwelingen (2007), Scand. J. Statist. 34:70-85; Anderson, Cain and Gelber (1983), J. Clin. Oncol.
 * 1:710-719, on why groups must be formed by what is known at the landmark.
 */
public final class LandmarkCells implements Serializable {
    private static final long serialVersionUID = 1;

    private final int ageDays;
    private final LandmarkSettings settings;
    private final LifeCells<LastReport> cells = new LifeCells<>(LastReport.class);

    private LandmarkCells(int ageDays, LandmarkSettings settings) {
        this.ageDays = ageDays;
        this.settings = settings;
    }

    /** No lives yet. */
    public static LandmarkCells at(int ageDays, LandmarkSettings settings) {
        if (ageDays <= 0) {
            throw new IllegalArgumentException("a landmark age must be a number of days from 1 up, not " + ageDays);
        }
        return new LandmarkCells(ageDays, settings);
    }

    /**
     * Adds a life, or counts why it has no landmark at this age.
     *
     * @param lastReport report of a life as of a day, from nothing later; null is no report
     */
    public LandmarkCells add(SensorLife life, BiFunction<SensorLife, LocalDate, LastReport> lastReport) {
        if (life.fittedOn() == null || life.lifetime() == null) {
            cells.leaveOut(LeftOut.NO_AGE);
            return this;
        }
        Contacts contacts = new Contacts(life);
        LocalDate then = life.fittedOn().plusDays(ageDays);
        Optional<LocalDate> landmark = contacts.lastTried(then.minusDays(settings.withinDays()), then);
        if (landmark.isEmpty()) {
            cells.leaveOut(LeftOut.NOT_TRIED_THEN);
            return this;
        }
        LocalDate day = landmark.get();
        if (contacts.knownFailed(day)) {
            cells.leaveOut(LeftOut.ALREADY_FAILED);
            return this;
        }
        LastReport report = lastReport.apply(life, day);
        if (report == null) {
            cells.leaveOut(LeftOut.NO_REPORT);
            return this;
        }
        Optional<Lifetime> ahead = contacts.after(day);
        if (ahead.isEmpty()) {
            cells.leaveOut(LeftOut.NO_LATER_CONTACT);
            return this;
        }
        cells.add(report, ahead.get());
        return this;
    }

    /** Adds all of another state, which must be of the same age and settings. */
    public LandmarkCells merge(LandmarkCells other) {
        if (other.ageDays != ageDays || !other.settings.equals(settings)) {
            throw new IllegalArgumentException("landmarks at " + ageDays + " days with " + settings
                    + " cannot be added to those at " + other.ageDays + " with " + other.settings);
        }
        cells.merge(other.cells);
        return this;
    }

    public int ageDays() {
        return ageDays;
    }

    /** Lives with this report at the landmark, in days from it. */
    public LifetimeSample lives(LastReport report) {
        return cells.sample(report);
    }

    /** Life still to come with this report. */
    public LifeAhead ahead(LastReport report) {
        return LifeAhead.of(lives(report));
    }

    /** Lives without a landmark, by reason. */
    public Map<LeftOut, Long> leftOut() {
        return cells.leftOut();
    }
}
