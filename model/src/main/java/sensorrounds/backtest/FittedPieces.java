package sensorrounds.backtest;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.stock.StockForecast;
import sensorrounds.stock.StockOutlook;

/** Sensors fitted on record, by part, depot and day: a mergeable state of whole numbers. Not thread safe. */
public final class FittedPieces implements Serializable {
    private static final long serialVersionUID = 1;

    private final Map<Key, Long> pieces = new HashMap<>();

    /** @param depot null when not known */
    private record Key(String part, String depot, LocalDate day) implements Serializable {}

    /** Counts the sensors fitted to one vehicle. */
    public FittedPieces add(VehicleHistory history) {
        for (SensorLife life : history.lives()) {
            if (life.basis() == OriginBasis.RECORDED_FITTING) {
                String original = history.vehicle().originalPart();
                String part = life.part() != null ? life.part() : original;
                pieces.merge(
                        new Key(
                                part == null ? StockForecast.UNKNOWN_PART : part,
                                history.vehicle().depot(),
                                life.fittedOn()),
                        1L,
                        Long::sum);
            }
        }
        return this;
    }

    /** Takes in the pieces of another part of the fleet. */
    public FittedPieces merge(FittedPieces other) {
        other.pieces.forEach((key, n) -> pieces.merge(key, n, Long::sum));
        return this;
    }

    /**
     * Each month of an outlook that has passed, beside what was fitted in it.
     *
     * @param lastVisit last day anything is known of
     */
    List<StockRow> against(LocalDate cut, List<StockOutlook> outlook, LocalDate lastVisit) {
        List<StockRow> rows = new ArrayList<>();
        for (StockOutlook o : outlook) {
            if (!o.alreadyFailed() && !o.to().isAfter(lastVisit)) {
                long fitted = o.from()
                        .datesUntil(o.to().plusDays(1))
                        .mapToLong(day -> pieces.getOrDefault(new Key(o.partId(), o.depot(), day), 0L))
                        .sum();
                rows.add(new StockRow(
                        cut,
                        o.partId(),
                        o.depot(),
                        o.month(),
                        o.from(),
                        o.to(),
                        o.expected(),
                        o.lower(),
                        o.upper(),
                        fitted));
            }
        }
        return rows;
    }
}
