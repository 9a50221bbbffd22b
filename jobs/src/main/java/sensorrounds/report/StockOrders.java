package sensorrounds.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import sensorrounds.fleet.Part;
import sensorrounds.stock.StockOutlook;

/** The orders to place now, by part and depot, as the months of the stock outlook propose them. */
final class StockOrders {
    private StockOrders() {}

    /**
     * @param part null when the parts list does not know the part
     * @param cost pieces times price; NaN without a price
     */
    record Order(String partId, Part part, String depot, long pieces, double cost) {
        /** The cost as far as it is known, for adding up. */
        double knownCost() {
            return Double.isNaN(cost) ? 0 : cost;
        }
    }

    /** Orders above nought, by part and depot. */
    static List<Order> of(List<StockOutlook> stock, List<Part> parts) {
        Map<String, Part> byId = byId(parts);
        Map<String, Map<String, Long>> pieces = new TreeMap<>();
        for (StockOutlook s : stock) {
            if (s.proposedOrder() != null && s.proposedOrder() > 0) {
                pieces.computeIfAbsent(s.partId(), p -> new TreeMap<>())
                        .merge(depot(s.depot()), (long) s.proposedOrder(), Long::sum);
            }
        }
        List<Order> orders = new ArrayList<>();
        pieces.forEach((partId, byDepot) -> byDepot.forEach((depot, n) -> {
            Part part = byId.get(partId);
            orders.add(new Order(partId, part, depot, n, part == null ? Double.NaN : n * part.price()));
        }));
        return orders;
    }

    static Map<String, Part> byId(List<Part> parts) {
        return parts.stream().collect(Collectors.toMap(Part::partId, Function.identity(), (first, again) -> first));
    }

    private static String depot(String depot) {
        return depot == null ? "" : depot;
    }
}
