package sensorrounds.backtest;

import sensorrounds.survival.Estimate;

/**
 * Of the sensors that were given a chance within a band: how many failed?
 *
 * @param band null for all sensors
 * @param forecasts number of forecasts; a sensor asked about on several cuts counts on each
 * @param known of them, those whose fate by the end of the horizon is known
 * @param failures of those, that failed; parts where an interval reaches over the end of the horizon
 * @param replaced forecasts whose sensor was replaced working before the end of the horizon
 * @param expected mean chance of all of them
 * @param observed share that failed, those lost from sight being stood for by the others, with 95 % limits
 */
public record CalibrationRow(
        Horizon horizon,
        ChanceBand band,
        long forecasts,
        long known,
        double failures,
        long replaced,
        double expected,
        Estimate observed) {}
