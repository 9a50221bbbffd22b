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
import sensorrounds.survival.LifeLaw;

/**
 * Demand for sensors by part, depot and month, and what to order. The way: {@link #demandOf} for each sensor, a {@link
 * DemandState} for each key, {@link #outlook} for each part and depot.
 *
 * <p>The months are calendar months from the as-of day's own, which counts from that day on. The first month holds also
 * what may have failed since the last answer and nobody knows yet: it turns up as demand. A sensor is counted for its
 * first failure only; that the new one fails within the months is left out.
 *
 * <p>Pieces for a service level L: smallest k with P(demand <= k) >= L, the base-stock quantile (Zipkin, 2000,
 * Foundations of Inventory Management). The order proposed brings the pieces on hand up to that quantile of the demand
 * over lead time and review period, in whole packs.
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
     * Demand of one sensor: a unit for each month and one for the days an order must cover. None when no law of life was
     * fitted for it.
     *
     * @param law law of the outlook's cohort; null when there is none
     * @param originalPart part the vehicle came with, which stands in when the sensor's own is not known; null when not
     *     known either
     */
    public List<DemandUnit> demandOf(SensorOutlook outlook, LifeLaw law, String originalPart) {
        List<DemandUnit> units = new ArrayList<>();
        if (law == null || Double.isNaN(outlook.pHorizon())) {
            return units;
        }
        SurvivalAhead ahead = new SurvivalAhead(outlook, law, horizonDays);
        double sd = ahead.sdLogHazard();
        String part = partToFit(outlook.part(), originalPart);
        units.add(new DemandUnit(new DemandKey(part, outlook.depot(), null), ahead.failureBy(coverDays(part)), sd));
        double before = 0;
        for (int m = 0; m < settings.months(); m++) {
            YearMonth month = YearMonth.from(asOf).plusMonths(m);
            double by = ahead.failureBy(ChronoUnit.DAYS.between(asOf, month.atEndOfMonth()));
            units.add(new DemandUnit(new DemandKey(part, outlook.depot(), month), Math.max(0, by - before), sd));
            before = by;
        }
        return units;
    }

    /**
     * The outlook of one part at one depot, month by month.
     *
     * @param demand state of each of its keys; a missing one is no demand
     * @param onHand pieces at the depot; null when not known, and then no order is proposed
     */
    public List<StockOutlook> outlook(String partId, String depot, Map<DemandKey, DemandState> demand, Integer onHand) {
        List<StockOutlook> rows = new ArrayList<>();
        for (int m = 0; m < settings.months(); m++) {
            YearMonth month = YearMonth.from(asOf).plusMonths(m);
            DemandState state = demand.getOrDefault(new DemandKey(partId, depot, month), new DemandState());
            CountDistribution pieces = state.finish();
            Integer order = m > 0 || onHand == null
                    ? null
                    : (Integer) proposedOrder(
                            demand.getOrDefault(new DemandKey(partId, depot, null), new DemandState()), partId, onHand);
            rows.add(new StockOutlook(
                    partId,
                    depot,
                    month,
                    pieces.mean(),
                    pieces.quantile(0.05),
                    pieces.quantile(0.95),
                    m == 0 ? onHand : null,
                    pieces.quantile(settings.serviceLevel()),
                    order,
                    state.sensors()));
        }
        return rows;
    }

    /** Pieces to order now, in whole packs: the cover quantile less what is on hand, never negative. */
    int proposedOrder(DemandState cover, String partId, int onHand) {
        int need = cover.finish().quantile(settings.serviceLevel()) - onHand;
        int pack = parts.containsKey(partId) ? parts.get(partId).packSize() : settings.packSize();
        return need <= 0 ? 0 : (need + pack - 1) / pack * pack;
    }

    private int coverDays(String partId) {
        Part part = parts.get(partId);
        return (part == null ? settings.leadTimeDays() : part.leadTimeDays()) + settings.reviewDays();
    }

    private static String partToFit(String own, String original) {
        return own != null ? own : original != null ? original : UNKNOWN_PART;
    }
}
