package sensorrounds.story;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The chance of being weak, and of being dead, of each sensor after each of its reads. */
final class ConditionGrid {
    /** Under this a chance is not worth a column of its own. */
    private static final double HARDLY = 0.005;

    private ConditionGrid() {}

    /** @return empty for a vehicle of whose sensors no condition is known */
    static List<Block> blocks(VehicleFacts facts) {
        List<StoredRow> moments = facts.rows("condition-history");
        if (moments.isEmpty()) {
            boolean known = facts.rows("ranked-replacements").stream()
                    .anyMatch(r -> r.is("outlook_method", "HIDDEN_CONDITION"));
            return known
                    ? List.of(new Block.Prose(
                            "These reads, weighed with who and what read them and the weather, leave every sensor now"
                                    + " in service with a chance of less than 5 % of being weak or dead."))
                    : List.of();
        }
        List<String> sensors = moments.stream()
                .sorted(Comparator.comparing(StoredRow::place))
                .map(ConditionGrid::head)
                .distinct()
                .toList();
        SortedMap<String, Map<String, String>> byDay = new TreeMap<>();
        moments.forEach(m ->
                byDay.computeIfAbsent(m.orEmpty("day"), d -> new TreeMap<>()).put(head(m), cell(m)));
        List<String> heads = new ArrayList<>(List.of("day"));
        heads.addAll(sensors);
        List<List<String>> rows = byDay.entrySet().stream()
                .map(e -> {
                    List<String> row = new ArrayList<>(List.of(e.getKey()));
                    sensors.forEach(s -> row.add(e.getValue().getOrDefault(s, "")));
                    return row;
                })
                .collect(Collectors.toList());
        return List.of(
                new Block.Prose(
                        "What these reads say of the sensors now in service: the chance of being weak, and of being dead where"
                                + " that can be, from all reads up to that day. Tries weigh less under a reader or a technician who needs many"
                                + " with every sensor, on inner wheels and in the cold; a low report weighs less in the cold."
                                + others(facts, sensors.size())),
                new Block.Grid("Chance of being weak or dead", heads, rows));
    }

    /** Only what looks weak is kept over time, unless the vehicle's warning keeps coming back. */
    private static String others(VehicleFacts facts, int shown) {
        long known = facts.rows("ranked-replacements").stream()
                .filter(r -> r.is("outlook_method", "HIDDEN_CONDITION"))
                .count();
        return known > shown ? " The other sensors in service are under 5 % now." : "";
    }

    private static String head(StoredRow m) {
        return m.place() + " " + m.orEmpty("sensor_id");
    }

    private static String cell(StoredRow m) {
        double dead = m.number("p_dead");
        String weak = Say.sure(m.number("p_weak"));
        return dead < HARDLY ? weak : weak + ", dead " + Say.sure(dead);
    }
}
