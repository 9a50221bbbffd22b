package sensorrounds.plausibility;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.WheelPosition;

/**
 * Finds IDs that one slip of hand or spreadsheet made of another. An ID is suspected when it is seen at one visit only and
 * a near one is seen at the same place at other visits but not at this one. Sensors of one box may have neighbouring IDs:
 * those are read at more than one visit, or beside each other.
 */
final class SensorIdDoubts {
    /** More IDs at one place than any vehicle has in its life: a key such as "unknown", shared by many. */
    private static final int MOST_IDS = 200;

    private record PlaceKey(String wheelSet, WheelPosition position) {}

    private record Sighting(int visit, LoggedWheel row) {}

    private final Map<String, List<Sighting>> byId = new HashMap<>();
    private final Map<PlaceKey, TreeSet<String>> byPlace = new LinkedHashMap<>();

    private SensorIdDoubts() {}

    static void add(List<Visit> visits, List<Doubt> doubts) {
        SensorIdDoubts ids = new SensorIdDoubts();
        for (int i = 0; i < visits.size(); i++) {
            for (LoggedWheel row : visits.get(i).rows()) {
                if (row.wheel() != null) {
                    ids.see(row.wheel().sensorId(), i, row);
                    ids.see(row.wheel().newSensorId(), i, row);
                }
            }
        }
        ids.byPlace.forEach((place, atPlace) -> {
            if (atPlace.size() > 1 && atPlace.size() <= MOST_IDS) {
                atPlace.forEach(id -> ids.suspect(id, atPlace, doubts));
            }
        });
    }

    private void see(String id, int visit, LoggedWheel row) {
        if (id != null) {
            byId.computeIfAbsent(id, k -> new ArrayList<>()).add(new Sighting(visit, row));
            byPlace.computeIfAbsent(
                            new PlaceKey(row.visit().wheelSet(), row.wheel().position()), k -> new TreeSet<>())
                    .add(id);
        }
    }

    private void suspect(String id, TreeSet<String> atPlace, List<Doubt> doubts) {
        List<Sighting> seen = byId.get(id);
        int visit = seen.get(0).visit();
        if (seen.stream().anyMatch(s -> s.visit() != visit)) {
            return;
        }
        for (String other : atPlace) {
            String slip = NearIds.slip(id, other);
            if (slip != null && isUsual(other, visit)) {
                Sighting here = seen.get(0);
                List<Source> sources = new ArrayList<>();
                seen.forEach(s -> sources.add(s.row().source()));
                doubts.add(new Doubt(
                        Doubt.Kind.SENSOR_ID_NEAR,
                        here.row().visit().vehicleId(),
                        id,
                        here.row().wheel().position(),
                        here.row().visit().wheelSet(),
                        here.row().visit().day(),
                        "sensor " + id + " is seen at this visit only, " + other + " at "
                                + byId.get(other).stream()
                                        .mapToInt(Sighting::visit)
                                        .distinct()
                                        .count()
                                + " others: " + slip,
                        sources));
                return;
            }
        }
    }

    /** Seen at other visits and not at this one; of two that are seen once each, the earlier one is believed. */
    private boolean isUsual(String other, int visit) {
        List<Sighting> seen = byId.get(other);
        boolean apart = seen.stream().noneMatch(s -> s.visit() == visit);
        boolean oftener = seen.stream().anyMatch(s -> s.visit() != seen.get(0).visit());
        return apart && (oftener || seen.get(0).visit() < visit);
    }
}
