package sensorrounds.condition;

import java.io.Serializable;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which vehicles show a warning when a sensor is dead, and how often the warning calls a technician to a sensor that lives:
 * for its set-mates, the receiver, or by chance.
 *
 * <p>A class of vehicles shows a warning unless its dead sensors say otherwise (a trailer without a display in sight, say): it
 * counts as dark when visits with a dead sensor make that likelier than not. Taken are one class in eleven dark, a warning on at
 * nine such visits in ten where one is shown and at one in ten where none is; so two dark visits more than lit ones suffice. The
 * numbers are our choice, no source.
 */
public final class WarningSigns implements Serializable {
    private static final long serialVersionUID = 1;
    /** Dark visits less lit ones from which a class counts as dark: its odds are 1 to 10 times 9 for each. */
    static final int DARK_AHEAD = 2;

    /** Half a call in ten years, for a fleet that never had one: keeps the rate off 0. */
    private static final double HALF_A_CALL = 0.5;

    private static final double DAYS_OF_PRIOR = 3652;

    private final boolean any;
    private final Set<String> dark;
    private final double callsPerDay;

    private WarningSigns(boolean any, Set<String> dark, double callsPerDay) {
        this.any = any;
        this.dark = dark;
        this.callsPerDay = callsPerDay;
    }

    /** No vehicle shows a warning: time without one says nothing. */
    public static WarningSigns none() {
        return new WarningSigns(false, Set.of(), HALF_A_CALL / DAYS_OF_PRIOR);
    }

    public static WarningSigns of(WarningSignCells cells) {
        Set<String> dark = new TreeSet<>();
        cells.dead().forEach((vehicleClass, counts) -> {
            if (counts[1] - counts[0] >= DARK_AHEAD) {
                dark.add(vehicleClass);
            }
        });
        return new WarningSigns(true, dark, (cells.calls() + HALF_A_CALL) / (cells.days() + DAYS_OF_PRIOR));
    }

    /** Every class shows a warning, at a given rate of calls; for studies with known truth. */
    static WarningSigns everywhere(double callsPerDay) {
        return new WarningSigns(true, Set.of(), callsPerDay);
    }

    boolean shows(String vehicleClass) {
        return any && !dark.contains(WarningSignCells.key(vehicleClass));
    }

    /** Calls for the system's warning per day, of one sensor that lives. */
    double callsPerDay() {
        return callsPerDay;
    }
}
