package sensorrounds.replacement;

import java.io.Serializable;
import sensorrounds.outlook.SensorOutlook;

/**
 * One line of the ranked replacement list.
 *
 * @param rank from 1
 * @param costNow expected cost of replacing now
 * @param costLater expected cost of keeping it over the horizon, less the credit for the life still used
 * @param saving costLater - costNow; the list is ordered by it
 * @param breakEvenProbability probability of failure within the horizon from which replacing now pays
 * @param reason why it stands here, in a sentence
 */
public record RankedReplacement(
        int rank,
        SensorOutlook outlook,
        double costNow,
        double costLater,
        double saving,
        double breakEvenProbability,
        Advice advice,
        String reason)
        implements Serializable {
    public RankedReplacement withRank(int r) {
        return new RankedReplacement(r, outlook, costNow, costLater, saving, breakEvenProbability, advice, reason);
    }
}
