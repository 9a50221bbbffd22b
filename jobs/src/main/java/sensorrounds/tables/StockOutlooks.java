package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;

import java.util.List;
import sensorrounds.stock.StockOutlook;

/** Stored table of the stock outlook. */
public final class StockOutlooks {
    public static final Table<StockOutlook> TABLE = new Table<>(
            "stock_outlook",
            "Expected demand per part, depot and month with a prediction interval, and what to order now. The first row of a part"
                    + " and depot holds sensors that have failed already and nobody has found out.",
            List.of(
                    text("part", "Part number.", StockOutlook::partId),
                    text("depot", "Depot.", StockOutlook::depot),
                    text(
                            "month",
                            "Month, YYYY-MM; null for the row of what has failed already.",
                            o -> o.alreadyFailed() ? null : o.month().toString()),
                    day("from", "First day; null for that row.", StockOutlook::from),
                    day("to", "Last day; the as-of day for that row.", StockOutlook::to),
                    whole(
                            "planned",
                            "Pieces planned: to be replaced now or at a stop booked in the month, and known dead.",
                            StockOutlook::planned),
                    number("expected", "Expected pieces, planned ones included.", StockOutlook::expected),
                    whole("lower", "Lower limit of the 90 % prediction interval, pieces.", StockOutlook::lower),
                    whole("upper", "Upper limit of it, pieces.", StockOutlook::upper),
                    whole(
                            "service_level_pieces",
                            "Pieces that meet the demand with the service level set.",
                            StockOutlook::serviceLevelPieces),
                    whole(
                            "on_hand",
                            "Pieces at the depot now; null after the first row or when not known.",
                            StockOutlook::onHand),
                    whole(
                            "stand_ins",
                            "Pieces at the depot of parts that can stand in, beyond what their own demand takes; they count"
                                    + " before anything is ordered, each once.",
                            StockOutlook::standIns),
                    whole(
                            "proposed_order",
                            "Pieces to order now for lead time and review, whole packs; null after the first row.",
                            StockOutlook::proposedOrder),
                    whole("sensors", "Sensors in service that the figure rests on.", StockOutlook::sensors)));

    private StockOutlooks() {}
}
