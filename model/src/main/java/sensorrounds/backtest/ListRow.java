package sensorrounds.backtest;

import java.time.LocalDate;
import sensorrounds.survival.Estimate;

/**
 * What a rule would have hit with a list as long as the engine's.
 *
 * @param cut null for all cuts together
 * @param list the engine's list whose length is matched
 * @param sensors length of the rule's list; shorter than the engine's where the rule finds no more
 * @param failures expected of the listed sensors to have failed by the end of the horizon, those lost from sight counted
 *     as the others of the list
 * @param precision share of the listed sensors that failed, with 95 % limits; NaN for an empty list
 * @param captured share of all failures that were on the list
 * @param saving what replacing a listed sensor on the day asked would have saved by the end of the horizon, mean with 95 % limits:
 *     its breakdown where it failed, less the worth of the days it was used still; set-ups of stops are not counted. NaN for an
 *     empty list
 * @param stops set-ups of the stops and readings made for the engine's list; 0 for the other rules, which make none of their own
 * @param lift how many times what lists as long would have hit by chance on the same days
 */
public record ListRow(
        LocalDate cut,
        ListKind list,
        ListRule rule,
        Horizon horizon,
        double sensors,
        double failures,
        Estimate precision,
        double captured,
        Estimate saving,
        double stops,
        double lift) {
    /** Saving of the whole list. */
    public double saved() {
        return sensors == 0 ? 0 : saving.value() * sensors;
    }
}
