package sensorrounds.backtest;

import java.io.Serializable;
import java.time.LocalDate;
import sensorrounds.outlook.LastReport;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.Stakes;

/**
 * What the engine would have said of one sensor on a day gone by.
 *
 * @param cut that day
 * @param ageDays its age then; null when not known
 * @param supposedAgeDays the age a crew would take it for: the one known, else its vehicle's, else the time since its first
 *     answer; null when there is none of them
 * @param replaced whether it is to be replaced whatever is found; a sensor read first, at the next stop if it answers
 * @param leads whether it is to be replaced now and is the likeliest to fail among those of its stop
 * @param stakes what hung on replacing it early; null where no law of life was fitted
 * @param fitError standard deviation of the log of the hazard ahead, from the uncertainty of the fit; NaN where the age is not
 *     known, whose own error would hide it
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
        boolean replaced,
        boolean leads,
        Stakes stakes,
        double fitError,
        Chances chances,
        Chances byAge)
        implements Serializable {}
