package sensorrounds.tables;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.spark.sql.types.DataTypes;
import sensorrounds.intake.Rejection;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

/** The columns of the table of log rows that stand once per visit. */
final class VisitColumns {
    static final String VISIT_ID = "visit_id";
    static final String VEHICLE_ID = "vehicle_id";
    static final String VIN = "vin";
    static final String REGISTRATION = "registration";
    static final String VISITED_AT = "visited_at";
    static final int VISIT_ID_AT = 0;
    static final int VEHICLE_ID_AT = 5;

    private static final SortedMap<Integer, Double> NO_PLACARD = Collections.emptySortedMap();

    private VisitColumns() {}

    private interface OfVisit extends Function<VisitHeader, Object>, Serializable {}

    private interface OfDrive extends Function<TestDrive, Object>, Serializable {}

    private interface OfRejection extends Function<Rejection, Object>, Serializable {}

    private static Column.Getter<LogRow> visit(OfVisit part) {
        return r -> r.understood() == null ? null : part.apply(r.understood().visit());
    }

    private static Column.Getter<LogRow> key(OfVisit part, OfRejection otherwise) {
        return r -> r.quarantined() != null
                ? otherwise.apply(r.quarantined())
                : r.understood() == null ? null : part.apply(r.understood().visit());
    }

    private static Column.Getter<LogRow> drive(OfDrive part) {
        return visit(v -> v.testDrive() == null ? null : part.apply(v.testDrive()));
    }

    static List<Column<LogRow>> columns() {
        List<Column<LogRow>> all = new ArrayList<>();
        all.add(Column.text(
                VISIT_ID,
                "key of the visit; in quarantine as written, null when it could not be read",
                key(VisitHeader::visitId, Rejection::visitId)));
        all.add(Column.whole("revision", "how often the visit was edited", visit(VisitHeader::revision)));
        all.add(new Column<>(
                VISITED_AT, DataTypes.TimestampNTZType, "wall-clock time of the visit", visit(VisitHeader::visitedAt)));
        all.add(Column.text("technician_id", "who worked", visit(VisitHeader::technicianId)));
        all.add(Column.text("reader_id", "the reading tool", visit(VisitHeader::readerId)));
        all.add(Column.text(
                VEHICLE_ID,
                "key of the vehicle; in quarantine as written, null when it could not be read",
                key(VisitHeader::vehicleId, Rejection::vehicleId)));
        all.add(Column.text(VIN, "vehicle identification number, upper case", visit(VisitHeader::vin)));
        all.add(Column.text(REGISTRATION, "number plate as written", visit(VisitHeader::registration)));
        all.add(Column.number("odometer_km", "odometer, km", visit(VisitHeader::odometerKm)));
        all.add(Column.number("ambient_celsius", "air temperature, °C", visit(VisitHeader::ambientCelsius)));
        for (int axle = 1; axle <= WheelPosition.MAX_AXLE; axle++) {
            Integer key = axle;
            all.add(Column.number(
                    "placard_kpa_" + axle,
                    "prescribed cold gauge pressure of axle " + axle + ", kPa",
                    visit(v -> v.placardKpa().get(key))));
        }
        all.add(Column.text("wheel_set", "name of the wheel set", visit(VisitHeader::wheelSet)));
        all.add(Column.word("reason", "why the visit took place", visit(VisitHeader::reason)));
        all.add(Column.word("warning", "what the warning showed on arrival", visit(VisitHeader::warning)));
        all.add(Column.day("warning_since", "first day the driver saw it", visit(VisitHeader::warningSince)));
        all.add(Column.number(
                "driving_minutes_to_warning",
                "minutes of driving until it comes",
                visit(VisitHeader::drivingMinutesToWarning)));
        all.add(Column.text(
                "fault_codes",
                "codes as C1234/STORED@1L, separated by semicolons; null for none",
                visit(v -> faultCodes(v.faultCodes()))));
        all.add(Column.word("relearn", "how positions were taught", visit(VisitHeader::relearn)));
        all.add(Column.word("relearn_result", "what came of it", visit(VisitHeader::relearnResult)));
        all.add(Column.flag("pressures_stored", "reference pressures stored", visit(VisitHeader::pressuresStored)));
        all.add(Column.flag("codes_cleared", "fault codes cleared", visit(VisitHeader::codesCleared)));
        all.add(Column.number("test_drive_minutes", "minutes driven after the work", drive(TestDrive::minutes)));
        all.add(Column.number("test_drive_km", "km driven after the work", drive(TestDrive::distanceKm)));
        all.add(Column.flag(
                "test_drive_warning_returned", "whether the warning came back", drive(TestDrive::warningReturned)));
        all.add(Column.text("notes", "free text; may name people", visit(VisitHeader::notes)));
        return all;
    }

    static VisitHeader decode(RowCursor in) {
        return new VisitHeader(
                in.text(),
                in.whole(),
                in.time(),
                in.text(),
                in.text(),
                in.text(),
                in.text(),
                in.text(),
                in.number(),
                in.number(),
                placard(in),
                in.text(),
                in.word(VisitReason.class),
                in.word(Warning.class),
                in.day(),
                in.number(),
                faultCodes(in.text()),
                in.word(RelearnKind.class),
                in.word(RelearnResult.class),
                in.flag(),
                in.flag(),
                testDrive(in.number(), in.number(), in.flag()),
                in.text());
    }

    private static SortedMap<Integer, Double> placard(RowCursor in) {
        SortedMap<Integer, Double> placard = null;
        for (int axle = 1; axle <= WheelPosition.MAX_AXLE; axle++) {
            Double kpa = in.number();
            if (kpa != null) {
                placard = placard == null ? new TreeMap<>() : placard;
                placard.put(axle, kpa);
            }
        }
        return placard == null ? NO_PLACARD : Collections.unmodifiableSortedMap(placard);
    }

    private static TestDrive testDrive(Double minutes, Double km, Boolean returned) {
        return minutes == null && km == null && returned == null ? null : new TestDrive(minutes, km, returned);
    }

    private static String faultCodes(List<FaultCode> codes) {
        return codes.isEmpty()
                ? null
                : codes.stream()
                        .map(c -> c.code()
                                + (c.state() == null ? "" : "/" + c.state().name())
                                + (c.position() == null
                                        ? ""
                                        : "@" + c.position().code()))
                        .collect(Collectors.joining(";"));
    }

    private static List<FaultCode> faultCodes(String text) {
        return text == null
                ? List.of()
                : Arrays.stream(text.split(";")).map(VisitColumns::faultCode).toList();
    }

    private static FaultCode faultCode(String text) {
        int at = text.indexOf('@');
        String head = at < 0 ? text : text.substring(0, at);
        int slash = head.indexOf('/');
        return new FaultCode(
                slash < 0 ? head : head.substring(0, slash),
                slash < 0 ? null : FaultCode.State.valueOf(head.substring(slash + 1)),
                at < 0 ? null : WheelPosition.parse(text.substring(at + 1)).orElseThrow());
    }
}
