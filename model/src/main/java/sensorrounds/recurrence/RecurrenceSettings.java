package sensorrounds.recurrence;

import java.io.Serializable;
import sensorrounds.condition.ConditionSettings;

/**
 * When a warning counts as recurring, and what peers and suspects are measured by. All are in the settings file.
 *
 * @param minimumReturns returns of the warning from which it recurs
 * @param windowDays days back from the day of the report in which returns count
 * @param minimumPeers vehicles a class needs to stand on its own rates
 * @param minimumPeerEvents events it needs
 * @param declaredPeerShape shape of the law of rates where even all vehicles are too few; 1 is an exponential law
 * @param largestPeerShape largest shape used: some difference between vehicles is always reckoned with
 * @param proofDriveMinutes driving that proves a system warning cured: 10 in UN R141, 20 in 49 CFR 571.138
 * @param weights weights of the signs that name a suspect
 * @param condition settings of the reading of a sensor's condition
 */
public record RecurrenceSettings(
        int minimumReturns,
        int windowDays,
        int minimumPeers,
        int minimumPeerEvents,
        double declaredPeerShape,
        double largestPeerShape,
        double proofDriveMinutes,
        SuspectWeights weights,
        ConditionSettings condition)
        implements Serializable {

    public RecurrenceSettings {
        require(minimumReturns >= 1, "minimumReturns", minimumReturns, "1 or more");
        require(windowDays >= 1, "windowDays", windowDays, "1 or more");
        require(minimumPeers >= 2, "minimumPeers", minimumPeers, "2 or more");
        require(minimumPeerEvents >= 1, "minimumPeerEvents", minimumPeerEvents, "1 or more");
        require(declaredPeerShape > 0, "declaredPeerShape", declaredPeerShape, "above 0");
        require(
                largestPeerShape >= declaredPeerShape && largestPeerShape <= 1e6,
                "largestPeerShape",
                largestPeerShape,
                "declaredPeerShape to 1000000");
        require(proofDriveMinutes >= 0, "proofDriveMinutes", proofDriveMinutes, "0 or more");
        require(weights != null && condition != null, "weights and condition", Double.NaN, "both given");
    }

    public static RecurrenceSettings defaults() {
        return new RecurrenceSettings(
                2, 365, 20, 10, 1, 50, 20, SuspectWeights.defaults(), ConditionSettings.defaults());
    }

    private static void require(boolean holds, String name, double value, String expected) {
        if (!holds) {
            throw new IllegalArgumentException(
                    name + " is " + value + ", expected " + expected + "; correct it in the settings");
        }
    }
}
