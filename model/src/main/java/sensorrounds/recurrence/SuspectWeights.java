package sensorrounds.recurrence;

import java.io.Serializable;

/**
 * What each sign weighs for or against a sensor being behind a recurring system warning. The weight of "not a sensor"
 * before any evidence is 1; everything else is relative to it. All are in the settings file. They are common practice
 * made explicit, without a published source, and chosen so that no single sign but a known failure decides by itself.
 *
 * @param youngDays a sensor younger than this is young
 * @param oldDays a sensor of this age or older is old
 * @param young weight of a young sensor: cells rarely fail in their first year
 * @param middle weight of a sensor between young and old: four of them are together as likely as "not a sensor"
 * @param old weight of an old sensor: age brings the cell near its end
 * @param unknownAge weight of a sensor of unknown age, taken as one in between
 * @param slowIfCause share of sensors behind such warnings that wake slowly; against {@code slowPrior} of the condition
 *     settings for any other sensor. The two bound the weight of slow waking, however many tries were needed; so it is with
 *     the pairs that follow
 * @param lowIfCause share of them whose battery is of the kind that gets reported low
 * @param lowIfOther share of other sensors
 * @param silentIfCause share of them that fall silent at visits with the warning on
 * @param silentIfOther share of other sensors
 * @param apartIfCause share of them whose pressure disagrees with the hand gauge's while their mates' agree
 * @param apartIfOther share of other sensors
 * @param codeIfCause share of vehicles whose codes name the place of the sensor behind the warnings
 * @param codeIfOther chance that a code seen at a visit names a wheel falsely
 * @param acrossPlaces weight of a sensor that was silent or slow at more than one place
 * @param notLearned weight for "not a sensor" when a new ID was fitted and no relearn is on record since
 * @param fittedAfter weight of a sensor fitted after the warning was first seen
 * @param placeForNotASensor weight for "not a sensor" when sensors fall silent one after the other at one place
 * @param placeAgainstSensor weight for the sensor now at that place
 * @param foundDead weight against "not a sensor" for each episode that ended with a dead sensor found, twice at most:
 *     how often one would be found by chance, were the cause another (the share of vehicles with a dead sensor on a wheel)
 * @param knownFailed weight of a sensor known failed and still on the wheel, which raises the warning by itself
 * @param leastVehicles flagged vehicles from which the fleet's own signs are learned
 * @param declaredWorth flagged vehicles that the figures above are worth against what is learned
 */
public record SuspectWeights(
        int youngDays,
        int oldDays,
        double young,
        double middle,
        double old,
        double unknownAge,
        double slowIfCause,
        double lowIfCause,
        double lowIfOther,
        double silentIfCause,
        double silentIfOther,
        double apartIfCause,
        double apartIfOther,
        double codeIfCause,
        double codeIfOther,
        double acrossPlaces,
        double notLearned,
        double fittedAfter,
        double placeForNotASensor,
        double placeAgainstSensor,
        double foundDead,
        double knownFailed,
        int leastVehicles,
        double declaredWorth)
        implements Serializable {

    public SuspectWeights {
        require(youngDays >= 0 && youngDays <= oldDays, "youngDays", youngDays, "0 to oldDays");
        atMostOne("young", young);
        atMostOne("middle", middle);
        atMostOne("old", old);
        atMostOne("unknownAge", unknownAge);
        require(slowIfCause > 0 && slowIfCause < 1, "slowIfCause", slowIfCause, "between 0 and 1");
        shares("lowIfCause", lowIfCause, "lowIfOther", lowIfOther);
        shares("silentIfCause", silentIfCause, "silentIfOther", silentIfOther);
        shares("apartIfCause", apartIfCause, "apartIfOther", apartIfOther);
        shares("codeIfCause", codeIfCause, "codeIfOther", codeIfOther);
        atLeastOne("acrossPlaces", acrossPlaces);
        atLeastOne("notLearned", notLearned);
        atMostOne("fittedAfter", fittedAfter);
        atLeastOne("placeForNotASensor", placeForNotASensor);
        atMostOne("placeAgainstSensor", placeAgainstSensor);
        atMostOne("foundDead", foundDead);
        atLeastOne("knownFailed", knownFailed);
        require(leastVehicles >= 1, "leastVehicles", leastVehicles, "1 or more");
        require(declaredWorth > 0 && declaredWorth < 1e6, "declaredWorth", declaredWorth, "above 0, below 1000000");
    }

    public static SuspectWeights defaults() {
        return new SuspectWeights(
                365, 1826, 0.05, 0.25, 0.5, 0.25, 0.5, 0.5, 0.05, 0.5, 0.06, 0.2, 0.08, 0.5, 0.1, 4, 4, 0.1, 8, 0.2,
                0.05, 20, 100, 2);
    }

    /** Weight of a sensor of this age, in days, before other evidence. */
    public double ofAge(long ageDays) {
        if (ageDays < youngDays) {
            return young;
        }
        return ageDays < oldDays ? middle : old;
    }

    private static void shares(String cause, double ifCause, String other, double ifOther) {
        require(ifCause > 0 && ifCause < 1, cause, ifCause, "between 0 and 1");
        require(ifOther > 0 && ifOther <= ifCause, other, ifOther, "above 0, at most " + cause);
    }

    private static void atMostOne(String name, double value) {
        require(value > 0 && value <= 1, name, value, "above 0, at most 1");
    }

    private static void atLeastOne(String name, double value) {
        require(value >= 1 && value < Double.POSITIVE_INFINITY, name, value, "1 or more");
    }

    private static void require(boolean holds, String name, double value, String expected) {
        if (!holds) {
            throw new IllegalArgumentException(
                    name + " is " + value + ", expected " + expected + "; correct it in the settings");
        }
    }
}
