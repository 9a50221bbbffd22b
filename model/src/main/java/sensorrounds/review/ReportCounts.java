package sensorrounds.review;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.function.BiFunction;
import sensorrounds.analyst.CalendarRow;
import sensorrounds.analyst.FailureCalendar;
import sensorrounds.analyst.LifeAheadCounts;
import sensorrounds.analyst.LifeAheadRow;
import sensorrounds.condition.ConditionSettings;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.landmark.LandmarkSettings;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.ReportCells;
import sensorrounds.recurrence.SuspectSample;

/** What is counted once it is known what a report says and how long sensors last: a mergeable state. Not thread safe. */
public final class ReportCounts implements Serializable {
    private static final long serialVersionUID = 1;
    /** A report at most this old stands for a landmark age, days. */
    private static final int LANDMARK_WINDOW = 365;

    private final ReportCells cells = new ReportCells();
    private final LifeAheadCounts ahead;
    private final SuspectSample suspects;
    private final FailureCalendar calendar = new FailureCalendar();

    public ReportCounts(ReviewSettings all, LocalDate asOf) {
        ConditionSettings settings = all.condition();
        suspects = new SuspectSample(all.recurrence(), asOf);
        ahead = new LifeAheadCounts(new LandmarkSettings(LANDMARK_WINDOW, settings.coldCelsius(), settings.battery()));
    }

    /** Counts one vehicle. */
    public ReportCounts add(VehicleHistory history, Estimates estimates) {
        BiFunction<SensorLife, LocalDate, LastReport> lastReport = estimates.lastReports(history);
        estimates.countReports(cells, history, lastReport);
        ahead.add(history, lastReport);
        suspects.add(history, estimates.wake());
        calendar.add(history, life -> estimates.lawOf(history, life));
        return this;
    }

    /** Takes in the counts of another part of the fleet. */
    public ReportCounts merge(ReportCounts other) {
        cells.merge(other.cells);
        ahead.merge(other.ahead);
        calendar.merge(other.calendar);
        suspects.merge(other.suspects);
        return this;
    }

    /** Failures seen and expected by last report. */
    public ReportCells cells() {
        return cells;
    }

    /** Vehicles from which the weights of signs are learned. */
    public SuspectSample suspects() {
        return suspects;
    }

    /** Failures by calendar year, and by month of the year where that can be told. */
    public List<CalendarRow> calendar() {
        return calendar.rows();
    }

    /** Life still ahead at an age by last report, and after a first low report. */
    public List<LifeAheadRow> ahead() {
        return ahead.rows();
    }
}
