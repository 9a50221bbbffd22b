package sensorrounds.plausibility;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.visit.Source;

/**
 * Finds IDs that are on two vehicles over the same time. A sensor that moves for good is seen on one vehicle and then on
 * another; one that is seen here, there and here again, or on both on one day, was read wrongly, travels, or is two.
 */
public final class SharedIds {
    /** On more vehicles than this an ID is nobody's own, and one line says so. */
    private static final int MOST_VEHICLES = 20;

    private static final Comparator<Span> IN_TIME = Comparator.comparing(
                    (Span s) -> s.first().day())
            .thenComparing(s -> s.last().day())
            .thenComparing(Span::vehicleId);

    private SharedIds() {}

    /** Where an ID was seen. */
    public record Sighting(LocalDate day, Source source) implements Serializable {}

    /** The time over which an ID was seen on one vehicle. */
    public record Span(String id, String vehicleId, Sighting first, Sighting last) implements Serializable {}

    /**
     * @param kind {@link Doubt.Kind#SENSOR_AT_TWO_VEHICLES} or {@link Doubt.Kind#VIN_AT_TWO_VEHICLES}
     * @param spans at most one for each ID and vehicle, in any order; IDs on one vehicle may be left out
     * @return one doubt for each vehicle on which the ID is also another's, by ID and time
     */
    public static List<Doubt> of(Doubt.Kind kind, List<Span> spans) {
        Map<String, List<Span>> byId = new TreeMap<>();
        spans.forEach(s -> byId.computeIfAbsent(s.id(), id -> new ArrayList<>()).add(s));
        List<Doubt> doubts = new ArrayList<>();
        byId.values().forEach(ofId -> {
            ofId.sort(IN_TIME);
            if (ofId.size() > MOST_VEHICLES) {
                doubts.add(nobodysOwn(kind, ofId));
            } else {
                overlaps(kind, ofId, doubts);
            }
        });
        return doubts;
    }

    private static void overlaps(Doubt.Kind kind, List<Span> ofId, List<Doubt> doubts) {
        for (int i = 0; i < ofId.size(); i++) {
            Span span = ofId.get(i);
            for (Span other : ofId) {
                if (other != span && overlap(other, span)) {
                    doubts.add(doubt(
                            kind,
                            span,
                            name(kind, span) + " is on vehicle " + span.vehicleId() + " " + days(span)
                                    + " and on vehicle " + other.vehicleId() + " " + days(other),
                            List.of(
                                    span.first().source(),
                                    span.last().source(),
                                    other.first().source(),
                                    other.last().source())));
                    break;
                }
            }
        }
    }

    private static Doubt nobodysOwn(Doubt.Kind kind, List<Span> ofId) {
        Span first = ofId.get(0);
        return doubt(
                kind,
                first,
                name(kind, first) + " is on " + ofId.size() + " vehicles: it is none of their own",
                ofId.stream().limit(MOST_VEHICLES).map(s -> s.first().source()).toList());
    }

    private static Doubt doubt(Doubt.Kind kind, Span span, String what, List<Source> sources) {
        String sensor = kind == Doubt.Kind.SENSOR_AT_TWO_VEHICLES ? span.id() : null;
        return new Doubt(
                kind, span.vehicleId(), sensor, null, null, span.first().day(), what, sources);
    }

    /** A VIN is personal data: it is not shown. */
    private static String name(Doubt.Kind kind, Span span) {
        return kind == Doubt.Kind.SENSOR_AT_TWO_VEHICLES ? "sensor " + span.id() : "one VIN";
    }

    private static String days(Span span) {
        return span.first().day().equals(span.last().day())
                ? "on " + span.first().day()
                : "from " + span.first().day() + " to " + span.last().day();
    }

    private static boolean overlap(Span a, Span b) {
        return !a.first().day().isAfter(b.last().day())
                && !b.first().day().isAfter(a.last().day());
    }
}
