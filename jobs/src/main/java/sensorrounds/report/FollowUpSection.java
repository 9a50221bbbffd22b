package sensorrounds.report;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import sensorrounds.history.FollowUp;

/** Section 5: repairs whose cure is still to be proven. Names vehicles and visits, never technicians. */
final class FollowUpSection implements Section {
    private static final int BACK_WITHIN_DAYS = 365;
    /** A proof takes 20 minutes of driving. Common practice, no source. */
    private static final int OVERDUE_AFTER_DAYS = 30;

    @Override
    public String id() {
        return "follow-ups";
    }

    @Override
    public String title() {
        return "Repairs still to be proven";
    }

    @Override
    public String question() {
        return "Did the fix hold, and which vehicles still owe a drive to show it?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "A warning that is off after clearing codes says only that the system has not yet had time to find the fault "
                + "again. It is proven to have stayed off once the vehicle was driven at least as long as the system may take "
                + "to detect. That is no cure for good: where the warning came back later, the days until then are "
                + "given. Open ones come first, the oldest at the top, overdue when open for more than "
                + OVERDUE_AFTER_DAYS + " days; then those after which the warning came back.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<FollowUp> owed = Headline.owed(data);
        List<FollowUp> returned = data.followUps().rows().stream()
                .filter(f -> f.state() == FollowUp.State.RETURNED)
                .sorted(Comparator.comparing(FollowUp::repairedOn)
                        .reversed()
                        .thenComparing(FollowUp::vehicleId)
                        .thenComparing(FollowUp::visitId))
                .toList();
        List<FollowUp> backLater = data.followUps().rows().stream()
                .filter(f -> f.backOn() != null
                        && f.backOn().isAfter(data.run().asOf().minusDays(BACK_WITHIN_DAYS)))
                .sorted(Comparator.comparing(FollowUp::backOn)
                        .reversed()
                        .thenComparing(FollowUp::vehicleId)
                        .thenComparing(FollowUp::visitId))
                .toList();
        Cells.cut(h, data.followUps(), "repairs of a system warning");
        if (owed.isEmpty()) {
            Cells.nothing(
                    h,
                    data.followUps().rows().isEmpty()
                            ? "No repair of a system warning is on record, so there is nothing to prove."
                            : "Every repair of a system warning has been settled: the warning stayed off, or it came back.");
        }
        List<FollowUp> rows =
                Stream.of(owed, returned, backLater).flatMap(List::stream).toList();
        if (!rows.isEmpty()) {
            table(h, data, rows);
        }
        long proven = data.totals().followUps(FollowUp.State.PROVEN);
        if (proven > 0) {
            h.element(
                            "p",
                            "After " + Format.count(proven, "repair")
                                    + " the warning stayed off when put to the proof; "
                                    + "after " + Format.whole(data.totals().backAfterProof())
                                    + " of these it was seen again later, from the same cause or another.")
                    .line();
        }
    }

    static long daysOpen(FollowUp f, LocalDate asOf) {
        return ChronoUnit.DAYS.between(f.repairedOn(), f.settledOn() == null ? asOf : f.settledOn());
    }

    private static void table(Html h, ReportData data, List<FollowUp> rows) {
        LocalDate asOf = data.run().asOf();
        new Grid<FollowUp>(
                        Grid.Shape.CARDS,
                        "Repairs open as of " + asOf
                                + ", those after which the warning returned, and those proven after "
                                + "which it came back within the last year")
                .withTools()
                .marks(f -> Cells.depotMark(data.depots().get(f.vehicleId())))
                .column(
                        "Vehicle",
                        (h1, f) ->
                                Cells.vehicle(h1, f.vehicleId(), data.depots().get(f.vehicleId())))
                .column("State", (h1, f) -> {
                    boolean overdue = f.state() == FollowUp.State.OPEN && daysOpen(f, asOf) > OVERDUE_AFTER_DAYS;
                    h1.element(
                            "span",
                            overdue ? "overdue" : Words.of(f.state()),
                            "class",
                            f.state() == FollowUp.State.OPEN ? "key" : "owed");
                    h1.element("span", f.standing(), "class", "under");
                })
                .column("Repaired", f -> Cells.key(f.repairedOn()), (h1, f) -> {
                    Cells.day(h1, f.repairedOn());
                    h1.open("span", "class", "under")
                            .text("visit ")
                            .data(f.visitId())
                            .close();
                })
                .number("Days open", f -> daysOpen(f, asOf), (h1, f) -> h1.text(Format.whole(daysOpen(f, asOf))))
                .column("Work", (h1, f) -> h1.text(Words.of(f.repair())))
                .number(
                        "Minutes driven",
                        FollowUp::drivenMinutes,
                        (h1, f) ->
                                h1.text(Format.whole(f.drivenMinutes()) + " of " + Format.whole(f.requiredMinutes())))
                .column(
                        "Next booked stop",
                        f -> Cells.key(data.nextPlannedVisits().get(f.vehicleId())),
                        (h1, f) -> Cells.dayOr(h1, data.nextPlannedVisits().get(f.vehicleId()), "none booked"))
                .write(h, rows);
    }
}
