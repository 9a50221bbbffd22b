package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.visit.Warning;

/** Follows each repair of a system warning until it is proven or the warning is back. */
final class FollowUps {
    private record Settled(FollowUp.State state, LocalDate on) {}

    private final String vehicleId;
    private final HistorySettings settings;

    FollowUps(String vehicleId, HistorySettings settings) {
        this.vehicleId = vehicleId;
        this.settings = settings;
    }

    /**
     * @param visits in time order
     * @param episodes of the same visits
     */
    List<FollowUp> of(List<VisitSummary> visits, List<WarningEpisode> episodes) {
        List<FollowUp> followUps = new ArrayList<>();
        for (int i = 0; i < visits.size(); i++) {
            VisitSummary visit = visits.get(i);
            boolean faulty = visit.warning() == Warning.SYSTEM_FAULT
                    || (visit.warning() != Warning.NONE && isOpen(episodes, visit.day()));
            if (faulty && WarningBuilder.isMeantToEnd(Warning.SYSTEM_FAULT, visit)) {
                Settled settled = settled(visits, i);
                followUps.add(new FollowUp(
                        vehicleId,
                        visit.visitId(),
                        visit.technicianId(),
                        visit.day(),
                        visit.repair(),
                        visit.driveMinutes() == null ? 0 : visit.driveMinutes(),
                        settings.proofDriveMinutes(),
                        settled.state(),
                        settled.on()));
            }
        }
        return followUps;
    }

    /** Seen by that day and not proven off before it. */
    private static boolean isOpen(List<WarningEpisode> episodes, LocalDate day) {
        return episodes.stream()
                .filter(e -> e.kind() == Warning.SYSTEM_FAULT)
                .anyMatch(e -> !e.firstSeen().isAfter(day)
                        && (e.provenOff() == null || !e.provenOff().isBefore(day)));
    }

    private Settled settled(List<VisitSummary> visits, int repair) {
        LocalDate repairedOn = visits.get(repair).day();
        for (int i = repair; i < visits.size(); i++) {
            VisitSummary visit = visits.get(i);
            if (i > repair && visit.warning() == Warning.SYSTEM_FAULT) {
                return new Settled(FollowUp.State.RETURNED, visit.day());
            }
            if (visit.warning() == Warning.NONE && visit.day().isAfter(repairedOn)) {
                return new Settled(FollowUp.State.PROVEN, visit.day());
            }
            Proof proof = Proof.of(visit, settings);
            if (proof != Proof.NONE) {
                return new Settled(proof == Proof.OFF ? FollowUp.State.PROVEN : FollowUp.State.RETURNED, visit.day());
            }
        }
        return new Settled(FollowUp.State.OPEN, null);
    }
}
