package sensorrounds.plausibility;

import java.util.List;
import java.util.Locale;
import sensorrounds.visit.GasLaw;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Visit;
import sensorrounds.visit.WheelReading;

/**
 * Holds the pressure a sensor sent against the hand gauge and the placard. The bounds are common practice, no source; they
 * lie outside what warming (some 40 kPa on a car tyre), ordinary loss and the tolerances of sensors (10 kPa) and gauges
 * (7 kPa) explain.
 */
final class PressureDoubts {
    /** Pounds per square inch in a kilopascal (NIST SP 811, appendix B.8), and bar in one. */
    private static final double PSI = 1 / 6.894757;

    private static final double BAR = 0.01;
    private static final double UNIT_TOLERANCE = 0.12;

    private static final double LEAST_ABSOLUTE_EXCESS = 80;
    private static final double MOST_ABSOLUTE_EXCESS = 125;
    /** Above this a warm tyre alone comes near the difference between absolute and gauge pressure. */
    private static final double MAX_PLACARD_FOR_ABSOLUTE = 350;

    private static final double GAUGE_TOLERANCE_KPA = 30;
    private static final double GAUGE_TOLERANCE_SHARE = 0.1;
    private static final double FAR_ABOVE_PLACARD = 1.5;

    private PressureDoubts() {}

    static void add(Visit visit, List<Doubt> doubts) {
        for (LoggedWheel row : visit.rows()) {
            WheelReading wheel = row.wheel();
            if (wheel != null && wheel.pressureKpa() != null) {
                Doubt doubt = sensor(row);
                if (doubt != null) {
                    doubts.add(doubt);
                }
            }
            if (wheel != null && wheel.gaugePressureKpa() != null) {
                gauge(row, doubts);
            }
        }
    }

    private static Doubt sensor(LoggedWheel row) {
        WheelReading wheel = row.wheel();
        double kpa = wheel.pressureKpa();
        Double gauge = wheel.gaugePressureKpa();
        Double placard = placard(row);
        Double beside = gauge != null ? gauge : placard;
        String name = gauge != null ? "the hand gauge shows" : "the placard asks for";
        if (beside == null || beside == 0) {
            return null;
        }
        String unit = unit(kpa / beside);
        if (unit != null) {
            return doubt(
                    Doubt.Kind.PRESSURE_UNIT,
                    row,
                    "%.4g kPa where %s %.0f: a figure in %s would fit",
                    kpa,
                    name,
                    beside,
                    unit);
        }
        double excess = gauge != null ? kpa - gauge : coldExcess(wheel, kpa, placard);
        boolean comparable = gauge != null || placard <= MAX_PLACARD_FOR_ABSOLUTE;
        if (comparable && excess >= LEAST_ABSOLUTE_EXCESS && excess <= MOST_ABSOLUTE_EXCESS) {
            return doubt(
                    Doubt.Kind.PRESSURE_ABSOLUTE,
                    row,
                    "%.0f kPa where %s %.0f: more by about the pressure of the air",
                    kpa,
                    name,
                    beside);
        }
        boolean apart = gauge != null
                ? Math.abs(excess) > GAUGE_TOLERANCE_KPA + GAUGE_TOLERANCE_SHARE * gauge
                : placard + excess > FAR_ABOVE_PLACARD * placard;
        return apart ? doubt(Doubt.Kind.PRESSURE_UNLIKELY, row, "%.0f kPa where %s %.0f", kpa, name, beside) : null;
    }

    /** A gauge without a sensor's figure beside it, or one in another unit than the placard. */
    private static void gauge(LoggedWheel row, List<Doubt> doubts) {
        Double placard = placard(row);
        double gauge = row.wheel().gaugePressureKpa();
        if (placard == null || placard == 0) {
            return;
        }
        String unit = unit(gauge / placard);
        if (unit != null) {
            doubts.add(doubt(
                    Doubt.Kind.PRESSURE_UNIT,
                    row,
                    "%.4g kPa by hand gauge where the placard asks for %.0f: a figure in %s would fit",
                    gauge,
                    placard,
                    unit));
        } else if (gauge > FAR_ABOVE_PLACARD * placard) {
            doubts.add(doubt(
                    Doubt.Kind.PRESSURE_UNLIKELY,
                    row,
                    "%.0f kPa by hand gauge where the placard asks for %.0f",
                    gauge,
                    placard));
        }
    }

    private static Double placard(LoggedWheel row) {
        return row.wheel().position().isSpare()
                ? null
                : row.visit().placardKpa().get(row.wheel().position().axle());
    }

    private static String unit(double ratio) {
        return near(ratio, PSI) ? "psi" : near(ratio, BAR) ? "bar" : null;
    }

    private static boolean near(double ratio, double unit) {
        return Math.abs(ratio / unit - 1) <= UNIT_TOLERANCE;
    }

    /** Excess over the placard, as read or at 20 °C, whichever is less: neither warmth nor cold must look like an error. */
    private static double coldExcess(WheelReading wheel, double kpa, double placard) {
        Double celsius = wheel.temperatureCelsius();
        double cold = celsius == null || !GasLaw.isPossible(kpa, celsius) ? kpa : GasLaw.gaugeAt(kpa, celsius, 20);
        return Math.min(kpa, cold) - placard;
    }

    private static Doubt doubt(Doubt.Kind kind, LoggedWheel row, String form, Object... values) {
        return Entry.ofWheel(kind, row, String.format(Locale.ROOT, form, values));
    }
}
