package sensorrounds.replacement;

import java.io.Serializable;

/**
 * What a replacement must bring before it is advised.
 *
 * @param minimumSaving least expected saving for which a vehicle is brought in or looked up, in the currency of the costs
 * @param hurdle share of what is spent that must come back on top of it, for every sensor and for the stop: 0.1 asks for
 *     110 back for 100 spent
 * @param callOutDays mean days from a failure to the call-out it causes: before that, a stop booked anyway finds it
 * @param outOfSightDays days without a visit after which a vehicle is read before anything is fitted
 * @param deadChance chance of being dead from which a piece is planned for a sensor whatever it would save
 */
public record ReplacementSettings(
        double minimumSaving, double hurdle, double callOutDays, int outOfSightDays, double deadChance)
        implements Serializable {
    public ReplacementSettings {
        if (!(minimumSaving >= 0 && hurdle >= 0 && callOutDays > 0 && outOfSightDays >= 0 && deadChance >= 0)) {
            throw new IllegalArgumentException("replacement settings: minimum saving " + minimumSaving + ", hurdle "
                    + hurdle + ", call-out days " + callOutDays + ", out-of-sight days " + outOfSightDays
                    + ", dead chance " + deadChance + "; none may be negative, call-out days must be over 0");
        }
    }

    /** Common practice, no source; the hurdle and the minimum are the operator's to choose. */
    public static ReplacementSettings defaults() {
        return new ReplacementSettings(20, 0.1, 30, 365, 0.5);
    }
}
