package sensorrounds.backtest;

import java.time.LocalDate;
import sensorrounds.survival.Estimate;

/**
 * How good the forecasts of a cut were, and how much better than by age alone.
 *
 * @param cut null for all cuts together
 * @param forecasts number of forecasts
 * @param known of them, those whose fate by the end of the horizon is known
 * @param failures of those, that failed
 * @param expected failures expected, the sum of all chances
 * @param expectedLimits what {@code expected} may have been by the uncertainty of the fits, 95 %: the hazards of all sensors higher or
 *     lower together
 * @param ratio failures observed for one expected, with 95 % limits
 * @param brier mean squared distance of chance and outcome
 * @param brierByAge the same of the chances by age alone
 * @param gain by how much the engine's is lower, with 95 % limits
 * @param concordance of two sensors, how often the one given the higher chance failed first; NaN without a pair
 * @param concordanceError its standard error; NaN for all cuts together
 * @param concordanceByAge the same by the chances by age
 */
public record ScoreRow(
        LocalDate cut,
        Horizon horizon,
        long forecasts,
        long known,
        double failures,
        double expected,
        Estimate expectedLimits,
        Estimate ratio,
        double brier,
        double brierByAge,
        Estimate gain,
        double concordance,
        double concordanceError,
        double concordanceByAge) {

    /** Whether failures for one expected, as sure as they are, agree with the chances as sure as their fits were. */
    public boolean withinFit() {
        return ratio.lower() * expected <= expectedLimits.upper() && ratio.upper() * expected >= expectedLimits.lower();
    }

    /** Share of the squared error of the chances by age that the engine's are without. */
    public double skill() {
        return gain.value() / brierByAge;
    }
}
