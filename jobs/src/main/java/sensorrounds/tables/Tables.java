package sensorrounds.tables;

import java.util.List;

/** Every stored table of a run but the log rows, in the order a reader would want them. */
public final class Tables {
    public static final List<Table<?>> RESULTS = List.of(
            RankedReplacements.TABLE,
            UnmonitoredWheels.TABLE,
            RecurringVehicles.TABLE,
            Suspects.TABLE,
            FollowUps.TABLE,
            ComebackRates.TABLE,
            NoFaultShares.TABLE,
            FalseFlagShares.TABLE,
            WarningTrends.TABLE,
            WarningCurves.TABLE,
            WatchList.TABLE,
            StockOutlooks.TABLE,
            Budgets.TABLE,
            Rounds.TABLE,
            Rounds.STOPS,
            ConditionFits.TABLE,
            ConditionHistories.TABLE,
            SurvivalFits.TABLE,
            FitReports.TABLE,
            SurvivalCurves.TABLE,
            CauseIncidences.TABLE,
            CohortComparisons.TABLE,
            FailureCalendars.TABLE,
            LifeAheads.TABLE,
            LifeAheads.CURVES,
            CovariateEffectRows.TABLE,
            CovariateEffectRows.FAMILIES,
            CovariateEffectRows.LIKENESS,
            Seasons.EFFECT,
            Seasons.CLIMATE,
            SensorLives.TABLE,
            WarningEpisodes.TABLE,
            ReaderQualities.TABLE,
            Findings.TABLE);

    private Tables() {}
}
