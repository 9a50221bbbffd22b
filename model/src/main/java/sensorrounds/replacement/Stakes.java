package sensorrounds.replacement;

import java.io.Serializable;

/**
 * What hangs on replacing one sensor early, in the currency of the costs: to hold a choice against what happened.
 *
 * @param failure cost of its failing, the piece aside: the breakdown times the chance that it is called out for before a stop
 *     that happens anyway finds it; 0 for a spare
 * @param day worth of a day of use: least long-run cost of its place a day
 * @param stop its share of the set-up of a stop made for the list's sake, or of a reading first and of the set-up should it be dead; 0
 *     where it is to be replaced at a stop that happens anyway
 */
public record Stakes(double failure, double day, double stop) implements Serializable {
    /** What replacing it at once would have saved, had it been used for so many days more and then failed, or not. */
    public double saved(boolean failed, double days) {
        return (failed ? failure : 0) - day * days;
    }
}
