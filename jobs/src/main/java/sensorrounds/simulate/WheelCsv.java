package sensorrounds.simulate;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelReading;

/** CSV with one line per wheel, the visit's columns repeated, in any headers, words, units and date order. */
final class WheelCsv implements VisitFormat {
    /** Text of one cell; the wheel is null for a visit without wheels. */
    private interface Cell {
        String text(SimulatedVisit visit, WheelReading wheel);
    }

    private record Column(String header, String canonical, boolean ofWheel, Cell cell) {}

    /**
     * How cells are written.
     *
     * @param dateTime pattern of the time of the visit
     * @param date pattern of dates
     */
    record Style(char delimiter, char decimalMark, Units units, String dateTime, String date, Vocabulary words) {}

    private final Style style;
    private final DateTimeFormatter dateTime;
    private final DateTimeFormatter date;
    private final List<Column> columns = new ArrayList<>();

    /**
     * @param headers header in the file → canonical name, in the order of the file; a header that maps to an empty name
     *     is a column the engine is told to ignore
     */
    WheelCsv(Style style, Map<String, String> headers) {
        this.style = style;
        this.dateTime = DateTimeFormatter.ofPattern(style.dateTime(), Locale.ROOT);
        this.date = DateTimeFormatter.ofPattern(style.date(), Locale.ROOT);
        headers.forEach((header, canonical) -> {
            Cell ofVisit = visitCell(canonical);
            boolean wheel = ofVisit == null;
            columns.add(new Column(header, canonical, wheel, wheel ? wheelCell(canonical) : ofVisit));
        });
    }

    @Override
    public String head() {
        StringBuilder s = new StringBuilder();
        for (int i = 0; i < columns.size(); i++) {
            s.append(i == 0 ? "" : style.delimiter()).append(columns.get(i).header());
        }
        return s.append("\r\n").toString();
    }

    @Override
    public int lines(SimulatedVisit visit) {
        return visit.rows();
    }

    @Override
    public void append(StringBuilder out, SimulatedVisit visit, Slips slips) {
        for (int i = 0; i < visit.rows(); i++) {
            WheelReading wheel =
                    visit.wheels().isEmpty() ? null : visit.wheels().get(i);
            for (int c = 0; c < columns.size(); c++) {
                Column column = columns.get(c);
                if (c > 0) {
                    out.append(style.delimiter());
                }
                String slip =
                        column.ofWheel() ? slips.ofWheel(i, column.canonical()) : slips.ofVisit(column.canonical());
                boolean blank = column.ofWheel() && wheel == null;
                cell(out, slip != null ? slip : blank ? null : column.cell().text(visit, wheel));
            }
            out.append("\r\n");
        }
    }

    private void cell(StringBuilder out, String text) {
        if (text == null) {
            return;
        }
        boolean quote = false;
        for (int i = 0; i < text.length() && !quote; i++) {
            char c = text.charAt(i);
            quote = c == style.delimiter() || c == '"' || c == '\n' || c == '\r';
        }
        if (quote) {
            out.append('"').append(text.replace("\"", "\"\"")).append('"');
        } else {
            out.append(text);
        }
    }

    /** @return null when the name is no column of a visit */
    private Cell visitCell(String canonical) {
        return switch (canonical) {
            case "" -> (v, w) -> "R" + v.header().visitId().replace("-", "/");
            case "visitId" -> (v, w) -> v.header().visitId();
            case "revision" ->
                (v, w) -> v.header().revision() == 0
                        ? null
                        : Integer.toString(v.header().revision());
            case "visitedAt" -> (v, w) -> time(v.header().visitedAt());
            case "technicianId" -> (v, w) -> v.header().technicianId();
            case "readerId" -> (v, w) -> v.header().readerId();
            case "vehicleId" -> (v, w) -> v.header().vehicleId();
            case "vin" -> (v, w) -> v.header().vin();
            case "registration" -> (v, w) -> v.header().registration();
            case "odometer" -> (v, w) -> distance(v.header().odometerKm());
            case "odometerUnit" -> (v, w) -> style.units().odometerUnit;
            case "ambientTemperature" -> (v, w) -> temperature(v.header().ambientCelsius());
            case "temperatureUnit" -> (v, w) -> style.units().temperatureUnit;
            case "pressureUnit" -> (v, w) -> style.units().pressureUnit;
            case "placardPressure1" ->
                (v, w) -> pressure(v.header().placardKpa().get(1));
            case "placardPressure2" ->
                (v, w) -> pressure(v.header().placardKpa().get(2));
            case "placardPressure3" ->
                (v, w) -> pressure(v.header().placardKpa().get(3));
            case "wheelSet" -> (v, w) -> v.header().wheelSet();
            case "reason" -> (v, w) -> enumWord("reason", v.header().reason());
            case "notes" -> (v, w) -> v.header().notes();
            default -> warningAndRepairCell(canonical);
        };
    }

    private Cell warningAndRepairCell(String canonical) {
        return switch (canonical) {
            case "warning" -> (v, w) -> enumWord("warning", v.header().warning());
            case "warningSince" -> (v, w) -> day(v.header().warningSince());
            case "drivingMinutesToWarning" -> (v, w) -> whole(v.header().drivingMinutesToWarning());
            case "faultCodes" -> (v, w) -> CanonicalWords.codes(v.header().faultCodes());
            case "relearn" -> (v, w) -> enumWord("relearn", v.header().relearn());
            case "relearnResult" ->
                (v, w) -> enumWord("relearnResult", v.header().relearnResult());
            case "pressuresStored" ->
                (v, w) -> truth("pressuresStored", v.header().pressuresStored());
            case "codesCleared" -> (v, w) -> truth("codesCleared", v.header().codesCleared());
            case "testDriveMinutes" ->
                (v, w) -> driven(v.header()) ? whole(v.header().testDrive().minutes()) : null;
            case "testDriveDistance" ->
                (v, w) -> driven(v.header()) ? distance(v.header().testDrive().distanceKm()) : null;
            case "testDriveWarningReturned" ->
                (v, w) -> driven(v.header())
                        ? truth(
                                "testDriveWarningReturned",
                                v.header().testDrive().warningReturned())
                        : null;
            default -> null;
        };
    }

    private Cell wheelCell(String canonical) {
        return switch (canonical) {
            case "position" -> (v, w) -> style.words().place(w.position(), v.axles());
            case "sensorId" -> (v, w) -> w.sensorId();
            case "read" -> (v, w) -> enumWord("read", w.read());
            case "wakeAttempts" -> (v, w) -> w.wakeAttempts() == null ? null : Integer.toString(w.wakeAttempts());
            case "pressure" -> (v, w) -> pressure(w.pressureKpa());
            case "gaugePressure" -> (v, w) -> pressure(w.gaugePressureKpa());
            case "hot" -> (v, w) -> truth("hot", w.hot());
            case "temperature" -> (v, w) -> temperature(w.temperatureCelsius());
            case "battery" -> (v, w) -> style.words().word("battery", CanonicalWords.battery(w.battery()));
            case "part" -> (v, w) -> w.part();
            case "work" -> (v, w) -> enumWord("work", w.work());
            case "workReason" -> (v, w) -> enumWord("workReason", w.workReason());
            case "newSensorId" -> (v, w) -> w.newSensorId();
            case "newPart" -> (v, w) -> w.newPart();
            case "cloned" -> (v, w) -> truth("cloned", w.cloned());
            case "tyreDate" -> (v, w) -> CanonicalWords.tyreDate(w.tyreDate());
            default -> throw new IllegalArgumentException("no column of this name: " + canonical);
        };
    }

    private static boolean driven(VisitHeader h) {
        return h.testDrive() != null;
    }

    private String time(LocalDateTime t) {
        return dateTime.format(t);
    }

    private String day(LocalDate d) {
        return d == null ? null : date.format(d);
    }

    private String enumWord(String field, Enum<?> e) {
        return style.words().word(field, CanonicalWords.word(e));
    }

    private String truth(String field, Boolean b) {
        return b == null ? null : style.words().word(field, b.toString());
    }

    private String pressure(Double kpa) {
        return kpa == null ? null : marked(style.units().pressure(kpa));
    }

    private String distance(Double km) {
        return km == null ? null : style.units().distance(km);
    }

    private String temperature(Double celsius) {
        return celsius == null ? null : marked(style.units().temperature(celsius));
    }

    private static String whole(Double d) {
        return d == null ? null : Decimals.text(d, 0);
    }

    private String marked(String number) {
        return style.decimalMark() == '.' ? number : number.replace('.', style.decimalMark());
    }
}
