package sensorrounds.recurrence;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import sensorrounds.history.FollowUp;
import sensorrounds.history.Repair;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.Warning;

/**
 * What became of one repair of a system warning.
 *
 * @param again whether the warning had been worked on within {@link #EARLIER_DAYS} before
 * @param backAfter days until the warning was back; null when it was not seen again
 * @param clearAfter days until the vehicle was last seen without the warning before it was back, 0 when it was not
 * @param followedFor days for which the outcome could be followed: to the day of the report, to leaving the fleet, or to other
 *     work on the system, whichever came first
 */
record RepairOutcome(Repair repair, boolean again, Integer backAfter, int clearAfter, int followedFor) {
    /** Work on the same warning within this time before makes a repair a repeated one. */
    static final int EARLIER_DAYS = 365;

    /** Outcomes of all repairs of the vehicle by {@code asOf}, in order. */
    static List<RepairOutcome> of(VehicleHistory history, LocalDate asOf) {
        List<VisitSummary> visits =
                history.visits().stream().filter(v -> !v.day().isAfter(asOf)).toList();
        return history.followUps().stream()
                .filter(f -> !f.repairedOn().isAfter(asOf))
                .map(f -> of(f, history, visits, asOf))
                .toList();
    }

    private static RepairOutcome of(FollowUp f, VehicleHistory history, List<VisitSummary> visits, LocalDate asOf) {
        boolean again = history.followUps().stream()
                .anyMatch(o -> o.repairedOn().isBefore(f.repairedOn())
                        && !o.repairedOn().isBefore(f.repairedOn().minusDays(EARLIER_DAYS)));
        LocalDate repairedOn = f.repairedOn();
        int clear = 0;
        VisitSummary repaired = null;
        for (VisitSummary v : visits) {
            boolean own = v.visitId().equals(f.visitId()) && v.day().equals(repairedOn);
            if (!own && repaired == null) {
                continue;
            }
            boolean past = repaired != null;
            if (past && v.warning() == Warning.SYSTEM_FAULT && v.isLaterThan(repaired)) {
                return new RepairOutcome(
                        f.repair(), again, days(repairedOn, back(v, repairedOn)), clear, days(repairedOn, v.day()));
            }
            if (past && (v.warning() == Warning.NONE || v.warning() == Warning.LOW_PRESSURE)) {
                clear = days(repairedOn, v.day());
            }
            if (Boolean.TRUE.equals(v.warningReturned())) {
                int after = days(repairedOn, v.day());
                return new RepairOutcome(f.repair(), again, after, clear, after);
            }
            if (past && (v.relearned() || v.codesCleared() || !v.replaced().isEmpty())) {
                // What holds from here on may be owed to this work.
                return new RepairOutcome(f.repair(), again, null, clear, days(repairedOn, v.day()));
            }
            repaired = past ? repaired : v;
        }
        LocalDate last =
                visits.isEmpty() ? repairedOn : visits.get(visits.size() - 1).day();
        return new RepairOutcome(
                f.repair(), again, null, clear, days(repairedOn, WarningDays.end(history, last, asOf)));
    }

    /** The driver's word for when it came back, if it lies between the repair and the visit. */
    private static LocalDate back(VisitSummary v, LocalDate repairedOn) {
        LocalDate since = v.warningSince();
        return since != null && !since.isBefore(repairedOn) && !since.isAfter(v.day()) ? since : v.day();
    }

    private static int days(LocalDate from, LocalDate to) {
        return (int) ChronoUnit.DAYS.between(from, to);
    }
}
