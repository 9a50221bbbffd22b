package sensorrounds.rounds;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.replacement.RankedReplacement;

/**
 * A vehicle that a round may take in.
 *
 * @param depot null when not known
 * @param wheels wheels to be worked on
 * @param saving what the stop saves against waiting, if made at once; 0 where it is not about money
 * @param waitDays days to the vehicle's next stop, over which that saving wears off
 * @param booked day of its booked stop; null when none
 * @param comingIn what bringing it in costs beside the pieces and their work: set-up or reading, in the currency of the costs
 * @param lines lines of the list that the stop is made for, or that are done while it stands
 * @param unmonitored its wheels known to give no warning
 */
public record RoundCall(
        String vehicleId,
        String depot,
        Kind kind,
        int wheels,
        double saving,
        int waitDays,
        LocalDate booked,
        double comingIn,
        List<RankedReplacement> lines,
        List<UnmonitoredWheel> unmonitored)
        implements Serializable {
    /** Why it is on the round, in the order in which rounds are filled. */
    public enum Kind {
        /** It stands anyway that day: only the work on its wheels takes time. */
        BOOKED,
        /** A wheel on the road is known to give no warning: not weighed against money. */
        NO_WARNING,
        /** The list asks for a stop now. */
        DUE
    }

    public RoundCall {
        lines = List.copyOf(lines);
        unmonitored = List.copyOf(unmonitored);
    }

    /** Minutes that it takes of a round. */
    double minutes(RoundSettings settings) {
        return (kind == Kind.BOOKED ? 0 : settings.stopMinutes()) + wheels * settings.wheelMinutes();
    }

    /** Saving of the stop when made in a week, from 0: it wears off evenly until the next stop comes anyway. */
    double saving(int week) {
        return kind == Kind.DUE ? Math.max(0, saving * (1 - 7.0 * week / Math.max(7, waitDays))) : 0;
    }
}
