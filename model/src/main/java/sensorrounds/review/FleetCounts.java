package sensorrounds.review;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.condition.WakeCells;
import sensorrounds.history.FailureCause;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.recurrence.PeerCells;
import sensorrounds.survival.CohortLadder;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;

/**
 * What all vehicles together say before anything is fitted: a mergeable state of whole numbers, so that any split of
 * the fleet merged in any order is the same. Not thread safe.
 */
public final class FleetCounts implements Serializable {
    private static final long serialVersionUID = 1;

    private final ReviewSettings settings;
    private final LocalDate asOf;
    private final WakeCells wake;
    private final PeerCells peers = new PeerCells();
    private final WarningCounts warnings = new WarningCounts();
    private final Map<String, Map<Lifetime, Long>> lives = new HashMap<>();
    private final Map<String, long[]> ends = new HashMap<>();
    private final EnumMap<FailureCause, Long> causes = new EnumMap<>(FailureCause.class);
    private final EnumMap<Finding.Kind, Long> findings = new EnumMap<>(Finding.Kind.class);
    private long vehicles;
    private long sensorsInService;
    private LocalDate firstVisit;
    private LocalDate lastVisit;

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
        vehicles++;
        for (SensorLife life : history.lives()) {
            addLife(history, life);
        }
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
        String cohort =
                settings.cohortBy().cohort(history.vehicle().vehicleClass(), CohortParts.of(history.vehicle(), life));
        if (life.end() != LifeEnd.IN_SERVICE) {
            long[] e = ends.computeIfAbsent(cohort, k -> new long[2]);
            e[0] += life.end() == LifeEnd.PREVENTIVE ? 1 : 0;
            e[1]++;
        }
        if (life.lifetime() != null) {
            lives.computeIfAbsent(cohort, k -> new HashMap<>()).merge(life.lifetime(), 1L, Long::sum);
        }
    }

    /** Takes in the counts of another part of the fleet. */
    public FleetCounts merge(FleetCounts o) {
        wake.merge(o.wake);
        peers.merge(o.peers);
        warnings.merge(o.warnings);
        o.lives.forEach((cohort, cells) -> {
            Map<Lifetime, Long> mine = lives.computeIfAbsent(cohort, k -> new HashMap<>());
            cells.forEach((life, n) -> mine.merge(life, n, Long::sum));
        });
        o.ends.forEach((cohort, e) -> {
            long[] mine = ends.computeIfAbsent(cohort, k -> new long[2]);
            mine[0] += e[0];
            mine[1] += e[1];
        });
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

    /** Sample of each cohort, identical lives as weights. */
    public SortedMap<String, LifetimeSample> samples() {
        SortedMap<String, LifetimeSample> samples = new TreeMap<>();
        lives.forEach((cohort, cells) -> {
            List<Lifetime> weighted = new ArrayList<>(cells.size());
            cells.forEach((l, n) -> weighted.add(new Lifetime(l.entry(), l.lower(), l.upper(), n * l.weight())));
            samples.put(cohort, LifetimeSample.of(weighted));
        });
        return samples;
    }

    /** Preventive replacements among all ends, by cohort and for the pool; missing where nothing ended. */
    public Map<String, Double> preventiveShares() {
        Map<String, Double> shares = new TreeMap<>();
        long preventive = 0;
        long all = 0;
        for (Map.Entry<String, long[]> e : ends.entrySet()) {
            shares.put(e.getKey(), (double) e.getValue()[0] / e.getValue()[1]);
            preventive += e.getValue()[0];
            all += e.getValue()[1];
        }
        if (all > 0) {
            shares.put(CohortLadder.POOL, (double) preventive / all);
        }
        return shares;
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
