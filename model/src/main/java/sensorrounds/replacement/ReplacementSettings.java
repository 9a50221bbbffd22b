package sensorrounds.replacement;

import java.io.Serializable;

/**
 * What a replacement must bring before it is advised.
 *
 * @param minimumSaving least expected saving for which a vehicle is brought in or looked up, in the currency of the costs
 * @param hurdle share of what is given up, the life left in a sensor and the set-up of a stop, that must come back on top of
 *     it: 0.1 asks for 110 back for 100 given up
 * @param callOutDays mean days from a failure to the call-out it causes: before that, a stop booked anyway finds it
 * @param outOfSightDays days without a visit after which a vehicle is read before anything is fitted
 * @param deadChance chance of being dead from which a piece is planned for a sensor whatever it would save
 * @param stopGapDays days from one stop of a vehicle to the next, before its own visits tell
 * @param stopGapWeight stops that this figure counts as
 * @param listDays days until the list is made again: what may as well be decided then is not brought in now
 */
public record ReplacementSettings(
        double minimumSaving,
        double hurdle,
        double callOutDays,
        int outOfSightDays,
        double deadChance,
        double stopGapDays,
        double stopGapWeight,
        int listDays)
        implements Serializable {
    public ReplacementSettings {
        if (!(minimumSaving >= 0
                && hurdle >= 0
                && callOutDays > 0
                && outOfSightDays >= 0
                && deadChance >= 0
                && stopGapDays > 0
                && stopGapWeight > 0
                && listDays > 0)) {
            throw new IllegalArgumentException("replacement settings: minimum saving " + minimumSaving + ", hurdle "
                    + hurdle + ", call-out days " + callOutDays + ", out-of-sight days " + outOfSightDays
                    + ", dead chance " + deadChance + ", days between stops " + stopGapDays + " of weight "
                    + stopGapWeight + ", days to the next list " + listDays
                    + "; none may be negative; call-out days, days between stops, their weight and days to the next list"
                    + " must be over 0");
        }
    }

    /** Common practice, no source; the hurdle and the minimum are the operator's to choose. */
    public static ReplacementSettings defaults() {
        return new ReplacementSettings(20, 0.1, 30, 365, 0.5, 240, 2, 30);
    }
}
