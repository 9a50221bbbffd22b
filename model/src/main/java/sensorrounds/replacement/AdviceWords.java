package sensorrounds.replacement;

import java.util.Locale;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorOutlook;

/** Why a line stands where it stands, in words for the people who act on it. */
final class AdviceWords {
    private AdviceWords() {}

    static String reason(
            SensorOutlook o, int horizonDays, double saving, double breakEven, String currency, Advice advice) {
        return sensor(o)
                + String.format(
                        Locale.ROOT,
                        "; chance of not working within %d days %s (95 %% limits %s to %s). ",
                        horizonDays,
                        percent(o.pHorizon()),
                        percent(o.pHorizonLower()),
                        percent(o.pHorizonUpper()))
                + "Replacing now is expected to "
                + (saving >= 0 ? "save " : "cost ")
                + ReplacementEconomics.money(Math.abs(saving), currency)
                + (saving >= 0 ? " against" : " more than")
                + " keeping it"
                + (Double.isNaN(breakEven) ? ". " : "; it pays from a chance of " + percent(breakEven) + ". ")
                + what(advice);
    }

    static String withoutLaw(SensorOutlook o, Advice advice) {
        String said = sensor(o) + "; no law of life could be fitted for sensors like it, so no chance of failure and no"
                + " saving is given.";
        return advice == Advice.CHECK_PLACE_FIRST ? said + " " + what(advice) : said;
    }

    private static String sensor(SensorOutlook o) {
        String age = o.ageDays() == null
                ? "Age not known"
                : String.format(Locale.ROOT, "%.1f years old", o.ageDays() / 365.25);
        return age + ", " + report(o.lastReport()) + (o.lastReadOn() == null ? "" : " on " + o.lastReadOn());
    }

    private static String report(LastReport report) {
        return switch (report) {
            case SOUND -> "answered with nothing amiss";
            case SLOW_TO_WAKE -> "answered, but slow to wake beyond what its reader explains,";
            case LOW_BATTERY -> "answered with a low battery";
            case SILENT_ONCE -> "did not answer";
        };
    }

    private static String what(Advice advice) {
        return switch (advice) {
            case REPLACE_NOW -> "Worth a stop of its own.";
            case AT_NEXT_STOP -> "Not worth a stop of its own, worth doing when the vehicle stands anyway.";
            case KEEP -> "Keep it.";
            case CHECK_PLACE_FIRST ->
                "Sensors keep failing at this place: look at receiver, wiring and place before" + " fitting another.";
        };
    }

    private static String percent(double p) {
        return p > 0 && p < 0.001
                ? "under 0.1 %"
                : String.format(Locale.ROOT, p < 0.1 ? "%.1f %%" : "%.0f %%", 100 * p);
    }
}
