package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import sensorrounds.condition.WatchEntry;

/** Section 7: sensors that still work and show a sign of weakness. */
final class WatchSection implements Section {
    @Override
    public String id() {
        return "watch";
    }

    @Override
    public String title() {
        return "Watch list";
    }

    @Override
    public String question() {
        return "Which working sensors show a sign of weakness, and what reading would settle it?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "These sensors answered at some point and are not known dead. A low battery report in the cold may lift in the "
                + "warm; a slow answer may be the reader’s doing, and what the reader explains is already taken off. The "
                + "last column says which reading would take the sensor off this list.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<WatchEntry> rows = data.watch().rows().stream()
                .sorted(Comparator.comparing(WatchEntry::sign)
                        .thenComparing(WatchEntry::since, Comparator.nullsLast(Comparator.naturalOrder()))
                        .thenComparing(WatchEntry::vehicleId)
                        .thenComparing(WatchEntry::position, Comparator.nullsLast(Comparator.naturalOrder())))
                .toList();
        if (rows.isEmpty()) {
            Cells.nothing(h, "No working sensor shows a sign of weakness in its reports or in how it wakes.");
            return;
        }
        Cells.cut(h, data.watch(), "sensors to watch");
        new Grid<WatchEntry>(Grid.Shape.CARDS, "Working sensors with a sign of weakness")
                .withTools()
                .marks(w -> Cells.depotMark(w.depot()))
                .column("Vehicle", (h1, w) -> Cells.vehicle(h1, w.vehicleId(), w.depot()))
                .column("Place", (h1, w) -> h1.data(Words.place(w.position(), w.wheelSet())))
                .column("Sensor", (h1, w) -> Cells.sensorAndPart(h1, w.sensorId(), w.part()))
                .column("Sign", (h1, w) -> sign(h1, w))
                .column("Since", w -> Cells.key(w.since()), (h1, w) -> Cells.day(h1, w.since()))
                .column("What was seen", (h1, w) -> h1.data(w.reason()))
                .column("Settled by", (h1, w) -> h1.data(w.settledBy()))
                .write(h, rows);
    }

    private static void sign(Html h, WatchEntry w) {
        h.element("span", Words.of(w.sign()), "class", "key");
        if (Double.isFinite(w.probability())) {
            h.element("span", "chance " + Format.chance(w.probability()), "class", "under");
        }
    }
}
