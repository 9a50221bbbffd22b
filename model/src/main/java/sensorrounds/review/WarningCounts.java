package sensorrounds.review;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import sensorrounds.history.VehicleHistory;
import sensorrounds.recurrence.ComebackRate;
import sensorrounds.recurrence.ComebackRates;
import sensorrounds.recurrence.FalseFlags;
import sensorrounds.recurrence.NoFaultShare;
import sensorrounds.recurrence.PeerCells;
import sensorrounds.recurrence.PeerRates;
import sensorrounds.recurrence.WarningCurvePoint;
import sensorrounds.recurrence.WarningRecurrence;
import sensorrounds.recurrence.WarningTrend;
import sensorrounds.recurrence.WarningVisits;

/** What all vehicles together say of system warnings and their repairs: a mergeable state of whole numbers. */
public final class WarningCounts implements Serializable {
    private static final long serialVersionUID = 1;

    private final WarningRecurrence recurrence = new WarningRecurrence();
    private final ComebackRates comebacks = new ComebackRates();
    private final WarningVisits visits = new WarningVisits();

    /**
     * What it amounts to.
     *
     * @param curve mean number of warnings of a vehicle over time, by clock and class
     * @param trends rates and trends by class
     * @param comebacks warnings back after repair, by kind and window
     * @param noFaults no fault found at visits with a warning, by class
     * @param falseFlags recurring vehicles that chance is expected to have put there, by class
     */
    public record Summary(
            List<WarningCurvePoint> curve,
            List<WarningTrend> trends,
            List<ComebackRate> comebacks,
            List<NoFaultShare> noFaults,
            List<FalseFlags> falseFlags)
            implements Serializable {
        public Summary {
            curve = List.copyOf(curve);
            trends = List.copyOf(trends);
            comebacks = List.copyOf(comebacks);
            noFaults = List.copyOf(noFaults);
            falseFlags = List.copyOf(falseFlags);
        }

        /** Of a fleet without visits. */
        public static Summary empty() {
            return new Summary(List.of(), List.of(), List.of(), List.of(), List.of());
        }
    }

    /** Counts one vehicle as it stood on {@code asOf}. */
    public WarningCounts add(VehicleHistory history, LocalDate asOf) {
        recurrence.add(history, asOf);
        comebacks.add(history, asOf);
        visits.add(history, asOf);
        return this;
    }

    /** Takes in the counts of another part of the fleet. */
    public WarningCounts merge(WarningCounts o) {
        recurrence.merge(o.recurrence);
        comebacks.merge(o.comebacks);
        visits.merge(o.visits);
        return this;
    }

    /** @param recurring vehicles whose warning recurs, in cells */
    public Summary summary(PeerCells recurring, PeerRates peers) {
        return new Summary(
                recurrence.curve(),
                recurrence.trends(),
                comebacks.rates(),
                visits.shares(),
                FalseFlags.byClass(recurring, peers));
    }
}
