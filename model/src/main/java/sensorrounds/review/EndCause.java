package sensorrounds.review;

import sensorrounds.history.FailureCause;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.SensorLife;

/**
 * What ends a sensor's life in the incidence by cause: its failure, by cause, or a preventive replacement that took its
 * place. All other ends (lost, left the fleet, wrong type, a place suspected) say nothing about the sensor and censor.
 */
public enum EndCause {
    BATTERY,
    STEM_OR_CORROSION,
    TYRE_CHANGE_DAMAGE,
    INGRESS,
    UNKNOWN,
    PREVENTIVE;

    /** @return null where the life is censored */
    static EndCause of(SensorLife life) {
        if (life.end() == LifeEnd.PREVENTIVE) {
            return PREVENTIVE;
        }
        return life.end() == LifeEnd.FAILED ? of(life.cause()) : null;
    }

    static EndCause of(FailureCause cause) {
        return switch (cause) {
            case BATTERY -> BATTERY;
            case STEM_OR_CORROSION -> STEM_OR_CORROSION;
            case TYRE_CHANGE_DAMAGE -> TYRE_CHANGE_DAMAGE;
            case INGRESS -> INGRESS;
            case UNKNOWN -> UNKNOWN;
        };
    }
}
