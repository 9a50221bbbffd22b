package sensorrounds.simulate;

import java.util.LinkedHashMap;
import java.util.Map;

/** Headers and words of the trade CSV: nearside and offside, as spoken where traffic keeps left. */
final class TradeWords {
    /** Header → canonical column; empty for a column that is no use to us. */
    static final Map<String, String> HEADERS = headers();

    static final Vocabulary VOCABULARY = new Vocabulary(words(), places(), manyAxlePlaces());

    private TradeWords() {}

    private static Map<String, String> headers() {
        String[] pairs = {
            "Job", "visitId",
            "Edit", "revision",
            "Job time", "visitedAt",
            "Fitter", "technicianId",
            "Tool", "readerId",
            "Fleet no", "vehicleId",
            "Plate", "registration",
            "Miles", "odometer",
            "Air outside F", "ambientTemperature",
            "Placard front", "placardPressure1",
            "Placard rear", "placardPressure2",
            "Placard axle 3", "placardPressure3",
            "Set", "wheelSet",
            "Called for", "reason",
            "Light", "warning",
            "Light since", "warningSince",
            "Mins to light", "drivingMinutesToWarning",
            "Codes", "faultCodes",
            "Relearn", "relearn",
            "Relearn went", "relearnResult",
            "Pressures stored", "pressuresStored",
            "Codes wiped", "codesCleared",
            "Drive mins", "testDriveMinutes",
            "Drive miles", "testDriveDistance",
            "Light back", "testDriveWarningReturned",
            "Remarks", "notes",
            "Wheel", "position",
            "ID found", "sensorId",
            "Answer", "read",
            "Tries", "wakeAttempts",
            "psi", "pressure",
            "psi by gauge", "gaugePressure",
            "Warm", "hot",
            "Tyre air F", "temperature",
            "Cell", "battery",
            "Part found", "part",
            "Done", "work",
            "Because", "workReason",
            "ID fitted", "newSensorId",
            "Part fitted", "newPart",
            "Same ID kept", "cloned",
            "Week code", "tyreDate",
            "Invoice state", ""
        };
        return Pairs.of(pairs);
    }

    private static Map<String, Map<String, String>> words() {
        Map<String, Map<String, String>> w = new LinkedHashMap<>();
        w.put(
                "read",
                Pairs.of("ok", "answered", "no-answer", "dead", "not-tried", "skipped", "not-present", "none fitted"));
        w.put("battery", Pairs.of("ok", "good", "low", "weak"));
        w.put(
                "work",
                Pairs.of(
                        "none", "-",
                        "sensor-replaced", "new sensor",
                        "plain-valve-fitted", "plain valve",
                        "kit-renewed", "kit",
                        "tyre-work", "tyre off"));
        w.put(
                "workReason",
                Pairs.of(
                        "battery-exhausted", "flat cell",
                        "no-answer", "no answer",
                        "stem-broken", "stem snapped",
                        "corrosion", "corroded",
                        "tyre-change-damage", "broken off rim",
                        "ingress", "water in",
                        "preventive", "before it goes",
                        "unknown", "not said"));
        w.put(
                "warning",
                Pairs.of(
                        "none", "off",
                        "low-pressure", "steady",
                        "system-fault", "flashes then steady",
                        "message", "message only"));
        w.put(
                "reason",
                Pairs.of(
                        "warning", "light on",
                        "tyre-work", "tyres",
                        "service", "service",
                        "seasonal-change", "winter/summer change",
                        "inspection", "check",
                        "other", "other"));
        w.put(
                "relearn",
                Pairs.of("none", "no", "stationary", "standing", "drive", "by driving", "diagnostic-port", "by port"));
        w.put("relearnResult", Pairs.of("done", "took", "attempted", "tried", "failed", "did not take"));
        for (String field : Pairs.TRUTHS) {
            w.put(field, Pairs.of("true", "Y", "false", "N"));
        }
        return w;
    }

    private static Map<String, String> places() {
        return Pairs.of(
                "1L", "NSF", "1R", "OSF", "2L", "NSR", "2R", "OSR", "2LO", "NSRO", "2LI", "NSRI", "2RO", "OSRO", "2RI",
                "OSRI", "spare", "Spare");
    }

    private static Map<String, String> manyAxlePlaces() {
        Map<String, String> m = new LinkedHashMap<>();
        for (int axle = 1; axle <= 3; axle++) {
            for (String mount : new String[] {"", "O", "I"}) {
                m.put(axle + "L" + mount, "NS" + axle + mount);
                m.put(axle + "R" + mount, "OS" + axle + mount);
            }
        }
        return m;
    }
}
