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
        return "Known: the sensor is dead, or a plain valve is fitted. Probable: the sensor did not answer when it was tried "
                + "last, or never. System: the vehicle’s own system warning was on when it was seen last, so that none of "
                + "its wheels may be watched. None of this is ranked against cost. Until it is put right, check these "
                + "tyres cold with a gauge, and tell the driver. "
                + "A wheel that is not listed is not thereby known to be watched: a sensor can die between two visits.";
    }

    @Override
    public void body(Html h, ReportData data) {
        List<UnmonitoredWheel> wheels = data.unmonitored().rows().stream()
                .sorted(Comparator.comparing(UnmonitoredWheel::certainty)
                        .thenComparing(w -> w.depot() == null ? "\uffff" : w.depot())
                        .thenComparing(UnmonitoredWheel::vehicleId)
                        .thenComparing(UnmonitoredWheel::position, Comparator.nullsLast(Comparator.naturalOrder())))
                .toList();
        if (wheels.isEmpty()) {
            Cells.nothing(
                    h,
                    "As far as the logs tell, every wheel of a direct system has a sensor that answered when it was tried last, and "
                            + "no system warning is on.");
            return;
        }
        Cells.cut(h, data.unmonitored(), "wheels");
        new Grid<UnmonitoredWheel>(
                        Grid.Shape.CARDS, "Wheels without a low-pressure warning, surest first, by depot and vehicle")
                .withTools()
                .marks(w -> Cells.depotMark(w.depot()))
                .column("Vehicle", (h1, w) -> Cells.vehicle(h1, w.vehicleId(), w.depot()))
                .column(
                        "How sure",
                        w -> Integer.toString(w.certainty().ordinal()),
                        (h1, w) -> h1.text(Words.of(w.certainty())))
                .column("Place", (h1, w) -> h1.data(place(w)))
                .column("Sensor", (h1, w) -> Cells.sensorOr(h1, w.sensorId(), noSensor(w)))
                .column("Since", w -> Cells.key(w.since()), (h1, w) -> Cells.day(h1, w.since()))
                .column("Why", (h1, w) -> h1.data(w.reason()))
                .column(
                        "Next booked stop",
                        w -> Cells.key(data.nextPlannedVisits().get(w.vehicleId())),
                        (h1, w) -> Cells.dayOr(h1, data.nextPlannedVisits().get(w.vehicleId()), "none booked"))
                .write(h, wheels);
    }

    /** Place in words; the system's warning concerns the whole vehicle. */
    static String place(UnmonitoredWheel w) {
        return w.position() == null ? "Whole vehicle" : Words.place(w.position(), w.wheelSet());
    }

    private static String noSensor(UnmonitoredWheel w) {
        return switch (w.certainty()) {
            case KNOWN -> "plain valve";
            case PROBABLE -> "never heard";
            case SYSTEM -> "all";
        };
    }
}
