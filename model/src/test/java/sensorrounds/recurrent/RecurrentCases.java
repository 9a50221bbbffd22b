package sensorrounds.recurrent;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.reference.ReferenceCase;

/** Reads the reference cases of recurrent events; sources stand with the cases. */
final class RecurrentCases {
    private RecurrentCases() {}

    static ReferenceCase of(String id) {
        return ReferenceCase.load("recurrent/recurrent.json", id);
    }

    /** A match at the case's tolerance |a - b| <= abs + rel |b|. */
    static void check(ReferenceCase reference, String quantity, double actual, JsonNode expected) {
        check(
                reference,
                quantity,
                actual,
                expected,
                reference.node().at("/tolerance/rel").doubleValue());
    }

    /** The same at a relative tolerance of the test's own, which then says why. */
    static void check(ReferenceCase reference, String quantity, double actual, JsonNode expected, double rel) {
        assertThat(expected.isNumber())
                .as("%s has a figure for %s", id(reference), quantity)
                .isTrue();
        double value = expected.doubleValue();
        assertThat(Math.abs(actual - value))
                .as("%s: %s is %s, reference %s", id(reference), quantity, actual, value)
                .isLessThanOrEqualTo(reference.node().at("/tolerance/abs").doubleValue() + rel * Math.abs(value));
    }

    static String id(ReferenceCase reference) {
        return reference.node().get("id").asText();
    }

    /**
     * Units of rows (id, time, status), by the text of a column; status 1 is an event, and a unit's largest time ends its
     * observation.
     */
    static Map<String, List<EventHistory>> units(ReferenceCase reference, String group, String time) {
        JsonNode data = reference.node().at("/data/inline");
        Map<String, Map<Integer, List<Double>>> events = new LinkedHashMap<>();
        Map<Integer, Double> ends = new LinkedHashMap<>();
        for (int i = 0; i < data.get("id").size(); i++) {
            int id = data.get("id").get(i).intValue();
            String name = group == null ? "" : data.get(group).get(i).asText();
            double at = data.get(time).get(i).doubleValue();
            List<Double> own = events.computeIfAbsent(name, k -> new LinkedHashMap<>())
                    .computeIfAbsent(id, k -> new ArrayList<>());
            if (data.get("status").get(i).intValue() == 1) {
                own.add(at);
            }
            ends.merge(id, at, Math::max);
        }
        Map<String, List<EventHistory>> units = new LinkedHashMap<>();
        events.forEach((name, byId) -> units.put(
                name,
                byId.entrySet().stream()
                        .map(e -> EventHistory.observed(
                                0,
                                ends.get(e.getKey()),
                                e.getValue().stream().mapToDouble(t -> t).toArray()))
                        .toList()));
        return units;
    }

    /** Units watched from 0. */
    static EventHistory unit(JsonNode times, double end) {
        return EventHistory.observed(0, end, ReferenceCase.numbers(times));
    }
}
