package sensorrounds.backtest;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.outlook.LastReport;
import sensorrounds.replacement.Advice;

/**
 * What the engine would have said of one sensor on a day gone by.
 *
 * @param cut that day
 * @param ageDays its age then; null when not known
 * @param supposedAgeDays the age a crew would take it for: the one known, else its vehicle's, else the time since its first
 *     answer; null when there is none of them
 * @param chances by the engine
 * @param byAge by the law of life of its cohort and its age, whatever it last reported
 */
public record Forecast(
        LocalDate cut,
        String vehicleId,
        String lifeId,
        Integer ageDays,
        Integer supposedAgeDays,
        LastReport lastReport,
        Advice advice,
        Chances chances,
        Chances byAge)
        implements Serializable {}
