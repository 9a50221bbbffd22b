package sensorrounds.backtest;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import sensorrounds.accuracy.ClusteredRatio;
import sensorrounds.outlook.LastReport;
import sensorrounds.replacement.Stakes;
import sensorrounds.survival.Estimate;

/**
 * The engine's list against simple rules at the same length. Where a rule cannot tell sensors apart, each of them is on the
 * list in part, so that the figures are those of drawing among them, on average.
 */
final class Lists {
    /** Age at which the rule by age replaces, days. */
    private static final double SEVEN_YEARS = 7 * 365.25;

    private Lists() {}

    /** @param cut null when {@code cuts} are several */
    static ListRow row(LocalDate cut, List<KnownBy> cuts, ListKind list, ListRule rule, Horizon horizon) {
        double sensors = 0;
        ClusteredRatio.Sum listed = new ClusteredRatio.Sum();
        ClusteredRatio.Sum money = new ClusteredRatio.Sum();
        double hits = 0;
        double failures = 0;
        double stops = 0;
        double byChance = 0;
        for (KnownBy one : cuts) {
            double[] shares = shares(one.all(), list, rule, horizon);
            Map<Judged, Double> share = new IdentityHashMap<>();
            double length = 0;
            for (int i = 0; i < shares.length; i++) {
                share.put(one.all().get(i), shares[i]);
                length += shares[i];
                Stakes stakes = one.all().get(i).forecast().stakes();
                stops += rule == ListRule.ENGINE && stakes != null ? shares[i] * stakes.stop() : 0;
            }
            sensors += length;
            double failed = 0;
            double weights = 0;
            for (KnownBy.Entry e : one.entries()) {
                double weight = share.get(e.judged()) * e.weight();
                listed.add(e.forecast().vehicleId(), weight, e.outcome(), 1);
                money.add(e.forecast().vehicleId(), weight, saved(e), 1);
                hits += weight * e.outcome();
                failed += e.weight() * e.outcome();
                weights += e.weight();
            }
            failures += failed;
            byChance += weights == 0 ? 0 : length * failed / weights;
        }
        Estimate precision = listed.ratio().share();
        return new ListRow(
                cut,
                list,
                rule,
                horizon,
                sensors,
                sensors == 0 ? 0 : precision.value() * sensors,
                precision,
                hits / failures,
                money.ratio().plain(),
                stops,
                precision.value() * sensors / byChance);
    }

    private static double saved(KnownBy.Entry e) {
        Stakes stakes = e.forecast().stakes();
        return stakes == null ? 0 : stakes.saved(e.failed(), e.days());
    }

    /** Share of each sensor that is on the list. */
    static double[] shares(List<Judged> all, ListKind list, ListRule rule, Horizon horizon) {
        double[] engine =
                all.stream().mapToDouble(j -> list.holds(j.forecast()) ? 1 : 0).toArray();
        ToDoubleFunction<Forecast> key = switch (rule) {
            case ENGINE, AT_RANDOM -> f -> 0;
            case HIGHEST_CHANCE -> f -> f.chances().within(horizon);
            case OLDEST_FIRST -> f -> f.supposedAgeDays() == null ? -1 : f.supposedAgeDays();
            case AT_SEVEN_YEARS ->
                f -> f.supposedAgeDays() != null && f.supposedAgeDays() >= SEVEN_YEARS ? 0 : Double.NaN;
            case LAST_REPORT_WEAK -> f -> f.lastReport() == LastReport.SOUND ? Double.NaN : 0;
        };
        return rule == ListRule.ENGINE
                ? engine
                : highest(
                        all.stream()
                                .mapToDouble(j -> key.applyAsDouble(j.forecast()))
                                .toArray(),
                        list.length(all));
    }

    /** The highest keys up to a length, equal ones at its end in equal parts; NaN is never taken. */
    private static double[] highest(double[] keys, double length) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < keys.length; i++) {
            if (!Double.isNaN(keys[i])) {
                order.add(i);
            }
        }
        order.sort((a, b) -> Double.compare(keys[b], keys[a]));
        double[] shares = new double[keys.length];
        double left = length;
        for (int from = 0; from < order.size() && left > 0; ) {
            int to = from;
            while (to < order.size() && keys[order.get(to)] == keys[order.get(from)]) {
                to++;
            }
            double each = Math.min(1, left / (to - from));
            for (int i = from; i < to; i++) {
                shares[order.get(i)] = each;
            }
            left -= each * (to - from);
            from = to;
        }
        return shares;
    }
}
