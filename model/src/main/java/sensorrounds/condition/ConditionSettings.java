package sensorrounds.condition;

import java.io.Serializable;
import sensorrounds.visit.BatteryReport;

/**
 * What the reading of a sensor's condition from its tries rests on. All are in the settings file; none has a published
 * source unless said, they are common practice made explicit.
 *
 * @param slowPrior share of sensors in service that wake slowly, before any read of the one in hand
 * @param slowOddsFactor odds that a slow sensor answers one try, relative to a sound one under the same reader
 * @param recentReadings newest reads with a count of tries that are looked at
 * @param watchProbability posterior probability of slow waking from which a sensor is put on the watch list
 * @param coldCelsius air temperature under which a read counts as cold, °C
 * @param warmerCelsius an OK battery report taken at least this much warmer than a low one does not take it back, °C
 * @param triesCounted tries of one read that count towards its reader's chance: a sensor that needs seven tries must
 *     not weigh more than one that needs three
 * @param effectDeviation standard deviation of the prior for the log odds ratios of inner wheels and of cold
 * @param technicianDeviation standard deviation over technicians of the log odds they add to their readers', before any
 *     data; it weighs as much as four technicians
 * @param priorChance chance that one try wakes a sound sensor, before any data
 * @param priorTries tries that {@code priorChance} is worth
 * @param readerPriorTries least number of tries that the average of all readers is worth against one reader's own
 * @param minimumReaderReads reads under which no reader is called slow
 * @param leastChance lowest chance that is reckoned with
 * @param mostChance highest chance that is reckoned with: even the best reader misses now and then
 * @param battery limits under which a battery figure counts as low
 */
public record ConditionSettings(
        double slowPrior,
        double slowOddsFactor,
        int recentReadings,
        double watchProbability,
        double coldCelsius,
        double warmerCelsius,
        int triesCounted,
        double effectDeviation,
        double technicianDeviation,
        double priorChance,
        double priorTries,
        double readerPriorTries,
        int minimumReaderReads,
        double leastChance,
        double mostChance,
        BatteryReport.LowLimits battery)
        implements Serializable {

    public ConditionSettings {
        require(slowPrior > 0 && slowPrior < 1, "slowPrior", slowPrior, "between 0 and 1");
        require(slowOddsFactor > 0 && slowOddsFactor < 1, "slowOddsFactor", slowOddsFactor, "between 0 and 1");
        require(recentReadings >= 1, "recentReadings", recentReadings, "1 or more");
        require(
                watchProbability > slowPrior && watchProbability < 1,
                "watchProbability",
                watchProbability,
                "above slowPrior and below 1");
        require(Double.isFinite(coldCelsius), "coldCelsius", coldCelsius, "a temperature");
        require(warmerCelsius >= 0, "warmerCelsius", warmerCelsius, "0 or more");
        require(
                triesCounted >= 1 && triesCounted <= WakeCells.MAX_TRIES,
                "triesCounted",
                triesCounted,
                "1 to " + WakeCells.MAX_TRIES);
        require(effectDeviation > 0, "effectDeviation", effectDeviation, "above 0");
        require(technicianDeviation > 0, "technicianDeviation", technicianDeviation, "above 0");
        require(priorChance > 0 && priorChance < 1, "priorChance", priorChance, "between 0 and 1");
        require(priorTries > 0, "priorTries", priorTries, "above 0");
        require(readerPriorTries > 0, "readerPriorTries", readerPriorTries, "above 0");
        require(minimumReaderReads >= 1, "minimumReaderReads", minimumReaderReads, "1 or more");
        require(
                leastChance > 0 && leastChance < mostChance && mostChance < 1,
                "leastChance and mostChance",
                leastChance,
                "0 < leastChance < mostChance < 1");
        require(battery != null, "battery", Double.NaN, "the limits of a low report");
    }

    public static ConditionSettings defaults() {
        return new ConditionSettings(
                0.05,
                0.125,
                6,
                0.7,
                0,
                10,
                2,
                1,
                0.4,
                0.85,
                20,
                10,
                20,
                0.02,
                0.98,
                new BatteryReport.LowLimits(20, 2.5, 6));
    }

    private static void require(boolean holds, String name, double value, String expected) {
        if (!holds) {
            throw new IllegalArgumentException(
                    name + " is " + value + ", expected " + expected + "; correct it in the settings");
        }
    }
}
