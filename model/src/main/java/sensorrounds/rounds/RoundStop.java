package sensorrounds.rounds;

import java.io.Serializable;

/**
 * A vehicle on a round.
 *
 * @param week from 1
 * @param order place on the round, from 1
 * @param saving what the stop is expected to save in that week
 */
public record RoundStop(String depot, int week, int order, RoundCall call, double minutes, double saving)
        implements Serializable {}
