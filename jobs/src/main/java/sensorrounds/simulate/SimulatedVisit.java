package sensorrounds.simulate;

import java.util.List;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelReading;

/**
 * A visit as it truly was, in canonical units, before an export puts it into its layout.
 *
 * @param axles number of axles of the vehicle
 * @param partOfStory true for a vehicle with a known story, which the mess must leave alone
 */
record SimulatedVisit(VisitHeader header, List<WheelReading> wheels, int axles, boolean partOfStory) {
    SimulatedVisit {
        wheels = List.copyOf(wheels);
    }

    /** Rows the visit has in any layout. */
    int rows() {
        return Math.max(1, wheels.size());
    }
}
