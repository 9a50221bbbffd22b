package sensorrounds.report;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import sensorrounds.history.FollowUp;

/** Section 5: repairs whose cure is still to be proven. Names vehicles and visits, never technicians. */
final class FollowUpSection implements Section {
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
                + "again. A repair counts as proven once the vehicle was driven at least as long as the system may take to "
                + "detect, and the warning stayed off. Open ones come first, the oldest at the top; then those after which "
                + "the warning came back.";
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
        long proven = data.followUps().rows().stream()
                .filter(f -> f.state() == FollowUp.State.PROVEN)
                .count();
        Cells.cut(h, data.followUps(), "repairs of a system warning");
        if (owed.isEmpty()) {
            Cells.nothing(
                    h,
                    data.followUps().rows().isEmpty()
                            ? "No repair of a system warning is on record, so there is nothing to prove."
                            : "Every repair of a system warning has been settled: proven, or the warning came back.");
        }
        List<FollowUp> rows = Stream.concat(owed.stream(), returned.stream()).toList();
        if (!rows.isEmpty()) {
            table(h, data, rows);
        }
        if (proven > 0) {
            h.element(
                            "p",
                            Format.count(proven, "repair of this list is", "repairs of this list are")
                                    + " proven by a drive.")
                    .line();
        }
    }

    static long daysOpen(FollowUp f, LocalDate asOf) {
        return ChronoUnit.DAYS.between(f.repairedOn(), f.settledOn() == null ? asOf : f.settledOn());
    }

    private static void table(Html h, ReportData data, List<FollowUp> rows) {
        LocalDate asOf = data.run().asOf();
        new Grid<FollowUp>(
                        Grid.Shape.CARDS, "Repairs open as of " + asOf + ", and those after which the warning returned")
                .withTools()
                .marks(f -> Cells.depotMark(data.depots().get(f.vehicleId())))
                .column(
                        "Vehicle",
                        (h1, f) ->
                                Cells.vehicle(h1, f.vehicleId(), data.depots().get(f.vehicleId())))
                .column(
                        "State",
                        (h1, f) -> h1.element(
                                "span",
                                Words.of(f.state()),
                                "class",
                                f.state() == FollowUp.State.OPEN ? "key" : "owed"))
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
