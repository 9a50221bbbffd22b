package sensorrounds.simulate;

import java.util.LinkedHashMap;
import java.util.Map;

/** Headers and words of the semicolon CSV with decimal comma: German, from where traffic keeps right. */
final class DecimalCommaWords {
    /** Header → canonical column; empty for a column that is no use to us. */
    static final Map<String, String> HEADERS = headers();

    static final Vocabulary VOCABULARY = new Vocabulary(words(), places(), manyAxlePlaces());

    private DecimalCommaWords() {}

    private static Map<String, String> headers() {
        String[] pairs = {
            "Auftrag", "visitId",
            "Änderung", "revision",
            "Zeit", "visitedAt",
            "Monteur", "technicianId",
            "Lesegerät", "readerId",
            "Wagen", "vehicleId",
            "Kennzeichen", "registration",
            "km-Stand", "odometer",
            "Außenluft °C", "ambientTemperature",
            "Soll Achse 1", "placardPressure1",
            "Soll Achse 2", "placardPressure2",
            "Soll Achse 3", "placardPressure3",
            "Radsatz", "wheelSet",
            "Anlass", "reason",
            "Leuchte", "warning",
            "Leuchte seit", "warningSince",
            "Minuten bis Leuchte", "drivingMinutesToWarning",
            "Fehlerspeicher", "faultCodes",
            "Anlernen", "relearn",
            "Anlernen Ergebnis", "relearnResult",
            "Drücke gespeichert", "pressuresStored",
            "Fehler gelöscht", "codesCleared",
            "Probefahrt min", "testDriveMinutes",
            "Probefahrt km", "testDriveDistance",
            "Leuchte wieder da", "testDriveWarningReturned",
            "Bemerkung", "notes",
            "Rad", "position",
            "Kennung gelesen", "sensorId",
            "Antwort", "read",
            "Versuche", "wakeAttempts",
            "Druck bar", "pressure",
            "Handmesser bar", "gaugePressure",
            "Reifen warm", "hot",
            "Reifenluft °C", "temperature",
            "Batterie", "battery",
            "Teil gelesen", "part",
            "Arbeit", "work",
            "Grund", "workReason",
            "Kennung neu", "newSensorId",
            "Teil neu", "newPart",
            "Kennung übernommen", "cloned",
            "Reifenwoche", "tyreDate",
            "Beleg", ""
        };
        return Pairs.of(pairs);
    }

    private static Map<String, Map<String, String>> words() {
        Map<String, Map<String, String>> w = new LinkedHashMap<>();
        w.put(
                "read",
                Pairs.of(
                        "ok", "gelesen", "no-answer", "stumm", "not-tried", "nicht versucht", "not-present", "keiner"));
        w.put("battery", Pairs.of("ok", "gut", "low", "schwach"));
        w.put(
                "work",
                Pairs.of(
                        "none", "keine",
                        "sensor-replaced", "Sensor erneuert",
                        "plain-valve-fitted", "Ventil ohne Sensor",
                        "kit-renewed", "Ventilsatz",
                        "tyre-work", "Reifen ab"));
        w.put(
                "workReason",
                Pairs.of(
                        "battery-exhausted", "Batterie leer",
                        "no-answer", "antwortet nicht",
                        "stem-broken", "Ventil gebrochen",
                        "corrosion", "Korrosion",
                        "tyre-change-damage", "beim Abziehen beschädigt",
                        "ingress", "Wasser innen",
                        "preventive", "vorsorglich",
                        "unknown", "unbekannt"));
        w.put(
                "warning",
                Pairs.of(
                        "none", "aus",
                        "low-pressure", "Dauerlicht",
                        "system-fault", "blinkt, dann Dauerlicht",
                        "message", "nur Meldung"));
        w.put(
                "reason",
                Pairs.of(
                        "warning", "Leuchte",
                        "tyre-work", "Reifenarbeit",
                        "service", "Wartung",
                        "seasonal-change", "Räderwechsel",
                        "inspection", "Durchsicht",
                        "other", "Sonstiges"));
        w.put(
                "relearn",
                Pairs.of(
                        "none",
                        "nein",
                        "stationary",
                        "im Stand",
                        "drive",
                        "auf Fahrt",
                        "diagnostic-port",
                        "über Buchse"));
        w.put("relearnResult", Pairs.of("done", "erledigt", "attempted", "versucht", "failed", "misslungen"));
        for (String field : Pairs.TRUTHS) {
            w.put(field, Pairs.of("true", "ja", "false", "nein"));
        }
        return w;
    }

    private static Map<String, String> places() {
        return Pairs.of(
                "1L", "VL", "1R", "VR", "2L", "HL", "2R", "HR", "2LO", "HLA", "2LI", "HLI", "2RO", "HRA", "2RI", "HRI",
                "spare", "Reserve");
    }

    private static Map<String, String> manyAxlePlaces() {
        Map<String, String> m = new LinkedHashMap<>();
        for (int axle = 1; axle <= 3; axle++) {
            m.put(axle + "L", "A" + axle + "L");
            m.put(axle + "R", "A" + axle + "R");
            m.put(axle + "LO", "A" + axle + "LA");
            m.put(axle + "LI", "A" + axle + "LI");
            m.put(axle + "RO", "A" + axle + "RA");
            m.put(axle + "RI", "A" + axle + "RI");
        }
        return m;
    }
}
