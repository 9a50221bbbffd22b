package sensorrounds.backtest;

import java.time.LocalDate;
import sensorrounds.backtest.Fate.Ending;
import sensorrounds.outlook.LastReport;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.Stakes;

/** Forecasts and fates made for a test. */
final class Plant {
    static final LocalDate CUT = LocalDate.of(2025, 1, 1);
    static final double NEVER = Double.POSITIVE_INFINITY;

    private Plant() {}

    /** A sensor of its own vehicle, given the same chance at every horizon, and by age another. */
    static Judged judged(int number, double chance, double byAge, long workedOn, double failedBy) {
        return judged(number, chance, byAge, 1000, LastReport.SOUND, Advice.KEEP, workedOn, failedBy);
    }

    static Judged judged(
            int number,
            double chance,
            double byAge,
            Integer age,
            LastReport report,
            Advice advice,
            long workedOn,
            double failedBy) {
        Forecast forecast = new Forecast(
                CUT,
                "V" + number,
                "V" + number + "/0A/1",
                age,
                age,
                report,
                advice,
                advice.fits() || advice == Advice.READ_FIRST && chance > 0.5,
                advice == Advice.REPLACE_NOW,
                new Stakes(200, 0.05, advice == Advice.REPLACE_NOW ? 10 : 0),
                0.2,
                chances(chance),
                chances(byAge));
        return new Judged(forecast, new Fate(workedOn, failedBy, failedBy < NEVER ? Ending.FAILED : Ending.IN_SERVICE));
    }

    static Chances chances(double p) {
        return new Chances(p / 2, p, p, p, p);
    }
}
