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
}
