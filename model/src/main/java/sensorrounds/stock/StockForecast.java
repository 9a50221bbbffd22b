package sensorrounds.stock;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sensorrounds.fleet.Part;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.SurvivalAhead;
import sensorrounds.stock.DemandKey.Stretch;
import sensorrounds.survival.LifeLaw;

/**
 * Demand for sensors by part, depot and month, and what to order. The way: {@link #demandOf} for each sensor, a {@link
 * DemandState} for each key, {@link #outlook} for each part and depot.
 *
 * <p>Before the months stands what may have failed since the last answer and nobody knows yet: it turns up as demand when it
 * is found. The months are calendar months, the first that of the day after the as-of day, from that day on. A sensor that
 * is planned to be replaced is one piece on that day, for certain, and nothing else; should it fail before, it is the same
 * piece. Any other is counted for its first failure only; that a new one fails within the months is left out.
 *
 * <p>Pieces for a service level L: smallest k with P(demand <= k) >= L, the base-stock quantile (Zipkin, 2000,
 * Foundations of Inventory Management). The order proposed brings the pieces on hand up to that quantile of the demand
 * over lead time and review period, in whole packs, pieces of substitutes that their own demand does not take counted in.
 */
public final class StockForecast implements Serializable {
    private static final long serialVersionUID = 1;
    /** Part of sensors whose part nobody wrote down: their demand is shown, not dropped. */
    public static final String UNKNOWN_PART = "unknown";

    private final Map<String, Part> parts;
    private final StockSettings settings;
    private final int horizonDays;
    private final LocalDate asOf;

    /**
     * @param parts parts list by part number
     * @param horizonDays horizon the outlooks were made for
     */
    public StockForecast(Map<String, Part> parts, StockSettings settings, int horizonDays, LocalDate asOf) {
        this.parts = Map.copyOf(parts);
        this.settings = settings;
        this.horizonDays = horizonDays;
        this.asOf = asOf;
    }

    /**
     * Demand of one sensor that nobody plans to replace: a unit for each stretch. None when no law of life was fitted for
     * it.
     *
     * @param law law of the outlook's cohort; null when there is none
     * @param originalPart part the vehicle came with, which stands in when the sensor's own is not known; null when not
     *     known either
     */
    public List<DemandUnit> demandOf(SensorOutlook outlook, LifeLaw law, String originalPart) {
        List<DemandUnit> units = new ArrayList<>();
        if (law == null || Double.isNaN(outlook.chances().pHorizon())) {
            return units;
        }
        SurvivalAhead ahead = new SurvivalAhead(outlook, law, horizonDays);
        double sd = ahead.sdLogHazard();
        String part = partToFit(outlook.sensor().part(), originalPart);
        String depot = outlook.sensor().depot();
        double before = ahead.failureBy(0);
        units.add(chance(DemandKey.of(part, depot, Stretch.COVER), ahead.failureBy(coverDays(part)), sd));
        units.add(chance(DemandKey.of(part, depot, Stretch.ALREADY_FAILED), before, sd));
        for (int m = 0; m < settings.months(); m++) {
            double by = ahead.failureBy(ChronoUnit.DAYS.between(asOf, month(m).atEndOfMonth()));
            units.add(chance(DemandKey.of(part, depot, month(m)), Math.max(0, by - before), sd));
            before = by;
        }
        return units;
    }

    /**
     * Demand of a sensor that is planned to be fitted: one piece in the month of that day and, when an order placed now has
     * to cover it, in that stretch; nothing beyond the months.
     *
     * @param ownPart part of the sensor that it stands in for; null when not known
     * @param on the day; before the first month's for one due already
     */
    public List<DemandUnit> plannedPiece(String ownPart, String originalPart, String depot, LocalDate on) {
        String part = partToFit(ownPart, originalPart);
        YearMonth first = month(0);
        YearMonth month = YearMonth.from(on).isBefore(first) ? first : YearMonth.from(on);
        List<DemandUnit> units = new ArrayList<>();
        if (ChronoUnit.DAYS.between(asOf, on) <= coverDays(part)) {
            units.add(planned(DemandKey.of(part, depot, Stretch.COVER)));
        }
        if (month.isBefore(first.plusMonths(settings.months()))) {
            units.add(planned(DemandKey.of(part, depot, month)));
        }
        return units;
    }

    private static DemandUnit chance(DemandKey key, double probability, double sd) {
        return new DemandUnit(key, probability, sd, DemandUnit.Kind.FAILURE);
    }

    private static DemandUnit planned(DemandKey key) {
        return new DemandUnit(key, 1, 0, DemandUnit.Kind.PLANNED);
    }

    private YearMonth month(int m) {
        return YearMonth.from(asOf.plusDays(1)).plusMonths(m);
    }

    /**
     * The outlook of one part at one depot: what has failed already, then month by month.
     *
     * @param demand state of each of its keys; a missing one is no demand
     * @param onHand pieces at the depot; null when not known, and then no order is proposed
     * @param need pieces that lead time and review take, {@link #coverPieces}
     * @param standIns pieces of substitutes at the depot that are counted as this part's
     */
    public List<StockOutlook> outlook(
            String partId, String depot, Map<DemandKey, DemandState> demand, Integer onHand, int need, int standIns) {
        List<StockOutlook> rows = new ArrayList<>();
        Integer order = onHand == null ? null : (Integer) inPacks(need - onHand - standIns, partId);
        DemandState already = state(demand, DemandKey.of(partId, depot, Stretch.ALREADY_FAILED));
        rows.add(row(partId, depot, null, null, asOf, already, onHand, standIns, order));
        for (int m = 0; m < settings.months(); m++) {
            LocalDate from = m == 0 ? asOf.plusDays(1) : month(m).atDay(1);
            DemandState state = state(demand, DemandKey.of(partId, depot, month(m)));
            rows.add(row(partId, depot, month(m), from, month(m).atEndOfMonth(), state, null, 0, null));
        }
        return rows;
    }

    private StockOutlook row(
            String partId,
            String depot,
            YearMonth month,
            LocalDate from,
            LocalDate to,
            DemandState state,
            Integer onHand,
            int standIns,
            Integer order) {
        CountDistribution pieces = state.finish();
        return new StockOutlook(
                partId,
                depot,
                month,
                from,
                to,
                state.planned(),
                pieces.mean(),
                pieces.quantile(0.05),
                pieces.quantile(0.95),
                onHand,
                standIns,
                pieces.quantile(settings.serviceLevel()),
                order,
                state.sensors());
    }

    private static DemandState state(Map<DemandKey, DemandState> demand, DemandKey key) {
        return demand.getOrDefault(key, new DemandState());
    }

    /** Pieces that meet the demand over lead time and review with the service level. */
    public int coverPieces(String partId, String depot, Map<DemandKey, DemandState> demand) {
        return state(demand, DemandKey.of(partId, depot, Stretch.COVER))
                .finish()
                .quantile(settings.serviceLevel());
    }

    /** In whole packs, never negative. */
    int inPacks(int pieces, String partId) {
        int pack = parts.containsKey(partId) ? parts.get(partId).packSize() : settings.packSize();
        return pieces <= 0 ? 0 : (pieces + pack - 1) / pack * pack;
    }

    private int coverDays(String partId) {
        Part part = parts.get(partId);
        return (part == null ? settings.leadTimeDays() : part.leadTimeDays()) + settings.reviewDays();
    }

    private static String partToFit(String own, String original) {
        return own != null ? own : original != null ? original : UNKNOWN_PART;
    }
}
