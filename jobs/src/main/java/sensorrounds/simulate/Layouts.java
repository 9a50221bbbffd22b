package sensorrounds.simulate;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.simulate.WheelCsv.Style;

/** The layouts in which the sample's logs come: two canonical ones and two of our own making that need a mapping. */
final class Layouts {
    static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

    private static final String TRADE_DATE = "dd/MM/yyyy";
    private static final String TRADE_TIME = "dd/MM/yyyy HH:mm";
    private static final String COMMA_DATE = "dd.MM.yyyy";
    private static final String COMMA_TIME = "dd.MM.yyyy HH:mm";

    private Layouts() {}

    static VisitFormat canonicalCsv() {
        Style style = new Style(',', '.', Units.KPA_KM_C, "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd", Vocabulary.CANONICAL);
        Map<String, String> headers = new LinkedHashMap<>();
        for (String name : CANONICAL_COLUMNS) {
            headers.put(name, name);
        }
        return new WheelCsv(style, headers);
    }

    static VisitFormat tradeCsv() {
        return new WheelCsv(
                new Style(',', '.', Units.PSI_MILES_F, TRADE_TIME, TRADE_DATE, TradeWords.VOCABULARY),
                TradeWords.HEADERS);
    }

    static VisitFormat decimalCommaCsv() {
        return new WheelCsv(
                new Style(';', ',', Units.BAR_KM_C, COMMA_TIME, COMMA_DATE, DecimalCommaWords.VOCABULARY),
                DecimalCommaWords.HEADERS);
    }

    static Charset charset(Crew.Export export) {
        return export == Crew.Export.DECIMAL_COMMA_CSV ? WINDOWS_1252 : StandardCharsets.UTF_8;
    }

    static Vocabulary vocabulary(Crew.Export export) {
        return switch (export) {
            case JSON_LINES, CANONICAL_CSV -> Vocabulary.CANONICAL;
            case TRADE_CSV -> TradeWords.VOCABULARY;
            case DECIMAL_COMMA_CSV -> DecimalCommaWords.VOCABULARY;
        };
    }

    /** The mapping file for {@link #tradeCsv}, as nested maps. */
    static Map<String, Object> tradeMapping(String appliesTo) {
        return mapping(
                "trade-words",
                appliesTo,
                Map.of("delimiter", ",", "encoding", "UTF-8", "decimalMark", "."),
                TRADE_DATE,
                TRADE_TIME,
                "left",
                TradeWords.HEADERS,
                Units.PSI_MILES_F,
                TradeWords.VOCABULARY);
    }

    /** The mapping file for {@link #decimalCommaCsv}, as nested maps. */
    static Map<String, Object> decimalCommaMapping(String appliesTo) {
        return mapping(
                "decimal-comma",
                appliesTo,
                Map.of("delimiter", ";", "encoding", "windows-1252", "decimalMark", ","),
                COMMA_DATE,
                COMMA_TIME,
                "right",
                DecimalCommaWords.HEADERS,
                Units.BAR_KM_C,
                DecimalCommaWords.VOCABULARY);
    }

    private static Map<String, Object> mapping(
            String name,
            String appliesTo,
            Map<String, String> form,
            String date,
            String dateTime,
            String drivingSide,
            Map<String, String> headers,
            Units units,
            Vocabulary words) {
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("name", name);
        m.put("appliesTo", List.of(appliesTo));
        m.put("format", "csv");
        m.put("delimiter", form.get("delimiter"));
        m.put("encoding", form.get("encoding"));
        m.put("decimalMark", form.get("decimalMark"));
        m.put("dateFormat", date);
        m.put("dateTimeFormat", dateTime);
        m.put("drivingSide", drivingSide);
        Map<String, String> mapped = new LinkedHashMap<>(headers);
        mapped.values().removeIf(String::isEmpty);
        m.put("columns", mapped);
        m.put(
                "ignore",
                headers.keySet().stream().filter(h -> headers.get(h).isEmpty()).toList());
        Map<String, String> constants = new LinkedHashMap<>();
        constants.put("pressureUnit", units.pressureUnit);
        constants.put("odometerUnit", units.odometerUnit);
        constants.put("temperatureUnit", units.temperatureUnit);
        m.put("constants", constants);
        m.put("words", words.towardsCanonical());
        return m;
    }

    private static final List<String> CANONICAL_COLUMNS = List.of(
            "visitId",
            "revision",
            "visitedAt",
            "technicianId",
            "readerId",
            "vehicleId",
            "registration",
            "odometer",
            "odometerUnit",
            "ambientTemperature",
            "temperatureUnit",
            "pressureUnit",
            "placardPressure1",
            "placardPressure2",
            "placardPressure3",
            "wheelSet",
            "reason",
            "warning",
            "warningSince",
            "drivingMinutesToWarning",
            "faultCodes",
            "relearn",
            "relearnResult",
            "pressuresStored",
            "codesCleared",
            "testDriveMinutes",
            "testDriveDistance",
            "testDriveWarningReturned",
            "notes",
            "position",
            "sensorId",
            "read",
            "wakeAttempts",
            "pressure",
            "gaugePressure",
            "hot",
            "temperature",
            "battery",
            "part",
            "work",
            "workReason",
            "newSensorId",
            "newPart",
            "cloned",
            "tyreDate");
}
