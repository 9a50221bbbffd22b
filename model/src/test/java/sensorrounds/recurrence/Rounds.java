package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.condition.Histories;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.Finding;
import sensorrounds.history.FollowUp;
import sensorrounds.history.Repair;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

/** Visits of one vehicle put together by hand, with what the history makes of them. */
final class Rounds {
    private final Vehicle vehicle;
    private final List<VisitSummary> visits = new ArrayList<>();
    private final List<WarningEpisode> episodes = new ArrayList<>();
    private final List<FollowUp> followUps = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    private Rounds(Vehicle vehicle) {
        this.vehicle = vehicle;
    }

    static Rounds of(String vehicleClass) {
        return of(vehicleClass, "2019-03-01", null);
    }

    static Rounds of(String vehicleClass, String firstUsed, String left) {
        return new Rounds(new Vehicle(
                Histories.VEHICLE,
                vehicleClass,
                null,
                firstUsed == null ? null : LocalDate.parse(firstUsed),
                null,
                null,
                MonitoringSystem.DIRECT,
                null,
                null,
                null,
                null,
                left == null ? null : LocalDate.parse(left)));
    }

    Rounds clear(String day) {
        return visit(day, Warning.NONE, null, Repair.NONE, null, List.of());
    }

    Rounds warned(String day) {
        return visit(day, Warning.SYSTEM_FAULT, null, Repair.NONE, null, List.of());
    }

    /** Warning on arrival and worked on; its follow-up is open. */
    Rounds repaired(String day, Repair repair) {
        return repaired(day, repair, FollowUp.State.OPEN, null, null);
    }

    Rounds repaired(String day, Repair repair, FollowUp.State state, String settledOn, Boolean returnedOnDrive) {
        visit(day, Warning.SYSTEM_FAULT, null, repair, returnedOnDrive, List.of());
        followUps.add(new FollowUp(
                Histories.VEHICLE,
                "visit-" + day,
                "tech-1",
                LocalDate.parse(day),
                repair,
                0,
                20,
                state,
                settledOn == null ? null : LocalDate.parse(settledOn),
                null));
        return this;
    }

    Rounds visit(String day, Warning warning, String since, Repair repair, Boolean returned, List<String> silent) {
        boolean replaced = repair == Repair.SENSOR_REPLACED || repair == Repair.SET_REPLACED;
        List<WheelPosition> silentPlaces = silent.stream().map(Histories::place).toList();
        return visit(new VisitSummary(
                LocalDate.parse(day),
                "visit-" + day,
                "tech-1",
                Histories.READER,
                VisitReason.WARNING,
                warning,
                since == null ? null : LocalDate.parse(since),
                List.of(),
                silent.isEmpty(),
                null,
                null,
                silentPlaces,
                List.of(),
                replaced ? List.of(Histories.place("1L")) : List.of(),
                null,
                repair,
                repair == Repair.CODES_CLEARED,
                repair == Repair.RELEARN,
                null,
                null,
                returned,
                null));
    }

    Rounds visit(VisitSummary visit) {
        visits.add(visit);
        return this;
    }

    Rounds coded(String day, FaultCode... codes) {
        return visit(Histories.visit(day, Warning.SYSTEM_FAULT, codes));
    }

    Rounds episode(Warning kind, String first, String last) {
        episodes.add(Histories.episode(kind, first, last, 0, true, false));
        return this;
    }

    Rounds finding(Finding.Kind kind, String day) {
        findings.add(Histories.finding(kind, null, day));
        return this;
    }

    VehicleHistory history() {
        return new VehicleHistory(vehicle, visits, List.of(), episodes, followUps, findings);
    }
}
