package sensorrounds.visit;

import java.io.Serializable;

/**
 * A battery report as the reader gave it. A blank field is no report at all ({@code null} where this is used), never OK.
 *
 * @param kind what was reported
 * @param value percent (0–100), volts or months for those kinds; NaN for a plain OK or LOW
 */
public record BatteryReport(Kind kind, double value) implements Serializable {
    /** Form of the report. */
    public enum Kind {
        OK,
        LOW,
        PERCENT,
        VOLTS,
        MONTHS
    }

    public static final BatteryReport OK = new BatteryReport(Kind.OK, Double.NaN);
    public static final BatteryReport LOW = new BatteryReport(Kind.LOW, Double.NaN);

    /** Limits under which a figure counts as a low report. They are settings, with units percent, volts and months. */
    public record LowLimits(double percent, double volts, double months) implements Serializable {}

    public boolean isLow(LowLimits limits) {
        return switch (kind) {
            case OK -> false;
            case LOW -> true;
            case PERCENT -> value < limits.percent();
            case VOLTS -> value < limits.volts();
            case MONTHS -> value < limits.months();
        };
    }

    /** The report in words, as it was given. */
    public String words() {
        return switch (kind) {
            case OK -> "OK";
            case LOW -> "low";
            case PERCENT -> plain(value) + " %";
            case VOLTS -> plain(value) + " V";
            case MONTHS -> plain(value) + " months";
        };
    }

    private static String plain(double v) {
        return v == Math.rint(v) ? Long.toString((long) v) : Double.toString(v);
    }
}
