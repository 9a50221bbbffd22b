package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sensorrounds.history.FollowUp;
import sensorrounds.outlook.UnmonitoredWheel.Certainty;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.recurrence.RecurringVehicle.Pattern;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.review.FleetTotals;
import sensorrounds.survival.CohortFit;

/** The figures that the summary of the page and the summary of the terminal both rest on. */
record Headline(
        long unmonitoredWheels,
        long unmonitoredVehicles,
        long silentWheels,
        long systemWarnings,
        long now,
        long atNextStop,
        long placeFirst,
        long vehiclesNow,
        double outlayNow,
        double savingNow,
        List<VehicleSaving> firstVehicles,
        long readFirst,
        long recurringCount,
        List<RecurringVehicle> recurring,
        long owedCount,
        List<FollowUp> owed,
        long outcomesMissing,
        long returned,
        List<StockOrders.Order> orders,
        double orderCost,
        List<CohortFit> weakFits) {

    /** A vehicle with what replacing now saves on it. */
    record VehicleSaving(String vehicleId, int sensors, double saving) {}

    /** Vehicles named in a summary. */
    static final int NAMED = 3;

    static Headline of(ReportData data) {
        List<RankedReplacement> now = with(data, Advice.REPLACE_NOW);
        List<StockOrders.Order> orders = StockOrders.of(data.stock(), data.parts());
        FleetTotals totals = data.totals();
        return new Headline(
                totals.unmonitored(Certainty.KNOWN),
                totals.vehiclesUnmonitored(Certainty.KNOWN),
                totals.unmonitored(Certainty.PROBABLE),
                totals.unmonitored(Certainty.SYSTEM),
                totals.lines(Advice.REPLACE_NOW),
                totals.lines(Advice.AT_NEXT_STOP),
                totals.lines(Advice.CHECK_PLACE_FIRST),
                totals.vehicles(Advice.REPLACE_NOW),
                totals.outlay(Advice.REPLACE_NOW),
                totals.saving(Advice.REPLACE_NOW),
                firstVehicles(now),
                totals.vehicles(Advice.READ_FIRST),
                totals.recurringVehicles(),
                recurring(data),
                totals.followUps(FollowUp.State.OPEN),
                owed(data),
                totals.outcomesMissing(),
                totals.followUps(FollowUp.State.RETURNED),
                orders,
                orders.stream().mapToDouble(StockOrders.Order::knownCost).sum(),
                data.fits().stream().filter(f -> !f.note().isBlank()).toList());
    }

    Optional<RecurringVehicle> worstRecurring() {
        return recurring.stream().filter(v -> !v.maybeCured()).findFirst();
    }

    long piecesToOrder() {
        return orders.stream().mapToLong(StockOrders.Order::pieces).sum();
    }

    /**
     * Recurring vehicles: those nobody has an explanation for first, and of each sort the surest first; last those whose newest
     * replacement has held so far.
     */
    static List<RecurringVehicle> recurring(ReportData data) {
        return data.recurring().rows().stream()
                .filter(v -> v.pattern() != Pattern.NOT_RECURRING)
                .sorted(Comparator.comparing(RecurringVehicle::maybeCured)
                        .thenComparing(RecurringVehicle::pattern)
                        .thenComparing(Comparator.comparingDouble(RecurringVehicle::probabilityAbovePeers)
                                .reversed())
                        .thenComparing(RecurringVehicle::vehicleId))
                .toList();
    }

    /** Repairs still to be proven, oldest first. */
    static List<FollowUp> owed(ReportData data) {
        return data.followUps().rows().stream()
                .filter(f -> f.state() == FollowUp.State.OPEN)
                .sorted(Comparator.comparing(FollowUp::repairedOn)
                        .thenComparing(FollowUp::vehicleId)
                        .thenComparing(FollowUp::visitId))
                .toList();
    }

    private static List<RankedReplacement> with(ReportData data, Advice advice) {
        return data.ranked().rows().stream().filter(r -> r.advice() == advice).toList();
    }

    private static List<VehicleSaving> firstVehicles(List<RankedReplacement> now) {
        Map<String, List<RankedReplacement>> byVehicle = now.stream()
                .collect(Collectors.groupingBy(
                        r -> r.outlook().sensor().vehicleId(), TreeMap::new, Collectors.toList()));
        return byVehicle.entrySet().stream()
                .map(e -> new VehicleSaving(e.getKey(), e.getValue().size(), saving(e.getValue())))
                .sorted(Comparator.comparingDouble(VehicleSaving::saving)
                        .reversed()
                        .thenComparing(VehicleSaving::vehicleId))
                .limit(NAMED)
                .toList();
    }

    private static double saving(List<RankedReplacement> lines) {
        return lines.stream()
                .mapToDouble(RankedReplacement::saving)
                .filter(Double::isFinite)
                .sum();
    }
}
