package sensorrounds.review;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.fleet.Part;
import sensorrounds.replacement.Costs;
import sensorrounds.replacement.ReplacementSettings;
import sensorrounds.rounds.RoundPlan;
import sensorrounds.stock.BudgetMonth;
import sensorrounds.stock.CountDistribution;
import sensorrounds.stock.DemandKey;
import sensorrounds.stock.DemandKey.Stretch;
import sensorrounds.stock.DemandState;
import sensorrounds.stock.StockOutlook;

/**
 * What each depot is expected to spend, month by month, from the same demand as the stock outlook and the same stops as the
 * list, so that the three agree.
 *
 * <p>A planned piece costs its price and the work on its wheel. A failure costs the same and, with the chance that a call-out
 * comes before the next stop, a breakdown: 1 - D/tau (1 - exp(-tau/D)), D the days to a call-out and tau the days between
 * stops of the settings. The interval is that of the number of failures over all parts of the depot, exact and mixed over the
 * error of the fit ({@link DemandState}), at the mean cost of one. Prices differ by far less than numbers do: a spread of
 * prices by a tenth of a failure's cost widens the interval by half a hundredth.
 */
public final class BudgetReview {
    private final Map<String, Part> parts;
    private final Costs costs;
    private final double breakdown;

    /** @param stops how soon a failure is called out for, and how often vehicles stand anyway */
    public BudgetReview(Map<String, Part> parts, Costs costs, ReplacementSettings stops) {
        this.parts = parts;
        this.costs = costs;
        double ratio = stops.callOutDays() / stops.stopGapDays();
        this.breakdown = costs.breakdown() * (1 + ratio * Math.expm1(-1 / ratio));
    }

    /** Demand of one depot in one month. */
    private static final class Month {
        private final DemandState all = new DemandState();
        private int pieces;
        private double planned;
        private double failures;
        private double failureCost;
    }

    /**
     * @param stock the outlook made of the same demand
     * @param rounds of the depots, for what bringing vehicles in costs
     * @param count months, that of the day after the as-of day first
     * @return rows by depot, those without one last, then month; every depot that has demand or stops
     */
    public List<BudgetMonth> months(
            Map<DemandKey, DemandState> demand,
            List<StockOutlook> stock,
            List<RoundPlan> rounds,
            int count,
            LocalDate asOf) {
        YearMonth first = YearMonth.from(asOf.plusDays(1));
        Comparator<String> depots = Comparator.nullsLast(Comparator.naturalOrder());
        Map<String, Map<YearMonth, Month>> byDepot = new TreeMap<>(depots);
        for (StockOutlook row : stock) {
            add(month(byDepot, row.depot(), row.alreadyFailed() ? first : row.month()), row);
        }
        demand.forEach((key, state) -> {
            if (key.stretch() != Stretch.COVER) {
                month(byDepot, key.depot(), key.stretch() == Stretch.MONTH ? key.month() : first)
                        .all
                        .merge(state);
            }
        });
        Map<String, Double> comingIn = new HashMap<>();
        for (RoundPlan plan : rounds) {
            comingIn.merge(plan.depot(), plan.comingIn(), Double::sum);
            byDepot.computeIfAbsent(plan.depot(), d -> new TreeMap<>());
        }
        List<BudgetMonth> rows = new ArrayList<>();
        byDepot.forEach((depot, months) -> {
            for (int m = 0; m < count; m++) {
                YearMonth month = first.plusMonths(m);
                rows.add(row(
                        depot,
                        month,
                        m == 0 ? asOf.plusDays(1) : month.atDay(1),
                        months.getOrDefault(month, new Month()),
                        m == 0 ? comingIn.getOrDefault(depot, 0.0) : 0));
            }
        });
        return rows;
    }

    private static Month month(Map<String, Map<YearMonth, Month>> byDepot, String depot, YearMonth month) {
        return byDepot.computeIfAbsent(depot, d -> new TreeMap<>()).computeIfAbsent(month, m -> new Month());
    }

    private void add(Month month, StockOutlook row) {
        Part part = parts.get(row.partId());
        double piece = costs.piece(part == null ? costs.defaultSensorPrice() : part.price());
        double failures = Math.max(0, row.expected() - row.planned());
        month.pieces += row.planned();
        month.planned += row.planned() * piece;
        month.failures += failures;
        month.failureCost += failures * (piece + breakdown);
    }

    private static BudgetMonth row(String depot, YearMonth month, LocalDate from, Month m, double comingIn) {
        CountDistribution pieces = m.all.finish();
        double each = m.failures > 0 ? m.failureCost / m.failures : 0;
        double certain = m.planned + comingIn;
        return new BudgetMonth(
                depot,
                month,
                from,
                month.atEndOfMonth(),
                m.pieces,
                m.planned,
                comingIn,
                m.failures,
                m.failureCost,
                certain + each * (pieces.quantile(0.05) - m.pieces),
                certain + each * (pieces.quantile(0.95) - m.pieces));
    }
}
