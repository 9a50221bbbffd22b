package sensorrounds.analyst;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.landmark.FirstLow;
import sensorrounds.landmark.LifeAhead;
import sensorrounds.outlook.LastReport;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.CurvePoint.Method;
import sensorrounds.survival.Curves;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitStatus;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.ParametricFit;

/**
 * Life still ahead of one group of sensors, time in days from the visit that put them into it. The law is a Weibull by the
 * interval likelihood; where it could not be fitted the estimates are NaN and {@code note} says why.
 *
 * @param ageDays age at that visit, about; null after a first low report
 * @param report last report at that visit; null after a first low report
 * @param firstLow how the first low report came about; null at an age, and for all of them together
 * @param recovered of those reported low, how many reported good again later; null at an age
 * @param lastDay longest time any was watched, days; beyond it the law stretches what was seen
 * @param status what came of the fit
 * @param note why there is no law, or what to know of it; empty when nothing
 * @param median days by which half have failed, with 95 % limits; infinite above or NaN where the data set none
 * @param yearAhead share still working after 365 days, with 95 % limits
 * @param curve Kaplan-Meier, and the law up to {@code lastDay}
 */
public record LifeAheadRow(
        Integer ageDays,
        LastReport report,
        FirstLow firstLow,
        double lives,
        double failures,
        Long recovered,
        int lastDay,
        FitStatus status,
        String note,
        Estimate median,
        Estimate yearAhead,
        List<CurvePoint> curve)
        implements Serializable {
    private static final int YEAR = 365;
    private static final Estimate NOT_KNOWN = new Estimate(Double.NaN, Double.NaN, Double.NaN);
    /** Name of all first low reports together. */
    private static final String ANY_LOW = "ANY_FIRST_LOW";

    public LifeAheadRow {
        curve = List.copyOf(curve);
    }

    static LifeAheadRow atAge(int ageDays, LastReport report, LifetimeSample lives) {
        return of(ageDays, report, null, null, lives);
    }

    static LifeAheadRow afterLow(FirstLow how, LifetimeSample lives, long recovered) {
        return of(null, null, how, recovered, lives);
    }

    static LifeAheadRow afterAnyLow(LifetimeSample lives, long recovered) {
        return of(null, null, null, recovered, lives);
    }

    /** What was known that day, as a name: of the last report, of the first low report, or ANY_FIRST_LOW. */
    public String known() {
        return report != null ? report.name() : firstLow != null ? firstLow.name() : ANY_LOW;
    }

    /** Whether half of the group failed within the time watched; else its median stretches the law beyond what was seen. */
    public boolean medianSeen() {
        return median.value() <= lastDay;
    }

    private static LifeAheadRow of(
            Integer ageDays, LastReport report, FirstLow firstLow, Long recovered, LifetimeSample lives) {
        if (lives.lives() == 0) {
            return new LifeAheadRow(
                    ageDays,
                    report,
                    firstLow,
                    0,
                    0,
                    recovered,
                    0,
                    FitStatus.NO_LIVES,
                    "",
                    NOT_KNOWN,
                    NOT_KNOWN,
                    List.of());
        }
        LifeAhead ahead = LifeAhead.of(lives);
        ParametricFit law = ahead.law();
        boolean fitted = law.converged();
        String name = report != null ? report.name() : firstLow != null ? firstLow.name() : ANY_LOW;
        List<CurvePoint> curve = new ArrayList<>(Curves.steps(name, Method.KAPLAN_MEIER, ahead.curve()));
        if (fitted) {
            curve.addAll(Curves.law(name, Method.WEIBULL, law.life(), lives));
        }
        return new LifeAheadRow(
                ageDays,
                report,
                firstLow,
                ahead.lives(),
                ahead.failures(),
                recovered,
                (int) lives.lastAge(),
                law.status(),
                law.cause(),
                fitted ? law.quantile(0.5, lives) : NOT_KNOWN,
                fitted ? law.survival(YEAR) : NOT_KNOWN,
                curve);
    }
}
