package sensorrounds.simulate;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

/** A visit while it is under way. */
final class VisitDraft {
    final int day;
    final LocalDateTime at;
    final Crew.Pair crew;
    final double ambient;
    final List<WheelDraft> wheels = new ArrayList<>();
    VisitReason reason;
    Warning warning = Warning.NONE;
    LocalDate warningSince;
    Double minutesToWarning;
    final List<FaultCode> codes = new ArrayList<>();
    RelearnKind relearn;
    RelearnResult relearnResult;
    Boolean pressuresStored;
    Boolean codesCleared;
    TestDrive testDrive;
    String notes;

    VisitDraft(int day, LocalDateTime at, Crew.Pair crew, double ambient, VisitReason reason) {
        this.day = day;
        this.at = at;
        this.crew = crew;
        this.ambient = ambient;
        this.reason = reason;
    }

    WheelDraft at(WheelPosition position) {
        return wheels.stream()
                .filter(w -> w.wheel.position.equals(position))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no wheel at " + position));
    }

    Stream<WheelDraft> replaced() {
        return wheels.stream().filter(w -> w.newSensorId != null);
    }

    VisitHeader header(
            String visitId,
            String vehicleId,
            String vin,
            String registration,
            Double odometerKm,
            SortedMap<Integer, Double> placard,
            String wheelSet) {
        return new VisitHeader(
                visitId,
                0,
                at,
                crew.technician().id(),
                crew.reader().id(),
                vehicleId,
                vin,
                registration,
                odometerKm,
                ambient,
                placard,
                wheelSet,
                reason,
                warning,
                warningSince,
                minutesToWarning,
                List.copyOf(codes),
                relearn,
                relearnResult,
                pressuresStored,
                codesCleared,
                testDrive,
                notes);
    }
}
