package sensorrounds.history;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.Visit;

/**
 * Rebuilds the history of one vehicle from its visits: sensor lives, warning episodes, follow-ups, and what the logs
 * contradict. A pure function of its arguments; the order in which visits are given makes no difference.
 */
public final class HistoryBuilder {
    private static final Comparator<Visit> IN_TIME = Comparator.comparing(
                    (Visit v) -> v.header().visitedAt())
            .thenComparing(v -> v.header().visitId())
            .thenComparing(v -> v.header().revision());

    private HistoryBuilder() {}

    /**
     * @param vehicle its register line, or {@link Vehicle#unregistered}
     * @param visits all of this vehicle, one for each visit ID
     * @param asOf last day that counts; visits after it, and a leaving after it, are left out
     * @throws IllegalArgumentException when a visit is another vehicle's
     */
    public static VehicleHistory build(Vehicle vehicle, List<Visit> visits, HistorySettings settings, LocalDate asOf) {
        return build(vehicle, visits, VehicleMoves.NONE, settings, asOf);
    }

    /** @param moves sensors that came from other vehicles or went to them, by the visits until {@code asOf} */
    public static VehicleHistory build(
            Vehicle vehicle, List<Visit> visits, VehicleMoves moves, HistorySettings settings, LocalDate asOf) {
        for (Visit v : visits) {
            if (!Objects.equals(v.header().vehicleId(), vehicle.vehicleId())) {
                throw new IllegalArgumentException("visit " + v.header().visitId() + " is of vehicle "
                        + v.header().vehicleId() + ", not of " + vehicle.vehicleId()
                        + "; group the visits by vehicle first");
            }
        }
        List<Visit> seen = visits.stream()
                .filter(v -> !v.day().isAfter(asOf))
                .sorted(IN_TIME)
                .toList();
        LocalDate leftOn = leftOn(vehicle, seen, asOf);
        FindingLog findings = new FindingLog(vehicle.vehicleId());
        new VisitChecks(vehicle, findings).check(seen, leftOn);
        List<Visit> own = new ForeignWheels(vehicle, moves, findings).takenOut(seen);
        List<SensorLife> lives = SensorLives.of(vehicle, own, settings, leftOn, moves, findings);
        VisitSummaries summaries = new VisitSummaries(vehicle, settings);
        List<VisitSummary> summarised = own.stream().map(summaries::summary).toList();
        List<WarningEpisode> episodes =
                new WarningBuilder(vehicle.vehicleId(), lives, settings).episodes(own, summarised);
        List<FollowUp> followUps = new FollowUps(vehicle.vehicleId(), settings, leftOn).of(summarised, episodes);
        return new VehicleHistory(vehicle, summarised, lives, episodes, followUps, findings.inTime());
    }

    /** A vehicle that was visited after the day it left by the register left later than that. */
    private static LocalDate leftOn(Vehicle vehicle, List<Visit> visits, LocalDate asOf) {
        LocalDate left = vehicle.leftFleet();
        if (left == null || left.isAfter(asOf)) {
            return null;
        }
        LocalDate last = visits.isEmpty() ? left : visits.get(visits.size() - 1).day();
        return last.isAfter(left) ? last : left;
    }
}
