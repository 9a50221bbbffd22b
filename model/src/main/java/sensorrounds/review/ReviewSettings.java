package sensorrounds.review;

import java.io.Serializable;
import sensorrounds.condition.ConditionSettings;
import sensorrounds.condition.HiddenChoices;
import sensorrounds.history.HistorySettings;
import sensorrounds.outlook.OutlookSettings;
import sensorrounds.recurrence.RecurrenceSettings;
import sensorrounds.replacement.Costs;
import sensorrounds.replacement.ReplacementSettings;
import sensorrounds.rounds.RoundSettings;
import sensorrounds.season.SeasonSettings;
import sensorrounds.stock.StockSettings;
import sensorrounds.survival.CohortLadder;
import sensorrounds.survival.TwoHazardPrior;
import sensorrounds.survival.WeakPrior;

/**
 * Every cost, horizon, threshold and prior that a review of a fleet rests on.
 *
 * @param weakPrior what is held likely of a sensor's life where the fleet has too few failures for a law
 * @param twoHazardPrior what is held likely of the early hazard and of wear-out where a cohort has too few for a law of its own
 * @param preventiveWarningShare share of preventive replacements, of these and the failures, above which a cohort's
 *     curve carries a warning; 0 to 1
 * @param season which months count as cold
 */
public record ReviewSettings(
        HistorySettings history,
        CohortBy cohortBy,
        CohortLadder.Settings ladder,
        WeakPrior weakPrior,
        TwoHazardPrior twoHazardPrior,
        double preventiveWarningShare,
        SeasonSettings season,
        ConditionSettings condition,
        HiddenChoices hidden,
        OutlookSettings outlook,
        RecurrenceSettings recurrence,
        Costs costs,
        ReplacementSettings replacement,
        StockSettings stock,
        RoundSettings rounds)
        implements Serializable {}
