package sensorrounds.review;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiFunction;
import sensorrounds.condition.LastReports;
import sensorrounds.condition.UnheardVisits;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.LifeLaws;
import sensorrounds.outlook.ReportCells;
import sensorrounds.recurrence.PeerRates;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CohortLadder;
import sensorrounds.survival.CohortLife;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.Curves;
import sensorrounds.survival.LifetimeSample;

/**
 * What is fitted once for the whole fleet, from its counts.
 *
 * @param laws law of life in use, by cohort; cohorts without one are missing
 * @param fits one line per cohort for the tables
 * @param curves curves of every cohort
 */
public record Estimates(
        ReviewSettings settings,
        WakeModel wake,
        Map<String, LifeLaws.Law> laws,
        List<CohortFit> fits,
        List<CurvePoint> curves,
        PeerRates peers)
        implements Serializable, LifeLaws {

    /** Fits everything that the counts allow. */
    public static Estimates of(FleetCounts counts, ReviewSettings settings) {
        SortedMap<String, LifetimeSample> samples = counts.samples();
        SortedMap<String, CohortLife> ladder =
                CohortLadder.withDefaults().with(settings.ladder()).fit(samples, counts.preventiveShares());
        Map<String, LifeLaws.Law> laws = new HashMap<>();
        List<CohortFit> fits = new ArrayList<>();
        List<CurvePoint> curves = new ArrayList<>();
        Map<String, LifetimeSample> drawn = new TreeMap<>(samples);
        drawn.put(CohortLadder.POOL, LifetimeSample.pooled(samples.values()));
        ladder.forEach((cohort, result) -> {
            fits.add(result.fit());
            LifetimeSample sample = drawn.get(cohort);
            curves.addAll(Curves.kaplanMeier(cohort, sample));
            result.life().ifPresent(life -> {
                laws.put(cohort, new LifeLaws.Law(cohort, result.fit().rung(), life));
                curves.addAll(Curves.weibull(cohort, life, sample));
            });
        });
        return new Estimates(
                settings,
                WakeModel.fit(counts.wake(), settings.condition()),
                laws,
                List.copyOf(fits),
                List.copyOf(curves),
                PeerRates.fit(counts.peers(), settings.recurrence()));
    }

    /** The cohort's own law, or the pool's for a cohort met only among sensors of unknown origin. */
    @Override
    public Optional<LifeLaws.Law> of(String vehicleClass, String part) {
        LifeLaws.Law own = laws.get(settings.cohortBy().cohort(vehicleClass, part));
        return Optional.ofNullable(own == null ? laws.get(CohortLadder.POOL) : own);
    }

    /** Adds a vehicle's landmarks to the counts of failures by last report. */
    public ReportCells countReports(ReportCells cells, VehicleHistory history) {
        BiFunction<SensorLife, LocalDate, LastReport> report = lastReports(history);
        for (SensorLife life : history.lives()) {
            of(history.vehicle().vehicleClass(), CohortParts.of(history.vehicle(), life))
                    .ifPresent(law -> cells.add(life, report, law.life()));
        }
        return cells;
    }

    /** State of a sensor of this vehicle as of a day, from nothing later. */
    BiFunction<SensorLife, LocalDate, LastReport> lastReports(VehicleHistory history) {
        Set<LocalDate> unheard = UnheardVisits.days(history);
        return (life, day) -> LastReports.of(life, unheard, wake, settings.condition(), day);
    }
}
