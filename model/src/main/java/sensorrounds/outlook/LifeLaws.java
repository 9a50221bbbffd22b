package sensorrounds.outlook;

import java.io.Serializable;
import java.util.Optional;
import sensorrounds.survival.LifeLaw;
import sensorrounds.survival.RenewalCounts;

/** Where an outlook finds the law of life of a sensor. */
@FunctionalInterface
public interface LifeLaws extends Serializable {
    /**
     * A fitted law and what it stands on.
     *
     * @param cohort name of the cohort
     * @param rung rung of the fallback ladder, in words
     * @param renewals expected replacements at a place where sensors follow this law
     */
    record Law(String cohort, String rung, LifeLaw life, RenewalCounts renewals) implements Serializable {
        public Law(String cohort, String rung, LifeLaw life) {
            this(cohort, rung, life, RenewalCounts.of(life));
        }
    }

    /**
     * @param vehicleClass null when not known
     * @param part null when not known
     * @return the law, or empty when no rung of the ladder gave one
     */
    Optional<Law> of(String vehicleClass, String part);

    /**
     * How many times as likely this part is on a vehicle's first sensor as on a later one; 1 where nothing tells.
     *
     * @param originalPart part that the vehicle's register line names; null when not known
     * @param part of the sensor; null when not known
     */
    default double firstSensorFactor(String originalPart, String part) {
        return 1;
    }
}
