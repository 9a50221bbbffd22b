package sensorrounds.plausibility;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Visit;

/**
 * Holds temperatures against the air and the other wheels. The bounds on differences are common practice, no source: tyres
 * run 20 to 35 °C above the air.
 */
final class TemperatureDoubts {
    /** The highest air temperature on record is 56.7 °C (World Meteorological Organization, archive of extremes). */
    private static final double HOTTEST_AIR = 57;

    private static final double ABOVE_AIR = 90;
    private static final double BELOW_AIR = 25;
    private static final double FROM_OTHER_WHEELS = 35;
    /** For figures that readers send for no value, less will do. */
    private static final double[] CODES = {0, -40};

    private static final double CODE_FROM_OTHER_WHEELS = 12;
    private static final double CODE_BELOW_AIR = 15;

    private TemperatureDoubts() {}

    static void add(Visit visit, List<Doubt> doubts) {
        Double air = visit.header().ambientCelsius();
        if (air != null && air > HOTTEST_AIR) {
            doubts.add(Entry.ofVisit(
                    Doubt.Kind.TEMPERATURE_UNLIKELY, visit, text("the air is said to have %.0f °C", air)));
            air = null;
        }
        for (LoggedWheel row : visit.rows()) {
            Double celsius = row.wheel() == null ? null : row.wheel().temperatureCelsius();
            if (celsius != null) {
                wheel(visit, row, celsius, air, doubts);
            }
        }
    }

    private static void wheel(Visit visit, LoggedWheel row, double celsius, Double air, List<Doubt> doubts) {
        boolean code = celsius == CODES[0] || celsius == CODES[1];
        Double others = ofOtherWheels(visit, row);
        double farFromOthers = code ? CODE_FROM_OTHER_WHEELS : FROM_OTHER_WHEELS;
        if (others != null && Math.abs(celsius - others) > farFromOthers) {
            doubts.add(Entry.ofWheel(
                    Doubt.Kind.TEMPERATURE_UNLIKELY,
                    row,
                    text("the sensor says %.0f °C, the other wheels about %.0f °C", celsius, others)));
        } else if (air != null && (celsius > air + ABOVE_AIR || celsius < air - (code ? CODE_BELOW_AIR : BELOW_AIR))) {
            doubts.add(Entry.ofWheel(
                    Doubt.Kind.TEMPERATURE_UNLIKELY,
                    row,
                    text("the sensor says %.0f °C in air of %.0f °C", celsius, air)));
        }
    }

    /** The middle of the others' temperatures; null with fewer than two, of which either could be the odd one. */
    private static Double ofOtherWheels(Visit visit, LoggedWheel row) {
        double[] others = new double[visit.rows().size()];
        int n = 0;
        for (LoggedWheel r : visit.rows()) {
            Double celsius =
                    r == row || r.wheel() == null || r.wheel().position().isSpare()
                            ? null
                            : r.wheel().temperatureCelsius();
            if (celsius != null) {
                others[n++] = celsius;
            }
        }
        Arrays.sort(others, 0, n);
        return n < 2 ? null : (Double) ((others[(n - 1) / 2] + others[n / 2]) / 2);
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
