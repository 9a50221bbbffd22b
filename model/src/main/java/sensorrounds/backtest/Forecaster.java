package sensorrounds.backtest;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.LifeLaws;
import sensorrounds.outlook.OutlookSettings;
import sensorrounds.outlook.OutlookSettings.Prior;
import sensorrounds.outlook.Outlooks;
import sensorrounds.outlook.ReportCells;
import sensorrounds.outlook.ReportRatios;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.RankedReplacement;

/**
 * Takes down what the engine said of each sensor, with what age alone would have said. Travels to the executors.
 *
 * <p>The chances by age are the strongest rule that looks at nothing but age: the fitted law of the sensor's cohort, from its
 * last answer on, age unknown handled as in the outlooks, with a report of every sensor that says nothing.
 */
public final class Forecaster implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double Z95 = 1.959963984540054;
    private static final Prior NEUTRAL = new Prior(1, 1);

    private final LifeLaws laws;
    private final ReportRatios ratios;
    private final OutlookSettings settings;
    private final LocalDate cut;

    public Forecaster(LifeLaws laws, int horizonDays, LocalDate cut) {
        this.laws = laws;
        this.settings = new OutlookSettings(horizonDays, NEUTRAL, NEUTRAL, NEUTRAL, NEUTRAL);
        this.ratios = ReportRatios.fit(new ReportCells(), settings);
        this.cut = cut;
    }

    /**
     * Forecasts for the sensors a vehicle had in service; a sensor for which no law was fitted has chances NaN.
     *
     * @param history up to the cut
     * @param lines the engine's, of that day
     */
    public List<Forecast> of(VehicleHistory history, List<RankedReplacement> lines) {
        Map<String, SensorLife> lives = new HashMap<>();
        history.lives().forEach(life -> lives.put(life.lifeId(), life));
        Map<String, Chances> byAge = new HashMap<>();
        for (SensorOutlook o : Outlooks.of(history, laws, ratios, (life, day) -> LastReport.SOUND, settings, cut)) {
            byAge.put(o.sensor().lifeId(), Chances.of(o));
        }
        RankedReplacement leading = lines.stream()
                .filter(l -> l.advice() == Advice.REPLACE_NOW)
                .max(Comparator.comparingDouble(l -> l.outlook().chances().pHorizon()))
                .orElse(null);
        List<Forecast> forecasts = new ArrayList<>();
        for (RankedReplacement line : lines) {
            SensorOutlook o = line.outlook();
            forecasts.add(new Forecast(
                    cut,
                    o.sensor().vehicleId(),
                    o.sensor().lifeId(),
                    o.sensor().ageDays(),
                    supposedAge(
                            history, lives.get(o.sensor().lifeId()), o.sensor().ageDays()),
                    o.sensor().lastReport(),
                    line.advice(),
                    line.replacedInAnyCase(),
                    line == leading,
                    line.stakes(),
                    o.sensor().ageDays() == null ? Double.NaN : fitError(o.chances()),
                    Chances.of(o),
                    byAge.get(o.sensor().lifeId())));
        }
        return forecasts;
    }

    /** From the limits, which are normal on the log of the cumulative hazard. */
    private static double fitError(SensorOutlook.Chances c) {
        double upper = Math.log(-Math.log1p(-c.pHorizonUpper()));
        double lower = Math.log(-Math.log1p(-c.pHorizonLower()));
        double error = (upper - lower) / (2 * Z95);
        return Double.isFinite(error) ? error : Double.NaN;
    }

    private Integer supposedAge(VehicleHistory history, SensorLife life, Integer known) {
        LocalDate firstUsed = history.vehicle().firstUsed();
        if (known != null) {
            return known;
        }
        LocalDate since = firstUsed != null ? firstUsed : life.firstAnswered();
        return since == null ? null : (Integer) Math.toIntExact(ChronoUnit.DAYS.between(since, cut));
    }
}
