package sensorrounds.condition;

import java.io.Serializable;

/**
 * What the model of the hidden condition takes as known before it is fitted.
 *
 * @param wake chances of waking a good sensor
 * @param cohorts how fast the sensors of each cohort age
 * @param warnings which vehicles show a warning, and how often it calls a technician while a sensor lives
 */
public record HiddenModel(HiddenSettings settings, WakeChances wake, HiddenCohorts cohorts, WarningSigns warnings)
        implements Serializable {
    /** One cohort, no vehicle that shows a warning. */
    public static HiddenModel of(HiddenSettings settings, WakeChances wake) {
        return new HiddenModel(settings, wake, HiddenCohorts.one(settings), WarningSigns.none());
    }
}
