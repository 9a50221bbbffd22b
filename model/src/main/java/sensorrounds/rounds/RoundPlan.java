package sensorrounds.rounds;

import java.io.Serializable;
import java.util.List;

/**
 * The rounds of one depot.
 *
 * @param comingIn what bringing in all its vehicles costs beside the pieces and their work, on a round or not
 */
public record RoundPlan(String depot, List<RoundWeek> weeks, List<RoundStop> stops, double comingIn)
        implements Serializable {
    public RoundPlan {
        weeks = List.copyOf(weeks);
        stops = List.copyOf(stops);
    }

    /** The same without its stops, small enough to bring all depots together. */
    public RoundPlan withoutStops() {
        return new RoundPlan(depot, weeks, List.of(), comingIn);
    }
}
