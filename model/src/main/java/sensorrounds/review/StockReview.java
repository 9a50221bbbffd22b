package sensorrounds.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import sensorrounds.fleet.Part;
import sensorrounds.fleet.StockOnHand;
import sensorrounds.stock.DemandKey;
import sensorrounds.stock.DemandState;
import sensorrounds.stock.StockForecast;
import sensorrounds.stock.StockOutlook;

/**
 * Puts the demand of all vehicles and the stock on hand together, for every part and depot that has either. Service kits are
 * left out: their demand follows tyre work, which is not forecast, and a row of zeros would say that none is needed.
 */
public final class StockReview {
    private StockReview() {}

    private record Place(String part, String depot) implements Comparable<Place> {
        private static final Comparator<Place> ORDER = Comparator.comparing(Place::part)
                .thenComparing(Place::depot, Comparator.nullsLast(Comparator.naturalOrder()));

        @Override
        public int compareTo(Place o) {
            return ORDER.compare(this, o);
        }
    }

    /** @return rows ordered by part, depot, month */
    public static List<StockOutlook> of(
            Map<DemandKey, DemandState> demand,
            List<StockOnHand> onHand,
            Map<String, Part> parts,
            StockForecast forecast) {
        SortedSet<Place> places = new TreeSet<>();
        demand.keySet().forEach(k -> places.add(new Place(k.partId(), k.depot())));
        Map<Place, Integer> pieces = new HashMap<>();
        for (StockOnHand s : onHand) {
            Part part = parts.get(s.partId());
            if (part != null && part.kind() == Part.Kind.SERVICE_KIT) {
                continue;
            }
            Place place = new Place(s.partId(), s.depot());
            places.add(place);
            pieces.merge(place, s.pieces(), Integer::sum);
        }
        Map<Place, Integer> need = new HashMap<>();
        places.forEach(p -> need.put(p, forecast.coverPieces(p.part(), p.depot(), demand)));
        Map<Place, Integer> standIns = standIns(places, need, pieces, parts);
        List<StockOutlook> rows = new ArrayList<>();
        for (Place p : places) {
            rows.addAll(forecast.outlook(
                    p.part(), p.depot(), demand, pieces.get(p), need.get(p), standIns.getOrDefault(p, 0)));
        }
        return rows;
    }

    /**
     * What substitutes at the same depot can give, beyond their own demand: parts in their order, each its substitutes best
     * first. A piece is given once.
     */
    private static Map<Place, Integer> standIns(
            SortedSet<Place> places, Map<Place, Integer> need, Map<Place, Integer> pieces, Map<String, Part> parts) {
        Map<Place, Integer> spare = new HashMap<>();
        pieces.forEach((place, n) -> spare.put(place, Math.max(0, n - need.getOrDefault(place, 0))));
        Map<Place, Integer> given = new HashMap<>();
        for (Place place : places) {
            Part part = parts.get(place.part());
            if (part == null || !pieces.containsKey(place)) {
                continue;
            }
            int missing = Math.max(0, need.get(place) - pieces.get(place));
            for (String substitute : part.substitutes()) {
                Place from = new Place(substitute, place.depot());
                int taken = Math.min(missing, spare.getOrDefault(from, 0));
                if (taken > 0) {
                    spare.merge(from, -taken, Integer::sum);
                    given.merge(place, taken, Integer::sum);
                    missing -= taken;
                }
            }
        }
        return given;
    }
}
