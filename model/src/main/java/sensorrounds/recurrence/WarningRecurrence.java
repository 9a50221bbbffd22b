package sensorrounds.recurrence;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.history.VehicleHistory;
import sensorrounds.recurrence.WarningCurvePoint.Clock;
import sensorrounds.recurrence.WarningTrend.Direction;
import sensorrounds.recurrent.MeanCumulative;
import sensorrounds.recurrent.MeanCumulativeFit;
import sensorrounds.recurrent.RecurrenceCells;
import sensorrounds.recurrent.TrendTest;

/**
 * Mean cumulative number of system warnings of a vehicle, by class, since its first visit and over its time in service. A
 * mergeable state of whole numbers. Times of the curves are in whole weeks, finer than visits tell; the test of trend uses
 * days. Not thread safe.
 */
public final class WarningRecurrence implements Serializable {
    private static final long serialVersionUID = 1;

    /** Width of a step of the curves, days. */
    public static final int STEP_DAYS = 7;

    /** Warned vehicles the test of trend needs: it takes its variance from how they differ. */
    static final int LEAST_WARNED = 20;

    static final double SIGNIFICANT = 0.05;

    /** @param vehicleClass empty for vehicles without a class */
    private record Group(Clock clock, String vehicleClass) implements Serializable {}

    private final Map<Group, RecurrenceCells> cells = new HashMap<>();
    private final Map<String, Long> warned = new TreeMap<>();

    /** Counts one vehicle as it stood on {@code asOf}. */
    public WarningRecurrence add(VehicleHistory history, LocalDate asOf) {
        Optional<WarningDays> watched = WarningDays.of(history, asOf);
        if (watched.isEmpty()) {
            return this;
        }
        String vehicleClass = Objects.requireNonNullElse(history.vehicle().vehicleClass(), "");
        WarningDays days = watched.get();
        count(new Group(Clock.SINCE_FIRST_VISIT, vehicleClass), days, days.from());
        LocalDate firstUsed = history.vehicle().firstUsed();
        if (firstUsed != null && !firstUsed.isAfter(days.from())) {
            count(new Group(Clock.IN_SERVICE, vehicleClass), days, firstUsed);
        }
        if (!days.days().isEmpty()) {
            warned.merge(vehicleClass, 1L, Long::sum);
        }
        return this;
    }

    private void count(Group group, WarningDays days, LocalDate origin) {
        cells.computeIfAbsent(group, g -> new RecurrenceCells(STEP_DAYS))
                .add(
                        between(origin, days.from()),
                        between(origin, days.to()),
                        days.days().stream().mapToInt(d -> between(origin, d)).toArray());
    }

    private static int between(LocalDate from, LocalDate to) {
        return (int) ChronoUnit.DAYS.between(from, to);
    }

    /** Takes in the counts of another part of the fleet. */
    public WarningRecurrence merge(WarningRecurrence o) {
        o.cells.forEach((group, others) -> cells.computeIfAbsent(group, g -> new RecurrenceCells(STEP_DAYS))
                .merge(others));
        o.warned.forEach((c, n) -> warned.merge(c, n, Long::sum));
        return this;
    }

    /** Curves by clock and class, classes in order, all vehicles last; each from the first time watched to the last. */
    public List<WarningCurvePoint> curve() {
        List<WarningCurvePoint> points = new ArrayList<>();
        for (Clock clock : Clock.values()) {
            cohorts(clock).forEach((cohort, counted) -> {
                MeanCumulativeFit fit = MeanCumulative.withDefaults()
                        .with(MeanCumulative.Reference.FEW_UNITS)
                        .fit(counted);
                // Nobody counts as watched at the very start; what a reader asks for is the number that began there.
                long began = fit.atRisk(Math.nextUp(fit.from()));
                points.add(
                        new WarningCurvePoint(clock, cohort, (int) fit.from(), began, 0, 0, 0, Double.NaN, Double.NaN));
                for (MeanCumulativeFit.Step s : fit.steps()) {
                    points.add(point(clock, cohort, (int) s.time(), s.atRisk(), s.events(), s));
                }
                MeanCumulativeFit.Step last = fit.at(fit.to());
                if (last.time() < fit.to()) {
                    points.add(point(clock, cohort, (int) fit.to(), fit.atRisk(fit.to()), 0, last));
                }
            });
        }
        return List.copyOf(points);
    }

    private static WarningCurvePoint point(
            Clock clock, String cohort, int days, long atRisk, long events, MeanCumulativeFit.Step s) {
        return new WarningCurvePoint(
                clock, cohort, days, atRisk, events, s.mean(), s.standardError(), s.lower(), s.upper());
    }

    /** Rates and trends by class, classes in order, all vehicles last. Vehicles without a class count in the last only. */
    public List<WarningTrend> trends() {
        List<WarningTrend> trends = new ArrayList<>();
        cohorts(Clock.SINCE_FIRST_VISIT).forEach((cohort, counted) -> trends.add(trend(cohort, counted)));
        return List.copyOf(trends);
    }

    private WarningTrend trend(String cohort, RecurrenceCells counted) {
        long withWarning = warned.entrySet().stream()
                .filter(e -> cohort.equals(PeerRates.ALL) || cohort.equals(name(e.getKey())))
                .mapToLong(Map.Entry::getValue)
                .sum();
        TrendTest test = counted.robustLaplace();
        boolean enough = withWarning >= LEAST_WARNED && Double.isFinite(test.statistic());
        double years = counted.exposure() / SystemWarnings.DAYS_PER_YEAR;
        return new WarningTrend(
                cohort,
                counted.units(),
                withWarning,
                counted.events(),
                years,
                counted.events() / years,
                enough ? test.statistic() : Double.NaN,
                enough ? test.pValue() : Double.NaN,
                enough ? direction(test) : Direction.TOO_FEW);
    }

    private static Direction direction(TrendTest test) {
        if (test.pValue() >= SIGNIFICANT) {
            return Direction.NO_TREND_SHOWN;
        }
        return test.statistic() > 0 ? Direction.MORE_OFTEN : Direction.LESS_OFTEN;
    }

    /** Counts of each named class in order, then of all vehicles. */
    private Map<String, RecurrenceCells> cohorts(Clock clock) {
        SortedMap<String, RecurrenceCells> named = new TreeMap<>();
        RecurrenceCells all = new RecurrenceCells(STEP_DAYS);
        cells.forEach((group, counted) -> {
            if (group.clock() == clock) {
                all.merge(counted);
                if (!group.vehicleClass().isEmpty()) {
                    named.put(name(group.vehicleClass()), counted);
                }
            }
        });
        Map<String, RecurrenceCells> cohorts = new LinkedHashMap<>(named);
        if (all.units() > 0) {
            cohorts.put(PeerRates.ALL, all);
        }
        return cohorts;
    }

    /** A class of the user's own that is called like all vehicles must not be taken for them. */
    static String name(String vehicleClass) {
        return vehicleClass.equals(PeerRates.ALL) ? vehicleClass + " (class)" : vehicleClass;
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof WarningRecurrence other && cells.equals(other.cells) && warned.equals(other.warned);
    }

    @Override
    public int hashCode() {
        return cells.hashCode();
    }
}
