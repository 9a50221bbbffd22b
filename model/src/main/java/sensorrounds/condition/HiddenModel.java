package sensorrounds.condition;

import java.io.Serializable;

/**
 * What the model of the hidden condition takes as known before it is fitted.
 *
 * @param wake chances of waking a good sensor
 * @param cohorts how fast the sensors of each cohort age
 * @param warnings which vehicles show a warning, and how often it calls a technician while a sensor lives
 * @param stages stages a sensor passes while it is weak
 * @param season when the rates change with the year
 */
public record HiddenModel(
        HiddenSettings settings,
        WakeChances wake,
        HiddenCohorts cohorts,
        WarningSigns warnings,
        WeakStages stages,
        ColdSeason season)
        implements Serializable {
    /** One cohort, no vehicle that shows a warning, one stage of weakness, no season. */
    public static HiddenModel of(HiddenSettings settings, WakeChances wake) {
        return new HiddenModel(
                settings, wake, HiddenCohorts.one(settings), WarningSigns.none(), WeakStages.ONE, ColdSeason.none());
    }

    public HiddenModel with(WeakStages newStages) {
        return new HiddenModel(settings, wake, cohorts, warnings, newStages, season);
    }

    public HiddenModel with(ColdSeason newSeason) {
        return new HiddenModel(settings, wake, cohorts, warnings, stages, newSeason);
    }
}
