package sensorrounds.replacement;

import java.util.Locale;
import java.util.stream.Collectors;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.replacement.VehicleCase.Sensor;
import sensorrounds.visit.WheelPosition;

/** Why a line of a vehicle stands where it stands, in words for the people who act on it. */
record AdviceWords(VehicleCase vehicle, String currency, int horizonDays, StopPlan stop) {

    String reason(Sensor sensor, Advice advice, double saving, double breakEven) {
        SensorOutlook o = sensor.outlook();
        return sensor(o)
                + String.format(
                        Locale.ROOT,
                        "; chance of not working within %d days %s (95 %% limits %s to %s)",
                        horizonDays,
                        percent(o.chances().pHorizon()),
                        percent(o.chances().pHorizonLower()),
                        percent(o.chances().pHorizonUpper()))
                + (advice == Advice.READ_FIRST
                        ? ", of that " + percent(o.chances().pNow()) + " dead already"
                        : "")
                + set(o)
                + ". " + what(sensor, advice, saving, breakEven);
    }

    /** What the fate of the other sensors of the vehicle adds, where it adds something one would notice. */
    private static String set(SensorOutlook o) {
        return o.chances().setFailures() < 1 || o.chances().setRatio() < 1.05
                ? ""
                : String.format(
                        Locale.ROOT,
                        "; %d of its set %s failed: risk × %.1f",
                        o.chances().setFailures(),
                        o.chances().setFailures() == 1 ? "has" : "have",
                        o.chances().setRatio());
    }

    String withoutLaw(Sensor sensor, Advice advice) {
        String said = sensor(sensor.outlook()) + "; no law of life could be fitted for sensors like it, so no chance of"
                + " failure and no saving is given.";
        return advice == Advice.CHECK_PLACE_FIRST ? said + " " + placeFirst() : said;
    }

    private static String sensor(SensorOutlook o) {
        String age = o.sensor().ageDays() == null
                ? "Age not known"
                : String.format(Locale.ROOT, "%.1f years old", o.sensor().ageDays() / 365.25);
        return age + ", " + report(o.sensor().lastReport())
                + (o.sensor().lastReadOn() == null ? "" : " on " + o.sensor().lastReadOn());
    }

    private static String report(LastReport report) {
        return switch (report) {
            case SOUND -> "answered with nothing amiss";
            case SLOW_TO_WAKE -> "answered, but slow to wake beyond what its reader explains,";
            case LOW_BATTERY -> "answered with a low battery";
            case SILENT_ONCE -> "did not answer";
        };
    }

    private String what(Sensor sensor, Advice advice, double saving, double breakEven) {
        return switch (advice) {
            case REPLACE_NOW -> replaceNow(saving);
            case READ_FIRST -> readFirst() + ifItAnswers(sensor.outlook(), breakEven);
            case CHECK_PLACE_FIRST -> placeFirst();
            case AT_NEXT_STOP ->
                "Not worth a stop of its own, but worth replacing when the vehicle stands anyway"
                        + (vehicle.nextStop() == null ? "" : " (booked for " + vehicle.nextStop() + ")")
                        + ": leaving it to the stop after that, about "
                        + vehicle.stops().gapDays() + " days on, is expected to cost " + money(saving) + " more."
                        + pays(sensor.outlook(), breakEven);
            case AT_SEASONAL_CHANGE ->
                "Its wheel set is in store, where it stops nobody: read it and replace it when the set goes on.";
            case WHEN_OFF ->
                "On the spare wheel nothing breaks down with it: read it, and replace it when the wheel is off.";
            case WATCH -> "Keep it and read it again at the next stop." + pays(sensor.outlook(), breakEven);
            case KEEP -> "Keep it." + pays(sensor.outlook(), breakEven);
        };
    }

    private String replaceNow(double saving) {
        int others = stop.size() - 1;
        String stopFor = vehicle.deadOnTheRoad().isEmpty()
                ? "A stop now for " + (others == 0 ? "this sensor" : "it and " + others + " more of this vehicle")
                : "The vehicle has to come in for the dead sensor at "
                        + vehicle.deadOnTheRoad().stream()
                                .map(WheelPosition::code)
                                .collect(Collectors.joining(", "))
                        + " anyway; doing "
                        + (others == 0 ? "this one" : "this one and " + others + " more") + " then";
        return stopFor + " is expected to save " + money(stop.saving()) + " against waiting "
                + (vehicle.nextStop() != null
                        ? "for the stop booked for " + vehicle.nextStop()
                        : "for its next stop, in about " + vehicle.stops().daysToNext(vehicle.asOf()) + " days")
                + (others == 0 ? "." : ", " + money(saving) + " of it here.");
    }

    private String readFirst() {
        String why = switch (vehicle.sight()) {
            case KNOWN -> "Reading costs less than replacing, and settles it";
            case OUT_OF_SIGHT -> "The vehicle has not been seen for long";
            case NOT_IN_REGISTER -> "The vehicle is not in the register";
        };
        return why + ": read the vehicle first, replace what does not answer."
                + (stop.saving() > 0
                        ? " Against waiting for a breakdown that is expected to save " + money(stop.saving())
                                + " for the vehicle."
                        : "");
    }

    /** A sensor that answers is still due at a stop that happens anyway when its chance is over the break-even. */
    private String ifItAnswers(SensorOutlook o, double breakEven) {
        return o.chances().pHorizon() > breakEven
                ? " If this one answers, replace it at the next stop"
                        + (vehicle.nextStop() == null ? "." : " (booked for " + vehicle.nextStop() + ").")
                        + pays(o, breakEven)
                : "";
    }

    private static String placeFirst() {
        return "Sensors keep failing at this place: look at receiver, wiring and place before fitting another.";
    }

    /** Where the chance stands against the one from which replacing pays. */
    private String pays(SensorOutlook o, double breakEven) {
        if (Double.isNaN(breakEven)) {
            return " No chance of failing would be high enough to make replacing pay.";
        }
        return " Replacing at a stop pays from a chance of " + percent(breakEven) + " within " + horizonDays
                + " days; this one is " + (o.chances().pHorizon() > breakEven ? "over" : "under") + " it.";
    }

    private static String percent(double p) {
        return p > 0 && p < 0.001
                ? "under 0.1 %"
                : String.format(Locale.ROOT, p < 0.1 ? "%.1f %%" : "%.0f %%", 100 * p);
    }

    private String money(double amount) {
        return String.format(Locale.ROOT, "%.2f %s", amount, currency);
    }
}
