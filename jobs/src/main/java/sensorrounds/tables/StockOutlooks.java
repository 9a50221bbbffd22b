package sensorrounds.tables;

import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;

import java.util.List;
import sensorrounds.stock.StockOutlook;

/** Stored table of the stock outlook. */
public final class StockOutlooks {
    public static final Table<StockOutlook> TABLE = new Table<>(
            "stock_outlook",
            "Expected demand per part, depot and month with a prediction interval, and what to order now.",
            List.of(
                    text("part", "Part number.", StockOutlook::partId),
                    text("depot", "Depot.", StockOutlook::depot),
                    text("month", "Month, YYYY-MM.", o -> o.month().toString()),
                    number("expected", "Expected pieces.", StockOutlook::expected),
                    whole("lower", "Lower limit of the 90 % prediction interval, pieces.", StockOutlook::lower),
                    whole("upper", "Upper limit of it, pieces.", StockOutlook::upper),
                    whole(
                            "service_level_pieces",
                            "Pieces that meet the month's demand with the service level set.",
                            StockOutlook::serviceLevelPieces),
                    whole(
                            "on_hand",
                            "Pieces at the depot now; null after the first month or when not known.",
                            StockOutlook::onHand),
                    whole(
                            "proposed_order",
                            "Pieces to order now, whole packs; null after the first month.",
                            StockOutlook::proposedOrder),
                    whole("sensors", "Sensors in service that the figure rests on.", StockOutlook::sensors)));

    private StockOutlooks() {}
}
