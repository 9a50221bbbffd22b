package sensorrounds.review;

import java.io.Serializable;
import sensorrounds.history.FollowUp;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.outlook.UnmonitoredWheel.Certainty;
import sensorrounds.recurrence.PeerCells;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.RankedReplacement;

/**
 * What a summary says of the whole fleet: a mergeable state. Money is added in ten-thousandths of the currency, in whole
 * numbers, so that the sum is the same in any order.
 */
public final class FleetTotals implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double MONEY_UNITS = 10_000;

    private final long[] byAdvice = new long[Advice.values().length];
    private final long[] byPattern = new long[RecurringVehicle.Pattern.values().length];
    private final long[] byProof = new long[FollowUp.State.values().length];
    private final PeerCells recurring = new PeerCells();
    private long outcomesMissing;
    private long backAfterProof;
    private final long[] vehiclesByAdvice = new long[Advice.values().length];
    private final long[] outlay = new long[Advice.values().length];
    private final long[] saving = new long[Advice.values().length];
    private final long[] unmonitored = new long[Certainty.values().length];
    private final long[] vehiclesUnmonitored = new long[Certainty.values().length];

    /** Adds a vehicle's review. */
    public FleetTotals add(VehicleReview review) {
        for (RankedReplacement line : review.lines()) {
            byAdvice[line.advice().ordinal()]++;
            outlay[line.advice().ordinal()] += Math.round(line.costNow() * MONEY_UNITS);
            // A line without a law has no saving; Math.round makes that nothing.
            saving[line.advice().ordinal()] += Math.round(line.saving() * MONEY_UNITS);
        }
        review.lines().stream().map(RankedReplacement::advice).distinct().forEach(a -> vehiclesByAdvice[a.ordinal()]++);
        if (review.recurring() != null) {
            byPattern[review.recurring().pattern().ordinal()]++;
            if (review.recurring().pattern() != RecurringVehicle.Pattern.NOT_RECURRING) {
                recurring.add(review.recurring());
            }
        }
        review.unmonitored().forEach(w -> unmonitored[w.certainty().ordinal()]++);
        review.unmonitored().stream()
                .map(UnmonitoredWheel::certainty)
                .distinct()
                .forEach(c -> vehiclesUnmonitored[c.ordinal()]++);
        return this;
    }

    /** Adds a vehicle's follow-ups. */
    public FleetTotals add(VehicleHistory history) {
        for (FollowUp f : history.followUps()) {
            byProof[f.state().ordinal()]++;
            outcomesMissing += f.outcomeMissing() ? 1 : 0;
            backAfterProof += f.backOn() == null ? 0 : 1;
        }
        return this;
    }

    /** Takes in the totals of another part of the fleet. */
    public FleetTotals merge(FleetTotals o) {
        plus(byAdvice, o.byAdvice);
        plus(byPattern, o.byPattern);
        plus(byProof, o.byProof);
        recurring.merge(o.recurring);
        outcomesMissing += o.outcomesMissing;
        backAfterProof += o.backAfterProof;
        plus(vehiclesByAdvice, o.vehiclesByAdvice);
        plus(outlay, o.outlay);
        plus(saving, o.saving);
        plus(unmonitored, o.unmonitored);
        plus(vehiclesUnmonitored, o.vehiclesUnmonitored);
        return this;
    }

    private static void plus(long[] mine, long[] other) {
        for (int i = 0; i < mine.length; i++) {
            mine[i] += other[i];
        }
    }

    public long lines(Advice advice) {
        return byAdvice[advice.ordinal()];
    }

    /** Vehicles with at least one such line. */
    public long vehicles(Advice advice) {
        return vehiclesByAdvice[advice.ordinal()];
    }

    /** Cost of doing all lines of this advice, in the currency of the costs. */
    public double outlay(Advice advice) {
        return outlay[advice.ordinal()] / MONEY_UNITS;
    }

    /** What all lines of this advice are expected to save, in the currency of the costs. */
    public double saving(Advice advice) {
        return saving[advice.ordinal()] / MONEY_UNITS;
    }

    public long vehicles(RecurringVehicle.Pattern pattern) {
        return byPattern[pattern.ordinal()];
    }

    /** Vehicles whose system warning recurs in any way. */
    public long recurringVehicles() {
        long all = 0;
        for (long n : byPattern) {
            all += n;
        }
        return all - vehicles(RecurringVehicle.Pattern.NOT_RECURRING);
    }

    /** Vehicles whose system warning recurs, in cells: what their share of false flags is reckoned from. */
    public PeerCells recurringCells() {
        return recurring;
    }

    public long followUps(FollowUp.State state) {
        return byProof[state.ordinal()];
    }

    /** Open follow-ups that want only the driver's word on a drive that was long enough. */
    public long outcomesMissing() {
        return outcomesMissing;
    }

    /** Follow-ups whose warning stayed off when put to the proof and was seen again later. */
    public long backAfterProof() {
        return backAfterProof;
    }

    /** Lines of wheels without low-pressure warning, of this certainty. */
    public long unmonitored(Certainty certainty) {
        return unmonitored[certainty.ordinal()];
    }

    /** Vehicles with at least one such line. */
    public long vehiclesUnmonitored(Certainty certainty) {
        return vehiclesUnmonitored[certainty.ordinal()];
    }
}
