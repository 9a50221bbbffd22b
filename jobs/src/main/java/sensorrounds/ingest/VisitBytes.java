package sensorrounds.ingest;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.Side;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** Visits and wheels as bytes, for the way between two tasks of one job; nothing is stored in this form. */
final class VisitBytes {
    private static final VisitReason[] REASONS = VisitReason.values();
    private static final Warning[] WARNINGS = Warning.values();
    private static final RelearnKind[] RELEARNS = RelearnKind.values();
    private static final RelearnResult[] RELEARN_RESULTS = RelearnResult.values();
    private static final FaultCode.State[] STATES = FaultCode.State.values();
    private static final ReadOutcome[] READS = ReadOutcome.values();
    private static final BatteryReport.Kind[] BATTERIES = BatteryReport.Kind.values();
    private static final WheelWork[] WORKS = WheelWork.values();
    private static final WorkReason[] WORK_REASONS = WorkReason.values();
    private static final Side[] SIDES = Side.values();
    private static final Mount[] MOUNTS = Mount.values();
    private static final SortedMap<Integer, Double> NO_PLACARD = Collections.emptySortedMap();

    private VisitBytes() {}

    static void write(VisitHeader v, ByteWriter out) {
        out.text(v.visitId());
        out.whole(v.revision());
        out.number(v.visitedAt().toEpochSecond(ZoneOffset.UTC));
        out.number(v.visitedAt().getNano());
        out.text(v.technicianId());
        out.text(v.readerId());
        out.text(v.vehicleId());
        out.text(v.vin());
        out.text(v.registration());
        out.decimal(v.odometerKm());
        out.decimal(v.ambientCelsius());
        out.number(v.placardKpa().size());
        v.placardKpa().forEach((axle, kpa) -> {
            out.number(axle);
            out.decimal(kpa);
        });
        out.text(v.wheelSet());
        out.word(v.reason());
        out.word(v.warning());
        out.day(v.warningSince());
        out.decimal(v.drivingMinutesToWarning());
        out.number(v.faultCodes().size());
        for (FaultCode code : v.faultCodes()) {
            out.text(code.code());
            out.word(code.state());
            position(code.position(), out);
        }
        out.word(v.relearn());
        out.word(v.relearnResult());
        out.flag(v.pressuresStored());
        out.flag(v.codesCleared());
        TestDrive drive = v.testDrive();
        out.flag(drive != null);
        if (drive != null) {
            out.decimal(drive.minutes());
            out.decimal(drive.distanceKm());
            out.flag(drive.warningReturned());
        }
        out.text(v.notes());
    }

    static VisitHeader readVisit(ByteReader in) {
        return new VisitHeader(
                in.text(),
                in.whole(),
                LocalDateTime.ofEpochSecond(in.number(), (int) in.number(), ZoneOffset.UTC),
                in.text(),
                in.text(),
                in.text(),
                in.text(),
                in.text(),
                in.decimal(),
                in.decimal(),
                placard(in),
                in.text(),
                in.word(REASONS),
                in.word(WARNINGS),
                in.day(),
                in.decimal(),
                faultCodes(in),
                in.word(RELEARNS),
                in.word(RELEARN_RESULTS),
                in.flag(),
                in.flag(),
                in.flag() ? new TestDrive(in.decimal(), in.decimal(), in.flag()) : null,
                in.text());
    }

    private static SortedMap<Integer, Double> placard(ByteReader in) {
        int size = (int) in.number();
        if (size == 0) {
            return NO_PLACARD;
        }
        SortedMap<Integer, Double> placard = new TreeMap<>();
        for (int i = 0; i < size; i++) {
            placard.put((int) in.number(), in.decimal());
        }
        return Collections.unmodifiableSortedMap(placard);
    }

    private static List<FaultCode> faultCodes(ByteReader in) {
        int size = (int) in.number();
        if (size == 0) {
            return List.of();
        }
        List<FaultCode> codes = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            codes.add(new FaultCode(in.text(), in.word(STATES), position(in)));
        }
        return List.copyOf(codes);
    }

    /** @param w null for a visit without wheels */
    static void write(WheelReading w, ByteWriter out) {
        position(w == null ? null : w.position(), out);
        if (w == null) {
            return;
        }
        out.text(w.positionRaw());
        out.text(w.sensorId());
        out.word(w.read());
        out.whole(w.wakeAttempts());
        out.decimal(w.pressureKpa());
        out.decimal(w.gaugePressureKpa());
        out.flag(w.hot());
        out.decimal(w.temperatureCelsius());
        out.word(w.battery() == null ? null : w.battery().kind());
        if (w.battery() != null) {
            out.decimal(w.battery().value());
        }
        out.text(w.part());
        out.word(w.work());
        out.word(w.workReason());
        out.text(w.newSensorId());
        out.text(w.newPart());
        out.flag(w.cloned());
        out.day(w.tyreDate());
    }

    static WheelReading readWheel(ByteReader in) {
        WheelPosition position = position(in);
        if (position == null) {
            return null;
        }
        return new WheelReading(
                position,
                in.text(),
                in.text(),
                in.word(READS),
                in.whole(),
                in.decimal(),
                in.decimal(),
                in.flag(),
                in.decimal(),
                battery(in),
                in.text(),
                in.word(WORKS),
                in.word(WORK_REASONS),
                in.text(),
                in.text(),
                in.flag(),
                in.day());
    }

    private static BatteryReport battery(ByteReader in) {
        BatteryReport.Kind kind = in.word(BATTERIES);
        return kind == null ? null : new BatteryReport(kind, in.decimal());
    }

    private static void position(WheelPosition p, ByteWriter out) {
        out.number(p == null ? 0 : p.axle() + 1L);
        if (p != null) {
            out.word(p.side());
            out.word(p.mount());
        }
    }

    private static WheelPosition position(ByteReader in) {
        int axle = (int) in.number() - 1;
        return axle < 0 ? null : new WheelPosition(axle, in.word(SIDES), in.word(MOUNTS));
    }
}
