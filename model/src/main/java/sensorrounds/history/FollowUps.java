package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.visit.Warning;

/** Follows each repair of a system warning until it is proven or the warning is back. */
final class FollowUps {
    private record Settled(FollowUp.State state, LocalDate on, LocalDate backOn) {}

    private final String vehicleId;
    private final HistorySettings settings;
    private final LocalDate leftOn;

    /** @param leftOn day the vehicle left; null while it is in the fleet */
    FollowUps(String vehicleId, HistorySettings settings, LocalDate leftOn) {
        this.vehicleId = vehicleId;
        this.settings = settings;
        this.leftOn = leftOn;
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
                        Proof.minutes(visit, settings),
                        settings.proofDriveMinutes(),
                        settled.state(),
                        settled.on(),
                        settled.backOn()));
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
            if (i > repair && visit.warning() == Warning.SYSTEM_FAULT && visit.isLaterThan(visits.get(repair))) {
                return new Settled(FollowUp.State.RETURNED, visit.day(), null);
            }
            if (visit.warning() == Warning.NONE
                    && visit.day().isAfter(repairedOn)
                    && !Proof.hardlyDriven(visits.get(repair), visit, settings)) {
                return proven(visits, i);
            }
            Proof proof = Proof.of(visit, settings);
            if (proof != Proof.NONE) {
                return proof == Proof.OFF ? proven(visits, i) : new Settled(FollowUp.State.RETURNED, visit.day(), null);
            }
        }
        return leftOn == null
                ? new Settled(FollowUp.State.OPEN, null, null)
                : new Settled(FollowUp.State.LEFT, leftOn, null);
    }

    /** Stayed off at this visit; and the first later day with the warning on again. */
    private static Settled proven(List<VisitSummary> visits, int at) {
        LocalDate on = visits.get(at).day();
        LocalDate backOn = visits.subList(at + 1, visits.size()).stream()
                .filter(v -> v.warning() == Warning.SYSTEM_FAULT && v.day().isAfter(on))
                .map(VisitSummary::day)
                .findFirst()
                .orElse(null);
        return new Settled(FollowUp.State.PROVEN, on, backOn);
    }
}
