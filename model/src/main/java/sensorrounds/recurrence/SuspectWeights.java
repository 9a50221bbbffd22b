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
 * @param slowIfCause chance that a sensor behind such warnings wakes slowly; against {@code slowPrior} of the condition
 *     settings for any other sensor. It bounds the weight of slow waking, however many tries were needed
 * @param lowBattery weight of a standing low battery report
 * @param batteryOk weight of an OK report, weak since a cell of flat discharge reports OK until weeks before its end
 * @param codeCurrent weight of a current fault code that names the sensor's place
 * @param codeStored weight of a stored one
 * @param codeElsewhere weight for the other sensors, and for "not a sensor", when a code names one place
 * @param pressureApart weight of a sensor whose pressure disagrees with the hand gauge's while its mates' agree
 * @param acrossPlaces weight of a sensor that was silent or slow at more than one place
 * @param notLearned weight for "not a sensor" when a new ID was fitted and no relearn is on record since
 * @param silentIfCause chance that a sensor behind such warnings is silent at a visit with the warning on
 * @param silentIfSound least chance that any other sensor is; more under a reader that wakes sensors badly
 * @param silentVisits visits with silence that count, since one cause keeps a sensor silent at several
 * @param fittedAfter weight of a sensor fitted after the warning was first seen
 * @param placeForNotASensor weight for "not a sensor" when sensors fall silent one after the other at one place
 * @param placeAgainstSensor weight for the sensor now at that place
 * @param foundDead weight against "not a sensor" for each episode that ended with a dead sensor found, twice at most:
 *     how often one would be found by chance, were the cause another (the share of vehicles with a dead sensor on a wheel)
 * @param knownFailed weight of a sensor known failed and still on the wheel, which raises the warning by itself
 */
public record SuspectWeights(
        int youngDays,
        int oldDays,
        double young,
        double middle,
        double old,
        double unknownAge,
        double slowIfCause,
        double lowBattery,
        double batteryOk,
        double codeCurrent,
        double codeStored,
        double codeElsewhere,
        double pressureApart,
        double acrossPlaces,
        double notLearned,
        double silentIfCause,
        double silentIfSound,
        int silentVisits,
        double fittedAfter,
        double placeForNotASensor,
        double placeAgainstSensor,
        double foundDead,
        double knownFailed)
        implements Serializable {

    public SuspectWeights {
        require(youngDays >= 0 && youngDays <= oldDays, "youngDays", youngDays, "0 to oldDays");
        atMostOne("young", young);
        atMostOne("middle", middle);
        atMostOne("old", old);
        atMostOne("unknownAge", unknownAge);
        require(slowIfCause > 0 && slowIfCause < 1, "slowIfCause", slowIfCause, "between 0 and 1");
        atLeastOne("lowBattery", lowBattery);
        atMostOne("batteryOk", batteryOk);
        atLeastOne("codeCurrent", codeCurrent);
        atLeastOne("codeStored", codeStored);
        atMostOne("codeElsewhere", codeElsewhere);
        atLeastOne("pressureApart", pressureApart);
        atLeastOne("acrossPlaces", acrossPlaces);
        atLeastOne("notLearned", notLearned);
        require(silentIfCause > 0 && silentIfCause < 1, "silentIfCause", silentIfCause, "between 0 and 1");
        require(
                silentIfSound > 0 && silentIfSound <= silentIfCause,
                "silentIfSound",
                silentIfSound,
                "above 0, at most silentIfCause");
        require(silentVisits >= 0, "silentVisits", silentVisits, "0 or more");
        atMostOne("fittedAfter", fittedAfter);
        atLeastOne("placeForNotASensor", placeForNotASensor);
        atMostOne("placeAgainstSensor", placeAgainstSensor);
        atMostOne("foundDead", foundDead);
        atLeastOne("knownFailed", knownFailed);
    }

    public static SuspectWeights defaults() {
        return new SuspectWeights(
                365, 1826, 0.05, 0.25, 0.5, 0.25, 0.5, 8, 0.6, 6, 3, 0.5, 2, 4, 4, 0.3, 0.05, 2, 0.1, 8, 0.2, 0.05, 20);
    }

    /** Weight of a sensor of this age, in days, before other evidence. */
    public double ofAge(long ageDays) {
        if (ageDays < youngDays) {
            return young;
        }
        return ageDays < oldDays ? middle : old;
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
