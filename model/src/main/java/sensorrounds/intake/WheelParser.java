package sensorrounds.intake;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;

/** Reads the fields that stand once per wheel. */
final class WheelParser {
    private static final int MAX_ATTEMPTS = 99;
    private static final double MAX_VOLTS = 12;
    private static final double MAX_MONTHS = 240;
    /** Words are few; a file with endless different ones must not fill the memory. */
    private static final int CACHE_LIMIT = 1000;

    private final FieldReader in;
    private final SensorIds ids;
    private final Map<String, WheelPosition> positions = new HashMap<>();
    private final Map<String, BatteryReport> batteries = new HashMap<>();

    WheelParser(FieldReader in, IdForm form) {
        this.in = in;
        this.ids = new SensorIds(in, form);
    }

    /**
     * @param positionRaw the word the log used
     * @throws FieldProblem for the first field that cannot be read
     */
    WheelReading parse(String positionRaw, Units.Pressure pressure, Units.Temperature temperature) {
        WheelReading wheel = new WheelReading(
                position(),
                positionRaw,
                ids.read(Field.SENSOR_ID),
                read(),
                in.whole(Field.WAKE_ATTEMPTS, 1, MAX_ATTEMPTS),
                in.kpa(Field.PRESSURE, pressure),
                in.kpa(Field.GAUGE_PRESSURE, pressure),
                in.flag(Field.HOT),
                in.celsius(Field.TEMPERATURE, temperature),
                battery(),
                in.text(Field.PART),
                in.word(Field.WORK, FieldWords.WORK),
                in.word(Field.WORK_REASON, FieldWords.WORK_REASON),
                ids.read(Field.NEW_SENSOR_ID),
                in.text(Field.NEW_PART),
                in.flag(Field.CLONED),
                tyreDate());
        if (wheel.work() == WheelWork.SENSOR_REPLACED && wheel.newSensorId() == null && wheel.newPart() == null) {
            in.note(Note.REPLACED_WITHOUT_NEW_ID.bit());
        }
        return wheel;
    }

    private WheelPosition position() {
        String text = in.required(Field.POSITION, "a wheel position, since the row has values of a wheel");
        WheelPosition known = positions.get(text);
        if (known != null) {
            return known;
        }
        WheelPosition position = WheelPosition.parse(text)
                .orElseThrow(() -> new FieldProblem(
                        RejectionRule.UNKNOWN_POSITION,
                        Field.POSITION.key(),
                        text,
                        "axle, side and for duals inner or outer, such as 1L, 2RI, 2RO, or spare"));
        if (positions.size() < CACHE_LIMIT) {
            positions.put(text, position);
        }
        return position;
    }

    private ReadOutcome read() {
        ReadOutcome read = in.word(Field.READ, FieldWords.READ);
        if (read == null) {
            throw new FieldProblem(
                    RejectionRule.MISSING_VALUE, Field.READ.key(), null, "one of " + FieldWords.READ.expected());
        }
        return read;
    }

    private BatteryReport battery() {
        String text = in.text(Field.BATTERY);
        if (text == null) {
            return null;
        }
        BatteryReport known = batteries.get(text);
        if (known != null) {
            return known;
        }
        BatteryReport report = battery(text.toLowerCase(Locale.ROOT));
        if (report == null) {
            throw new FieldProblem(
                    RejectionRule.BAD_BATTERY,
                    Field.BATTERY.key(),
                    text,
                    "ok, low, a share such as 35%, volts such as 2.9V, or months such as 14 months");
        }
        if (batteries.size() < CACHE_LIMIT && !in.isNumber(Field.BATTERY)) {
            batteries.put(text, report);
        }
        return report;
    }

    private BatteryReport battery(String text) {
        if (text.equals("ok")) {
            return BatteryReport.OK;
        }
        if (text.equals("low")) {
            return BatteryReport.LOW;
        }
        if (text.endsWith("%")) {
            return figure(BatteryReport.Kind.PERCENT, text, "%", 100);
        }
        if (text.endsWith("v")) {
            return figure(BatteryReport.Kind.VOLTS, text, "v", MAX_VOLTS);
        }
        return text.endsWith("months")
                ? figure(BatteryReport.Kind.MONTHS, text, "months", MAX_MONTHS)
                : text.endsWith("month") ? figure(BatteryReport.Kind.MONTHS, text, "month", MAX_MONTHS) : null;
    }

    private BatteryReport figure(BatteryReport.Kind kind, String text, String unit, double max) {
        double value = in.looseNumber(
                Field.BATTERY, text.substring(0, text.length() - unit.length()).strip());
        return value >= 0 && value <= max ? new BatteryReport(kind, value) : null;
    }

    private LocalDate tyreDate() {
        String text = in.text(Field.TYRE_DATE);
        if (text == null) {
            return null;
        }
        LocalDate date = Codes.tyreDate(text);
        if (date == null) {
            throw new FieldProblem(
                    RejectionRule.BAD_TYRE_DATE,
                    Field.TYRE_DATE.key(),
                    text,
                    "four digits, week 01 to 52 (53 in a long year) and year, such as 2319 for week 23 of 2019");
        }
        return date;
    }
}
