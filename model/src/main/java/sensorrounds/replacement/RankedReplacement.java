package sensorrounds.replacement;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.outlook.SensorOutlook;

/**
 * One line of the ranked replacement list. The lines of one stop add up to it: their costs to its outlay, their savings to
 * its saving.
 *
 * @param rank from 1
 * @param costNow cost of doing as advised, or of replacing the sensor when nothing is advised: the piece with its work, and
 *     its share of the set-up when the vehicle is brought in for it; its share of the reading when it is to be read first
 * @param costLater expected cost of not doing so until the next chance, less the worth of the days still used
 * @param saving costLater - costNow; NaN when no law was fitted
 * @param stopSaving what the stop now is expected to save as a whole, all its lines together; NaN for a line that asks for
 *     no stop now, or when its place is to be checked first
 * @param breakEvenProbability chance of failure within the horizon from which replacing pays at a stop that happens anyway;
 *     NaN when it never does
 * @param nextStop day of the vehicle's next booked stop; null when none is
 * @param reason why it stands here, in a sentence
 * @param stakes what hangs on it; null when no law was fitted
 */
public record RankedReplacement(
        int rank,
        SensorOutlook outlook,
        double costNow,
        double costLater,
        double saving,
        double stopSaving,
        double breakEvenProbability,
        LocalDate nextStop,
        Advice advice,
        String reason,
        Stakes stakes)
        implements Serializable {
    /**
     * Whether the sensor is to be replaced whatever is found: at a stop now or at the next one, or, where it is to be read first,
     * at once when it is dead and at the next stop when it answers, since it pays there too.
     */
    public boolean replacedInAnyCase() {
        return advice.fits() || advice == Advice.READ_FIRST && outlook.chances().pHorizon() > breakEvenProbability;
    }

    public RankedReplacement withRank(int r) {
        return new RankedReplacement(
                r,
                outlook,
                costNow,
                costLater,
                saving,
                stopSaving,
                breakEvenProbability,
                nextStop,
                advice,
                reason,
                stakes);
    }
}
