package sensorrounds.review;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.analyst.SampledVehicle;
import sensorrounds.analyst.VehicleSample;
import sensorrounds.condition.WakeCells;
import sensorrounds.condition.WarningSignCells;
import sensorrounds.history.FailureCause;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.outlook.FittedParts;
import sensorrounds.recurrence.PeerCells;
import sensorrounds.season.MonthTemperatures;

/**
 * What all vehicles together say before anything is fitted: a mergeable state of whole numbers, so that any split of
 * the fleet merged in any order is the same. Not thread safe.
 */
public final class FleetCounts implements Serializable {
    private static final long serialVersionUID = 1;
    /**
     * Above so many lives the regression on covariates is summed over partitions, and what is fitted beside it sees the lives of
     * vehicles drawn, so many at most.
     */
    private static final int SAMPLED_LIVES = 100_000;

    private final ReviewSettings settings;
    private final LocalDate asOf;
    private final WakeCells wake;
    private final PeerCells peers = new PeerCells();
    private final WarningCounts warnings = new WarningCounts();
    private final WarningSignCells warningSigns = new WarningSignCells();
    private final MonthTemperatures temperatures = new MonthTemperatures();
    private final FittedParts fittedParts = new FittedParts();
    private final VehicleSample sample = new VehicleSample(SAMPLED_LIVES);
    private final Map<Sort, LifeCells> lives = new HashMap<>();
    private final EnumMap<FailureCause, Long> causes = new EnumMap<>(FailureCause.class);
    private final EnumMap<Finding.Kind, Long> findings = new EnumMap<>(Finding.Kind.class);
    private long vehicles;
    private long sensorsInService;
    private LocalDate firstVisit;
    private LocalDate lastVisit;

    /** @param vehicleClass null when not known, as the part */
    private record Sort(String vehicleClass, String part) implements Serializable {}

    public FleetCounts(ReviewSettings settings, LocalDate asOf) {
        this.settings = settings;
        this.asOf = asOf;
        this.wake = new WakeCells(settings.condition().coldCelsius());
    }

    /** Counts one vehicle. */
    public FleetCounts add(VehicleHistory history) {
        wake.add(history);
        peers.add(history, asOf);
        warnings.add(history, asOf);
        warningSigns.add(history);
        fittedParts.add(history);
        vehicles++;
        for (SensorLife life : history.lives()) {
            addLife(history, life);
        }
        temperatures.add(history);
        sample.add(sampled(history));
        for (Finding f : history.findings()) {
            findings.merge(f.kind(), 1L, Long::sum);
        }
        for (VisitSummary v : history.visits()) {
            firstVisit = firstVisit == null || v.day().isBefore(firstVisit) ? v.day() : firstVisit;
            lastVisit = lastVisit == null || v.day().isAfter(lastVisit) ? v.day() : lastVisit;
        }
        return this;
    }

    private void addLife(VehicleHistory history, SensorLife life) {
        if (life.inService()) {
            sensorsInService++;
        }
        if (life.end() == LifeEnd.FAILED) {
            causes.merge(life.cause(), 1L, Long::sum);
        }
        if (life.lifetime() != null) {
            lives.computeIfAbsent(
                            new Sort(history.vehicle().vehicleClass(), CohortParts.of(history.vehicle(), life)),
                            k -> new LifeCells())
                    .add(life.lifetime(), EndCause.of(life), 1);
        }
    }

    /** A vehicle as regressions take it. */
    public static SampledVehicle sampled(VehicleHistory history) {
        return SampledVehicle.of(history, life -> CohortParts.of(history.vehicle(), life));
    }

    /** Takes in the counts of another part of the fleet. */
    public FleetCounts merge(FleetCounts o) {
        wake.merge(o.wake);
        peers.merge(o.peers);
        warnings.merge(o.warnings);
        warningSigns.merge(o.warningSigns);
        temperatures.merge(o.temperatures);
        fittedParts.merge(o.fittedParts);
        sample.merge(o.sample);
        o.lives.forEach((sort, cells) ->
                lives.computeIfAbsent(sort, k -> new LifeCells()).merge(cells));
        o.causes.forEach((c, n) -> causes.merge(c, n, Long::sum));
        o.findings.forEach((k, n) -> findings.merge(k, n, Long::sum));
        vehicles += o.vehicles;
        sensorsInService += o.sensorsInService;
        if (o.firstVisit != null && (firstVisit == null || o.firstVisit.isBefore(firstVisit))) {
            firstVisit = o.firstVisit;
        }
        if (o.lastVisit != null && (lastVisit == null || o.lastVisit.isAfter(lastVisit))) {
            lastVisit = o.lastVisit;
        }
        return this;
    }

    /** Lives of each cohort, divided as the settings ask. */
    public SortedMap<String, LifeCells> cohorts() {
        return cohorts(settings.cohortBy());
    }

    /** Lives of each cohort, divided by this column. */
    public SortedMap<String, LifeCells> cohorts(CohortBy by) {
        SortedMap<String, LifeCells> cohorts = new TreeMap<>();
        lives.forEach(
                (sort, cells) -> cohorts.computeIfAbsent(by.cohort(sort.vehicleClass, sort.part), k -> new LifeCells())
                        .merge(cells));
        return cohorts;
    }

    public WakeCells wake() {
        return wake;
    }

    public PeerCells peers() {
        return peers;
    }

    public WarningCounts warnings() {
        return warnings;
    }

    /** What visits tell of the system's own warning. */
    public WarningSignCells warningSigns() {
        return warningSigns;
    }

    /** Air temperatures written down at visits. */
    public MonthTemperatures temperatures() {
        return temperatures;
    }

    /** What crews fitted in place of first sensors. */
    public FittedParts fittedParts() {
        return fittedParts;
    }

    /** A draw of whole vehicles with the lives of their sensors. */
    public VehicleSample sample() {
        return sample;
    }

    public Map<FailureCause, Long> causes() {
        return new EnumMap<>(causes);
    }

    public Map<Finding.Kind, Long> findings() {
        return new EnumMap<>(findings);
    }

    public long vehicles() {
        return vehicles;
    }

    public long sensorsInService() {
        return sensorsInService;
    }

    /** @return null without any visit, as {@link #lastVisit} */
    public LocalDate firstVisit() {
        return firstVisit;
    }

    public LocalDate lastVisit() {
        return lastVisit;
    }
}
