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
import sensorrounds.analyst.VehicleFits;
import sensorrounds.analyst.WholeFleet;
import sensorrounds.condition.LastReports;
import sensorrounds.condition.SetCells;
import sensorrounds.condition.UnheardVisits;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.FittedParts;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.LifeLaws;
import sensorrounds.outlook.ReportCells;
import sensorrounds.recurrence.PeerRates;
import sensorrounds.season.Climates;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CohortLadder;
import sensorrounds.survival.CohortLife;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.CurvePoint.Method;
import sensorrounds.survival.Curves;
import sensorrounds.survival.FitLine;
import sensorrounds.survival.LifeLaw;
import sensorrounds.survival.LifetimeSample;

/**
 * What is fitted once for the whole fleet, from its counts.
 *
 * @param laws law of life in use, by cohort; cohorts without one are missing
 * @param fits one line per cohort for the tables
 * @param reports what every fit says of itself
 * @param curves curves of every cohort
 * @param incidence shares ended by each cause, of every cohort
 * @param comparisons whether the cohorts differ, for each way of dividing the sensors
 * @param climates which months are cold at each depot
 * @param fittedParts what crews fit in place of first sensors
 * @param vehicles who lives longer, and how alike the sensors of one vehicle are
 */
public record Estimates(
        ReviewSettings settings,
        WakeModel wake,
        Map<String, LifeLaws.Law> laws,
        List<CohortFit> fits,
        List<FitLine> reports,
        List<CurvePoint> curves,
        List<CauseIncidence> incidence,
        List<CohortComparison> comparisons,
        PeerRates peers,
        Climates climates,
        FittedParts fittedParts,
        VehicleFits vehicles)
        implements Serializable, LifeLaws {

    /**
     * Fits everything that the counts allow.
     *
     * @param fleet asked for its lives only where the counts hold a draw of them
     */
    public static Estimates of(FleetCounts counts, ReviewSettings settings, WholeFleet fleet) {
        SortedMap<String, LifeCells> cohorts = counts.cohorts();
        SortedMap<String, LifetimeSample> samples = new TreeMap<>();
        Map<String, Double> preventiveShares = new HashMap<>();
        cohorts.forEach((cohort, cells) -> samples.put(cohort, cells.sample()));
        // The ladder sees the pool through the cohorts; only what stands beside the laws needs it as one of them.
        cohorts.put(CohortLadder.POOL, LifeCells.pooled(cohorts.values()));
        cohorts.forEach((cohort, cells) -> preventiveShares.put(cohort, cells.preventiveShare()));
        SortedMap<String, CohortLife> ladder = CohortLadder.withDefaults()
                .with(settings.ladder())
                .with(settings.weakPrior())
                .with(settings.twoHazardPrior())
                .fit(samples, preventiveShares);
        Map<String, LifeLaws.Law> laws = new HashMap<>();
        List<CohortFit> fits = new ArrayList<>();
        List<FitLine> reports = new ArrayList<>();
        List<CurvePoint> curves = new ArrayList<>();
        List<CauseIncidence> incidence = new ArrayList<>();
        ladder.forEach((cohort, result) -> {
            CohortDiagnostics beside =
                    CohortDiagnostics.of(cohort, cohorts.get(cohort), settings.preventiveWarningShare());
            reports.addAll(result.searches());
            reports.add(new FitLine("curve without a shape", cohort, beside.report()));
            fits.add(result.fit().with(beside.npmle()).noted(beside.caution()));
            curves.addAll(beside.curves());
            incidence.addAll(beside.incidence());
            result.life().ifPresent(life -> {
                laws.put(cohort, new LifeLaws.Law(cohort, result.fit().rung(), life));
                curves.addAll(Curves.law(
                        cohort, Method.FITTED_LAW, life, cohorts.get(cohort).sample()));
            });
            result.weibull()
                    .filter(w -> result.fit().law().form() != CohortFit.Form.WEIBULL)
                    .ifPresent(w -> curves.addAll(Curves.law(
                            cohort, Method.WEIBULL, w, cohorts.get(cohort).sample())));
        });
        Climates climates = Climates.of(counts.temperatures(), settings.season());
        VehicleFits vehicles = VehicleFits.of(counts.sample(), climates).over(fleet);
        vehicles.reports().forEach((fit, report) -> reports.add(new FitLine(fit, CohortLadder.POOL, report)));
        return new Estimates(
                settings,
                WakeModel.fit(counts.wake(), settings.condition()),
                laws,
                List.copyOf(fits),
                List.copyOf(reports),
                List.copyOf(curves),
                List.copyOf(incidence),
                CohortComparer.compare(counts),
                PeerRates.fit(counts.peers(), settings.recurrence()),
                climates,
                counts.fittedParts(),
                vehicles);
    }

    /** The cohort's own law, or the pool's for a cohort met only among sensors of unknown origin. */
    @Override
    public Optional<LifeLaws.Law> of(String vehicleClass, String part) {
        LifeLaws.Law own = laws.get(settings.cohortBy().cohort(vehicleClass, part));
        return Optional.ofNullable(own == null ? laws.get(CohortLadder.POOL) : own);
    }

    @Override
    public double firstSensorFactor(String originalPart, String part) {
        return fittedParts.firstSensorFactor(originalPart, part);
    }

    /** Adds a vehicle's landmarks to the counts of failures by last report. */
    void countReports(ReportCells cells, VehicleHistory history, BiFunction<SensorLife, LocalDate, LastReport> report) {
        for (SensorLife life : history.lives()) {
            of(history.vehicle().vehicleClass(), CohortParts.of(history.vehicle(), life))
                    .ifPresent(law -> cells.add(life, report, law.life()));
        }
    }

    /** Law of life in use for a sensor of this vehicle; null when there is none. */
    LifeLaw lawOf(VehicleHistory history, SensorLife life) {
        return of(history.vehicle().vehicleClass(), CohortParts.of(history.vehicle(), life))
                .map(LifeLaws.Law::life)
                .orElse(null);
    }

    /** Adds a vehicle to the counts of how alike set-mates are. */
    public SetCells countSets(SetCells cells, VehicleHistory history) {
        return cells.add(history, this, life -> CohortParts.of(history.vehicle(), life));
    }

    /** State of a sensor of this vehicle as of a day, from nothing later. */
    BiFunction<SensorLife, LocalDate, LastReport> lastReports(VehicleHistory history) {
        Set<LocalDate> unheard = UnheardVisits.days(history);
        return (life, day) -> LastReports.of(life, unheard, wake, settings.condition(), day);
    }
}
