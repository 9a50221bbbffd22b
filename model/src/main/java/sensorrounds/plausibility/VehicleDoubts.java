package sensorrounds.plausibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sensorrounds.visit.Visit;

/** Holds the entries of one vehicle's visits against each other. A pure function of the visits. */
public final class VehicleDoubts {
    /** The order in which doubts are listed: by row, then kind. Total over different doubts. */
    public static final Comparator<Doubt> ORDER = Comparator.comparing(
                    (Doubt d) -> d.sources().get(0))
            .thenComparing(Doubt::kind)
            .thenComparing(Doubt::position, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(Doubt::what);

    private VehicleDoubts() {}

    /**
     * @param visits all visits of one vehicle in time order, as duplicates are settled
     * @return the doubts in {@link #ORDER}
     */
    public static List<Doubt> of(List<Visit> visits) {
        List<Doubt> doubts = new ArrayList<>();
        for (Visit visit : visits) {
            VisitDoubts.add(visit, doubts);
            PressureDoubts.add(visit, doubts);
            TemperatureDoubts.add(visit, doubts);
        }
        PlacardDoubts.add(visits, doubts);
        OdometerDoubts.add(visits, doubts);
        RepeatedVisits.add(visits, doubts);
        IdentityDoubts.add(visits, doubts);
        SensorIdDoubts.add(visits, doubts);
        doubts.sort(ORDER);
        return doubts;
    }
}
