package sensorrounds.history;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Predicate;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;

/** Boils a visit down to what the warning history needs. */
final class VisitSummaries {
    /** Sensors replaced at one visit that make a set when the vehicle's layout is not known. */
    private static final int USUAL_SET = 4;

    private final Vehicle vehicle;
    private final ColdCheck cold;

    VisitSummaries(Vehicle vehicle, HistorySettings settings) {
        this.vehicle = vehicle;
        this.cold = new ColdCheck(settings);
    }

    VisitSummary summary(Visit visit) {
        VisitHeader h = visit.header();
        List<WheelReading> wheels = visit.wheels();
        boolean tryable = vehicle.system() != MonitoringSystem.INDIRECT;
        boolean anyAnswered = wheels.stream().anyMatch(w -> w.read() == ReadOutcome.OK);
        List<WheelPosition> silent = positions(wheels, w -> tryable && w.read() == ReadOutcome.NO_ANSWER);
        List<WheelPosition> replaced = positions(wheels, w -> w.work() == WheelWork.SENSOR_REPLACED);
        WheelReading slowest = slowest(wheels);
        boolean relearned = relearned(h);
        TestDrive drive = h.testDrive();
        return new VisitSummary(
                visit.day(),
                h.visitId(),
                h.technicianId(),
                h.readerId(),
                h.reason(),
                h.warning(),
                h.warningSince(),
                h.faultCodes(),
                anyAnswered && silent.isEmpty() && !anyLeftOut(wheels),
                slowest == null ? null : slowest.position(),
                slowest == null ? null : slowest.wakeAttempts(),
                silent,
                positions(wheels, w -> tryable && w.read() == ReadOutcome.NOT_PRESENT),
                replaced,
                cold.explains(visit),
                repair(h, wheels, replaced, relearned),
                Boolean.TRUE.equals(h.codesCleared()),
                relearned,
                drive == null ? null : drive.minutes(),
                drive == null ? null : drive.distanceKm(),
                drive == null ? null : drive.warningReturned(),
                h.odometerKm());
    }

    /** Named as not tried, or not named though the register has the wheel: not to look at a wheel may be written in either way. */
    private boolean anyLeftOut(List<WheelReading> wheels) {
        if (wheels.stream().anyMatch(w -> w.read() == ReadOutcome.NOT_TRIED)) {
            return true;
        }
        return vehicle.axles() != null
                && !positions(wheels, w -> true).containsAll(vehicle.axles().positions());
    }

    private Repair repair(VisitHeader h, List<WheelReading> wheels, List<WheelPosition> replaced, boolean relearned) {
        if (isSet(replaced)) {
            return Repair.SET_REPLACED;
        }
        if (!replaced.isEmpty()) {
            return Repair.SENSOR_REPLACED;
        }
        if (wheels.stream().anyMatch(w -> w.work() != null && w.work() != WheelWork.NONE)) {
            return Repair.OTHER_WHEEL_WORK;
        }
        if (relearned) {
            return Repair.RELEARN;
        }
        if (Boolean.TRUE.equals(h.codesCleared())) {
            return Repair.CODES_CLEARED;
        }
        return Boolean.TRUE.equals(h.pressuresStored()) ? Repair.PRESSURES_CORRECTED : Repair.NONE;
    }

    private boolean isSet(List<WheelPosition> replaced) {
        if (replaced.isEmpty()) {
            return false;
        }
        List<WheelPosition> road = replaced.stream().filter(p -> !p.isSpare()).toList();
        if (vehicle.axles() == null) {
            return road.size() >= USUAL_SET;
        }
        return road.containsAll(
                vehicle.axles().positions().stream().filter(p -> !p.isSpare()).toList());
    }

    /** A relearn that failed changed nothing; one that was attempted may have. */
    private static boolean relearned(VisitHeader h) {
        boolean named = h.relearn() != null && h.relearn() != RelearnKind.NONE;
        return h.relearnResult() == RelearnResult.DONE || (named && h.relearnResult() != RelearnResult.FAILED);
    }

    /** The one wheel that took more tries than every other; null when no single one stands out. */
    private static WheelReading slowest(List<WheelReading> wheels) {
        WheelReading most = null;
        Integer second = null;
        for (WheelReading wheel : wheels) {
            if (wheel.read() != ReadOutcome.OK || wheel.wakeAttempts() == null) {
                continue;
            }
            int tries = wheel.wakeAttempts();
            if (most == null) {
                most = wheel;
            } else if (tries > most.wakeAttempts()) {
                second = most.wakeAttempts();
                most = wheel;
            } else if (second == null || tries > second) {
                second = tries;
            }
        }
        return second != null && most.wakeAttempts() > second ? most : null;
    }

    private static List<WheelPosition> positions(List<WheelReading> wheels, Predicate<WheelReading> which) {
        List<WheelPosition> positions = new ArrayList<>(0);
        for (WheelReading wheel : wheels) {
            if (which.test(wheel)) {
                positions.add(wheel.position());
            }
        }
        Collections.sort(positions);
        return List.copyOf(positions);
    }
}
