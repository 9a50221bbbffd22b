package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import sensorrounds.outlook.UnmonitoredWheel;

/** Section 2: wheels without a low-pressure warning, apart from any ranking. */
final class UnmonitoredSection implements Section {
    @Override
    public String id() {
        return "unmonitored";
    }

    @Override
    public String title() {
        return "Wheels without a low-pressure warning";
    }

    @Override
    public String question() {
        return "Which wheels will not warn their driver of low pressure?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "Here the sensor is known to be dead, or a plain valve is fitted. This is a fact, not a chance, and it is not "
                + "ranked against cost. Until it is put right, check these tyres cold with a gauge, and tell the driver. "
                + "A wheel that is not listed is not thereby known to be watched: a sensor can die between two visits.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<UnmonitoredWheel> wheels = data.unmonitored().rows().stream()
                .sorted(Comparator.comparing((UnmonitoredWheel w) -> w.depot() == null ? "\uffff" : w.depot())
                        .thenComparing(UnmonitoredWheel::vehicleId)
                        .thenComparing(UnmonitoredWheel::position, Comparator.nullsLast(Comparator.naturalOrder())))
                .toList();
        if (wheels.isEmpty()) {
            Cells.nothing(
                    h, "As far as the logs tell, every wheel of a direct system has a sensor that is not known dead.");
            return;
        }
        Cells.cut(h, data.unmonitored(), "wheels");
        new Grid<UnmonitoredWheel>(Grid.Shape.CARDS, "Wheels without a low-pressure warning, by depot and vehicle")
                .withTools()
                .marks(w -> Cells.depotMark(w.depot()))
                .column("Vehicle", (h1, w) -> Cells.vehicle(h1, w.vehicleId(), w.depot()))
                .column("Place", (h1, w) -> h1.data(Words.place(w.position(), w.wheelSet())))
                .column("Sensor", (h1, w) -> Cells.sensorOr(h1, w.sensorId(), "plain valve"))
                .column("Known since", w -> Cells.key(w.since()), (h1, w) -> Cells.day(h1, w.since()))
                .column("Why", (h1, w) -> h1.data(w.reason()))
                .column(
                        "Next booked stop",
                        w -> Cells.key(data.nextPlannedVisits().get(w.vehicleId())),
                        (h1, w) -> Cells.dayOr(h1, data.nextPlannedVisits().get(w.vehicleId()), "none booked"))
                .write(h, wheels);
    }
}
