package sensorrounds.backtest;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.stock.StockOutlook;

/**
 * What the engine would have said on days gone by, held against what happened.
 *
 * @param settings on which days it was asked
 * @param firstVisit first day of the logs
 * @param lastVisit last day of them: what happened is known up to it
 * @param cuts days asked on, first to last
 * @param sampled share of the vehicles judged, 1 for all
 * @param withoutChance forecasts left out since no law of life could be fitted on that day
 * @param judged every forecast with its fate, by cut, vehicle and life
 * @param calibration chances against shares that failed, all cuts together
 * @param scores of each cut and horizon, then of all cuts together
 * @param lists the engine's lists against simple rules, of each cut, then of all together
 * @param stock demand against fittings, by cut, part, depot and month
 */
public record Backtest(
        BacktestSettings settings,
        LocalDate firstVisit,
        LocalDate lastVisit,
        List<LocalDate> cuts,
        double sampled,
        long withoutChance,
        List<Judged> judged,
        List<CalibrationRow> calibration,
        List<ScoreRow> scores,
        List<ListRow> lists,
        List<StockRow> stock) {
    /** Failures under which the comparison says next to nothing: a fifth is then within one standard error. */
    public static final double FEWEST_FAILURES = 25;

    private static final Comparator<Judged> ORDER = Comparator.comparing(
                    (Judged j) -> j.forecast().cut())
            .thenComparing(j -> j.forecast().vehicleId())
            .thenComparing(j -> j.forecast().lifeId());

    public Backtest {
        cuts = List.copyOf(cuts);
        judged = List.copyOf(judged);
        calibration = List.copyOf(calibration);
        scores = List.copyOf(scores);
        lists = List.copyOf(lists);
        stock = List.copyOf(stock);
    }

    /**
     * What the logs tell today.
     *
     * @param fates of the sensors
     * @param fitted sensors fitted
     */
    public record Outcome(LocalDate firstVisit, LocalDate lastVisit, Fates fates, FittedPieces fitted) {}

    /**
     * Holds forecasts against what happened.
     *
     * @param forecasts of all cuts, in any order
     * @param stock outlook of each cut, whether or not anything was forecast on it
     * @param sampled share of the vehicles they are of
     */
    public static Backtest of(
            BacktestSettings settings,
            List<Forecast> forecasts,
            Map<LocalDate, List<StockOutlook>> stock,
            double sampled,
            Outcome outcome) {
        List<Judged> judged = new ArrayList<>();
        long without = 0;
        TreeMap<LocalDate, List<Judged>> byCut = new TreeMap<>();
        for (Forecast f : forecasts) {
            if (f.chances().known() && f.byAge() != null && f.byAge().known()) {
                judged.add(new Judged(f, outcome.fates().of(f.lifeId(), f.cut())));
            } else {
                without++;
            }
        }
        judged.sort(ORDER);
        judged.forEach(j -> byCut.computeIfAbsent(j.forecast().cut(), c -> new ArrayList<>())
                .add(j));
        List<CalibrationRow> calibration = new ArrayList<>();
        List<ScoreRow> scores = new ArrayList<>();
        List<ListRow> lists = new ArrayList<>();
        for (Horizon horizon : settings.horizons()) {
            TreeMap<LocalDate, KnownBy> known = new TreeMap<>();
            byCut.forEach((cut, of) -> known.put(cut, KnownBy.of(of, horizon)));
            List<KnownBy> all = List.copyOf(known.values());
            calibration.addAll(Calibration.rows(all, horizon));
            known.forEach((cut, one) -> scores.add(Scores.row(cut, List.of(one), horizon)));
            scores.add(Scores.row(null, all, horizon));
            known.forEach((cut, one) -> lists.addAll(lists(cut, List.of(one), horizon)));
            lists.addAll(lists(null, all, horizon));
        }
        List<StockRow> rows = new ArrayList<>();
        new TreeMap<>(stock)
                .forEach((cut, outlook) -> rows.addAll(outcome.fitted().against(cut, outlook, outcome.lastVisit())));
        return new Backtest(
                settings,
                outcome.firstVisit(),
                outcome.lastVisit(),
                new TreeMap<>(stock).keySet().stream().toList(),
                sampled,
                without,
                judged,
                calibration,
                scores,
                lists,
                rows);
    }

    private static List<ListRow> lists(LocalDate cut, List<KnownBy> cuts, Horizon horizon) {
        List<ListRow> rows = new ArrayList<>();
        for (ListKind list : ListKind.values()) {
            for (ListRule rule : list.rules()) {
                rows.add(Lists.row(cut, cuts, list, rule, horizon));
            }
        }
        return rows;
    }

    /** The score of all cuts together. */
    public ScoreRow score(Horizon horizon) {
        return scores.stream()
                .filter(s -> s.cut() == null && s.horizon() == horizon)
                .findFirst()
                .orElseThrow();
    }

    /** A rule's list over all cuts together. */
    public ListRow list(ListKind list, ListRule rule, Horizon horizon) {
        return lists.stream()
                .filter(l -> l.cut() == null && l.list() == list && l.rule() == rule && l.horizon() == horizon)
                .findFirst()
                .orElseThrow();
    }

    /** Whether too few sensors failed within the longest horizon to say much. */
    public boolean tooFew() {
        return !(score(settings.longest()).failures() >= FEWEST_FAILURES);
    }
}
