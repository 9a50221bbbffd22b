package sensorrounds.tables;

import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** The columns of the table of log rows that stand once per wheel. */
final class WheelColumns {
    static final String POSITION = "position";
    static final String SENSOR_ID = "sensor_id";
    static final String READ = "read";

    /** Places by code: a handful, met millions of times. */
    private static final Map<String, WheelPosition> PLACES = new ConcurrentHashMap<>();

    private WheelColumns() {}

    private interface OfWheel extends Function<WheelReading, Object>, Serializable {}

    private static Column.Getter<LogRow> wheel(OfWheel part) {
        return r -> {
            WheelReading wheel = r.understood() == null ? null : r.understood().wheel();
            return wheel == null ? null : part.apply(wheel);
        };
    }

    private static Object positionRaw(LogRow r) {
        if (r.quarantined() != null) {
            return r.quarantined().position();
        }
        WheelReading wheel = r.understood() == null ? null : r.understood().wheel();
        return wheel == null ? null : wheel.positionRaw();
    }

    static List<Column<LogRow>> columns() {
        return List.of(
                Column.text(
                        POSITION,
                        "place of the wheel, such as 1L or 2RI; null for a visit without wheels",
                        wheel(w -> w.position().code())),
                Column.text("position_raw", "the word the log used for it", WheelColumns::positionRaw),
                Column.text(SENSOR_ID, "ID, upper-case hexadecimal", wheel(WheelReading::sensorId)),
                Column.word(READ, "what came of waking the sensor", wheel(WheelReading::read)),
                Column.whole(
                        "wake_attempts", "tries until it answered or was given up", wheel(WheelReading::wakeAttempts)),
                Column.number("pressure_kpa", "gauge pressure the sensor sent, kPa", wheel(WheelReading::pressureKpa)),
                Column.number(
                        "gauge_pressure_kpa",
                        "gauge pressure by hand gauge, kPa",
                        wheel(WheelReading::gaugePressureKpa)),
                Column.flag("hot", "tyre warm from driving", wheel(WheelReading::hot)),
                Column.number(
                        "temperature_celsius",
                        "temperature the sensor sent, °C",
                        wheel(WheelReading::temperatureCelsius)),
                Column.word(
                        "battery_kind",
                        "form of the battery report; null for no report",
                        wheel(w -> w.battery() == null ? null : w.battery().kind())),
                Column.number(
                        "battery_value",
                        "percent, volts or months; null for a plain word",
                        wheel(w -> w.battery() == null ? null : w.battery().value())),
                Column.text("part", "part number of the sensor read", wheel(WheelReading::part)),
                Column.word("work", "work done on the wheel", wheel(WheelReading::work)),
                Column.word("work_reason", "why", wheel(WheelReading::workReason)),
                Column.text("new_sensor_id", "ID of the sensor fitted", wheel(WheelReading::newSensorId)),
                Column.text("new_part", "part number of the sensor fitted", wheel(WheelReading::newPart)),
                Column.flag("cloned", "new sensor programmed with the old ID", wheel(WheelReading::cloned)),
                Column.day("tyre_date", "Monday of the week in the tyre's date code", wheel(WheelReading::tyreDate)));
    }

    /** @return null for a visit without wheels */
    static WheelReading decode(RowCursor in) {
        String place = in.text();
        if (place == null) {
            return null;
        }
        return new WheelReading(
                PLACES.computeIfAbsent(place, p -> WheelPosition.parse(p).orElseThrow()),
                in.text(),
                in.text(),
                in.word(ReadOutcome.class),
                in.whole(),
                in.number(),
                in.number(),
                in.flag(),
                in.number(),
                battery(in.word(BatteryReport.Kind.class), in.number()),
                in.text(),
                in.word(WheelWork.class),
                in.word(WorkReason.class),
                in.text(),
                in.text(),
                in.flag(),
                in.day());
    }

    private static BatteryReport battery(BatteryReport.Kind kind, Double value) {
        if (kind == null) {
            return null;
        }
        return switch (kind) {
            case OK -> BatteryReport.OK;
            case LOW -> BatteryReport.LOW;
            default -> new BatteryReport(kind, value);
        };
    }
}
