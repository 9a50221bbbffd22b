package sensorrounds.recurrence;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.condition.UnheardVisits;
import sensorrounds.history.Repair;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.numeric.WilsonInterval;
import sensorrounds.visit.FaultCode;

/**
 * How many visits with a system warning on arrival end with no fault found, by class. A mergeable state of whole numbers. Not
 * thread safe.
 */
public final class WarningVisits implements Serializable {
    private static final long serialVersionUID = 1;

    private enum Found {
        NOT_LOOKED,
        SENSOR_SILENT,
        CODE_NAMES_WHEEL,
        WORK_ON_WHEEL,
        NOTHING
    }

    private static final double LEVEL = 0.95;

    /** Visits by what was found, by class; empty for vehicles without one. */
    private final SortedMap<String, EnumMap<Found, Long>> visits = new TreeMap<>();

    /** Counts the visits of one vehicle up to and including {@code asOf}. */
    public WarningVisits add(VehicleHistory history, LocalDate asOf) {
        Set<LocalDate> unheard = UnheardVisits.days(history);
        String vehicleClass = Objects.requireNonNullElse(history.vehicle().vehicleClass(), "");
        for (VisitSummary v : history.visits()) {
            if (SystemWarnings.counts(v.warning()) && !v.day().isAfter(asOf)) {
                of(vehicleClass).merge(found(v, unheard), 1L, Long::sum);
            }
        }
        return this;
    }

    private EnumMap<Found, Long> of(String vehicleClass) {
        return visits.computeIfAbsent(vehicleClass, c -> new EnumMap<>(Found.class));
    }

    private static Found found(VisitSummary v, Set<LocalDate> unheard) {
        boolean looked = v.everySensorAnswered() || !v.silent().isEmpty();
        if (!looked || unheard.contains(v.day())) {
            return Found.NOT_LOOKED;
        }
        if (!v.silent().isEmpty()) {
            return Found.SENSOR_SILENT;
        }
        if (v.codes().stream().anyMatch(c -> c.position() != null && c.state() != FaultCode.State.CLEARED)) {
            return Found.CODE_NAMES_WHEEL;
        }
        boolean work = v.repair() == Repair.SET_REPLACED
                || v.repair() == Repair.SENSOR_REPLACED
                || v.repair() == Repair.OTHER_WHEEL_WORK;
        return work ? Found.WORK_ON_WHEEL : Found.NOTHING;
    }

    /** Takes in the counts of another part of the fleet. */
    public WarningVisits merge(WarningVisits o) {
        o.visits.forEach((c, counts) -> counts.forEach((f, n) -> of(c).merge(f, n, Long::sum)));
        return this;
    }

    /** By class with warning visits, in order; all vehicles last. Empty without such visits. */
    public List<NoFaultShare> shares() {
        List<NoFaultShare> shares = new ArrayList<>();
        EnumMap<Found, Long> all = new EnumMap<>(Found.class);
        visits.forEach((vehicleClass, counts) -> {
            counts.forEach((f, n) -> all.merge(f, n, Long::sum));
            if (!vehicleClass.isEmpty()) {
                shares.add(share(WarningRecurrence.name(vehicleClass), counts));
            }
        });
        if (!all.isEmpty()) {
            shares.add(share(PeerRates.ALL, all));
        }
        return List.copyOf(shares);
    }

    private static NoFaultShare share(String cohort, Map<Found, Long> counts) {
        long[] n = Arrays.stream(Found.values())
                .mapToLong(f -> counts.getOrDefault(f, 0L))
                .toArray();
        long total = Arrays.stream(n).sum();
        long nothing = n[Found.NOTHING.ordinal()];
        long notLooked = n[Found.NOT_LOOKED.ordinal()];
        WilsonInterval share = WilsonInterval.of(nothing, total - notLooked, LEVEL);
        return new NoFaultShare(
                cohort,
                total,
                notLooked,
                n[Found.SENSOR_SILENT.ordinal()],
                n[Found.CODE_NAMES_WHEEL.ordinal()],
                n[Found.WORK_ON_WHEEL.ordinal()],
                nothing,
                share.share(),
                share.lower(),
                share.upper());
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof WarningVisits other && visits.equals(other.visits);
    }

    @Override
    public int hashCode() {
        return visits.hashCode();
    }
}
