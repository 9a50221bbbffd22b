package sensorrounds.outlook;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.BiFunction;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.survival.LifeLaw;
import sensorrounds.visit.ReadOutcome;

/**
 * Failures observed and expected by last report: a mergeable state.
 *
 * <p>A landmark is a day on which a sensor was tried. Its window runs from the last answer up to that day (the day
 * itself when it answered) to the next contact that settles whether the sensor lives: its next answer, or the day its
 * failure is known. The report at the landmark is the covariate, never the one at the end of the window, so a report
 * cannot be a symptom of the failure it is counted with. A landmark that no later contact settles is left out. Only the
 * first silence after an answer is a landmark, else one failure would count several times; and only one that is reported
 * as the sensor's own, not its reader's.
 *
 * <p>Expected failures are the cumulative hazard of the cohort's law over the window; over a window that ended in
 * failure half of it, as the sensor was at risk only until it failed (the actuarial convention). The ratio then comes
 * out 4 % low where half of the sensors fail in a window and 10 % low where seven in ten do.
 *
 * <p>Expected failures are added as whole multiples of 2^-32 (2.3e-10 of a failure), so that adding is exact and any
 * order and any partitioning give the same bytes. Source of the ratio: {@link ReportRatios}.
 */
public final class ReportCells implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double UNITS_PER_FAILURE = 0x1p32;
    /** Windows in days are counted up to here; longer ones as this. */
    private static final int LONGEST_WINDOW = 1500;

    private static final int STATES = LastReport.values().length;

    private final long[] landmarks = new long[STATES];
    private final long[] observed = new long[STATES];
    private final long[] expectedUnits = new long[STATES];
    private final long[][] windows = new long[STATES][LONGEST_WINDOW + 1];

    /**
     * Adds the landmarks of a life. A life of unknown origin, and one left out of the survival sample, has none.
     *
     * @param lastReport report of a life as of a day; null is no report and no landmark
     */
    public void add(SensorLife life, BiFunction<SensorLife, LocalDate, LastReport> lastReport, LifeLaw law) {
        if (life.fittedOn() == null || life.lifetime() == null) {
            return;
        }
        NavigableSet<LocalDate> answered = days(life, ReadOutcome.OK);
        NavigableSet<LocalDate> silent = days(life, ReadOutcome.NO_ANSWER);
        silent.removeAll(answered);
        LocalDate failed = life.end() == LifeEnd.FAILED ? life.firstKnownFailed() : null;
        for (LocalDate day : answered) {
            LocalDate next = answered.higher(day);
            if (next != null) {
                addWindow(life, law, lastReport.apply(life, day), day, next, false);
            } else if (failed != null && failed.isAfter(day)) {
                addWindow(life, law, lastReport.apply(life, day), day, failed, true);
            }
        }
        LocalDate countedSince = null;
        for (LocalDate day : silent) {
            LocalDate lastAnswer = answered.lower(day);
            // A silence that is the reader's, not the sensor's, is reported as something else.
            if (lastAnswer == null
                    || lastAnswer.equals(countedSince)
                    || lastReport.apply(life, day) != LastReport.SILENT_ONCE) {
                continue;
            }
            countedSince = lastAnswer;
            LocalDate next = answered.higher(day);
            if (next != null) {
                addWindow(life, law, LastReport.SILENT_ONCE, lastAnswer, next, false);
            } else if (failed != null) {
                LocalDate known = failed.isAfter(day) ? failed : silent.higher(day);
                // Known failed at this very visit: nothing was forecast, so nothing is counted.
                if (known != null) {
                    addWindow(life, law, LastReport.SILENT_ONCE, lastAnswer, known, true);
                }
            }
        }
    }

    /** Adds one window by its figures: its days, the hazard of the cohort's law over it, and whether it ended in failure. */
    void addWindow(LastReport report, long days, double hazard, boolean failed) {
        if (!(hazard >= 0 && hazard < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "hazard over a window is " + hazard + "; it must be a number from 0 up, check the law of life");
        }
        int r = report.ordinal();
        landmarks[r]++;
        windows[r][(int) Math.max(0, Math.min(LONGEST_WINDOW, days))]++;
        observed[r] += failed ? 1 : 0;
        double atRisk = failed ? hazard / 2 : hazard;
        expectedUnits[r] = Math.addExact(expectedUnits[r], Math.round(atRisk * UNITS_PER_FAILURE));
    }

    private void addWindow(
            SensorLife life, LifeLaw law, LastReport report, LocalDate from, LocalDate to, boolean failed) {
        long start = ChronoUnit.DAYS.between(life.fittedOn(), from);
        if (report == null || start < 0) {
            return;
        }
        long end = ChronoUnit.DAYS.between(life.fittedOn(), to);
        addWindow(report, end - start, law.cumulativeHazard(end) - law.cumulativeHazard(start), failed);
    }

    /** Adds all of another state to this one. */
    public ReportCells merge(ReportCells other) {
        for (int r = 0; r < STATES; r++) {
            landmarks[r] += other.landmarks[r];
            for (int d = 0; d <= LONGEST_WINDOW; d++) {
                windows[r][d] += other.windows[r][d];
            }
            observed[r] += other.observed[r];
            expectedUnits[r] = Math.addExact(expectedUnits[r], other.expectedUnits[r]);
        }
        return this;
    }

    public long landmarks(LastReport report) {
        return landmarks[report.ordinal()];
    }

    public long observed(LastReport report) {
        return observed[report.ordinal()];
    }

    public double expected(LastReport report) {
        return expectedUnits[report.ordinal()] / UNITS_PER_FAILURE;
    }

    /** Median length in days of the windows of a report; of all reports where it has fewer than the least given. */
    double medianWindow(LastReport report, long least, double none) {
        long[] lengths = landmarks(report) >= least ? windows[report.ordinal()] : allWindows();
        long all = 0;
        for (long n : lengths) {
            all += n;
        }
        long below = 0;
        for (int d = 0; d < lengths.length; d++) {
            below += lengths[d];
            if (all > 0 && 2 * below >= all) {
                return d;
            }
        }
        return none;
    }

    private long[] allWindows() {
        long[] all = new long[LONGEST_WINDOW + 1];
        for (long[] of : windows) {
            for (int d = 0; d < all.length; d++) {
                all[d] += of[d];
            }
        }
        return all;
    }

    private static NavigableSet<LocalDate> days(SensorLife life, ReadOutcome outcome) {
        NavigableSet<LocalDate> days = new TreeSet<>();
        for (LifeReading reading : life.readings()) {
            if (reading.outcome() == outcome) {
                days.add(reading.day());
            }
        }
        return days;
    }
}
