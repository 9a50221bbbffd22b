package sensorrounds.landmark;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import sensorrounds.history.FailureCause;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.outlook.LastReport;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.WheelPosition;

/** Invented lives written as days after fitting: {@code new Stories().good(1180).low(1360, -8).silent(1720).failed(1720)}. */
final class Stories {
    static final LocalDate FITTED = LocalDate.of(2018, 3, 1);
    static final BatteryReport.LowLimits LIMITS = new BatteryReport.LowLimits(20, 2.5, 6);
    static final BiFunction<SensorLife, LocalDate, LastReport> LAST = Stories::lastReport;

    private final List<LifeReading> readings = new ArrayList<>();
    private boolean ageKnown = true;
    private Integer failed;

    Stories good(int age) {
        return read(age, ReadOutcome.OK, BatteryReport.OK, 15.0);
    }

    Stories low(int age, Double celsius) {
        return read(age, ReadOutcome.OK, BatteryReport.LOW, celsius);
    }

    Stories answered(int age) {
        return read(age, ReadOutcome.OK, null, 15.0);
    }

    Stories silent(int age) {
        return read(age, ReadOutcome.NO_ANSWER, null, 15.0);
    }

    Stories failed(int age) {
        failed = age;
        return this;
    }

    Stories ageNotKnown() {
        ageKnown = false;
        return this;
    }

    private Stories read(int age, ReadOutcome outcome, BatteryReport battery, Double celsius) {
        WheelPosition place = WheelPosition.parse("1L").orElseThrow();
        readings.add(new LifeReading(
                FITTED.plusDays(age), "visit", place, "R1", "T1", outcome, 1, battery, null, null, celsius, null));
        return this;
    }

    SensorLife life() {
        List<LocalDate> answers = readings.stream()
                .filter(LifeReading::answered)
                .map(LifeReading::day)
                .sorted()
                .toList();
        LocalDate last = answers.get(answers.size() - 1);
        int lower = (int) java.time.temporal.ChronoUnit.DAYS.between(FITTED, last);
        Lifetime lifetime = failed == null ? Lifetime.censored(0, lower) : Lifetime.interval(0, lower, failed);
        return new SensorLife(
                "V1",
                "A1",
                1,
                "P1",
                WheelPosition.parse("1L").orElseThrow(),
                null,
                ageKnown ? FITTED : null,
                ageKnown ? OriginBasis.RECORDED_FITTING : OriginBasis.UNKNOWN,
                answers.get(0),
                last,
                failed == null ? null : FITTED.plusDays(failed),
                null,
                failed == null ? LifeEnd.IN_SERVICE : LifeEnd.FAILED,
                failed == null ? null : FailureCause.BATTERY,
                null,
                ageKnown ? lifetime : null,
                ageKnown ? null : "its age is not known",
                readings);
    }

    private static LastReport lastReport(SensorLife life, LocalDate asOf) {
        LastReport report = LastReport.SOUND;
        for (LifeReading r : life.readings()) {
            if (r.day().isAfter(asOf)) {
                break;
            }
            if (!r.answered()) {
                report = LastReport.SILENT_ONCE;
            } else if (r.battery() != null) {
                report = r.battery().isLow(LIMITS) ? LastReport.LOW_BATTERY : LastReport.SOUND;
            }
        }
        return report;
    }
}
