package sensorrounds.ingest;

import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.fleet.AxleLayout;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Part;
import sensorrounds.fleet.StockOnHand;
import sensorrounds.fleet.Vehicle;

/** Reads the operator's own tables of a data folder: fleet.csv, parts.csv, stock.csv. None of them has to be there. */
public final class RegisterReader {
    private static final List<String> FLEET = List.of(
            "vehicleId",
            "vehicleClass",
            "modelGroup",
            "firstUsed",
            "depot",
            "drivingSide",
            "system",
            "axles",
            "originalPart",
            "annualKm",
            "nextPlannedVisit",
            "leftFleet");
    private static final List<String> PARTS = List.of(
            "partId", "description", "kind", "price", "leadTimeDays", "packSize", "frequencyMhz", "substitutes");
    private static final List<String> STOCK = List.of("partId", "depot", "pieces");

    private final Configuration hadoop;
    private final String folder;

    /** @param folder the data folder */
    public RegisterReader(Configuration hadoop, String folder) {
        this.hadoop = hadoop;
        this.folder = folder;
    }

    /**
     * @return the vehicles by their key, in its order
     * @throws RefusedInput for the first line that cannot be used, or a key that stands twice
     */
    public SortedMap<String, Vehicle> fleet() {
        Map<String, String> seen = new HashMap<>();
        SortedMap<String, Vehicle> fleet = new TreeMap<>();
        RegisterLines.read(folder, "fleet.csv", 1, FLEET, hadoop, line -> {
                    Vehicle vehicle = vehicle(line);
                    once(seen, vehicle.vehicleId(), line, "vehicleId");
                    return vehicle;
                })
                .forEach(v -> fleet.put(v.vehicleId(), v));
        return Collections.unmodifiableSortedMap(fleet);
    }

    /**
     * @return the parts in the order of the file. A blank kind is a sensor, a blank lead time 0 days, a blank pack one piece
     * @throws RefusedInput for the first line that cannot be used, or a key that stands twice
     */
    public List<Part> parts() {
        Map<String, String> seen = new HashMap<>();
        return List.copyOf(RegisterLines.read(folder, "parts.csv", 1, PARTS, hadoop, line -> {
            Part part = part(line);
            once(seen, part.partId(), line, "partId");
            return part;
        }));
    }

    /**
     * @return the stock in the order of the file
     * @throws RefusedInput for the first line that cannot be used, or a part and depot that stand twice
     */
    public List<StockOnHand> stock() {
        Map<String, String> seen = new HashMap<>();
        return List.copyOf(RegisterLines.read(folder, "stock.csv", STOCK.size(), STOCK, hadoop, line -> {
            line.required("pieces");
            StockOnHand stock =
                    new StockOnHand(line.required("partId"), line.required("depot"), line.whole("pieces", 0));
            once(seen, stock.partId() + " at " + stock.depot(), line, "partId and depot");
            return stock;
        }));
    }

    private static Vehicle vehicle(RegisterLines.Line line) {
        MonitoringSystem system =
                line.as("system", words(MonitoringSystem.class), text -> constant(MonitoringSystem.class, text));
        return new Vehicle(
                line.required("vehicleId"),
                line.text("vehicleClass"),
                line.text("modelGroup"),
                line.day("firstUsed"),
                line.text("depot"),
                line.as("drivingSide", "left or right", RegisterReader::drivingSide),
                system == null ? MonitoringSystem.UNKNOWN : system,
                line.as(
                        "axles",
                        "one letter S or D per axle from the front, such as SS, SD, SS+spare",
                        text -> AxleLayout.parse(text).orElseThrow(() -> new IllegalArgumentException(text))),
                line.text("originalPart"),
                line.number("annualKm"),
                line.day("nextPlannedVisit"),
                line.day("leftFleet"));
    }

    private static Part part(RegisterLines.Line line) {
        Part.Kind kind = line.as("kind", words(Part.Kind.class), text -> constant(Part.Kind.class, text));
        line.required("price");
        String substitutes = line.text("substitutes");
        return new Part(
                line.required("partId"),
                line.text("description"),
                kind == null ? Part.Kind.SENSOR : kind,
                line.number("price"),
                orElse(line.whole("leadTimeDays", 0), 0),
                orElse(line.whole("packSize", 1), 1),
                line.number("frequencyMhz"),
                substitutes == null
                        ? List.of()
                        : Arrays.stream(substitutes.split(";"))
                                .map(String::strip)
                                .filter(s -> !s.isEmpty())
                                .toList());
    }

    private static int orElse(Integer value, int byDefault) {
        return value == null ? byDefault : value;
    }

    private static String drivingSide(String text) {
        String word = text.toLowerCase(Locale.ROOT);
        if (!word.equals("left") && !word.equals("right")) {
            throw new IllegalArgumentException(text);
        }
        return word;
    }

    private static <E extends Enum<E>> E constant(Class<E> type, String text) {
        return Enum.valueOf(type, text.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    private static <E extends Enum<E>> String words(Class<E> type) {
        Function<E, String> word = e -> e.name().toLowerCase(Locale.ROOT).replace('_', '-');
        return "one of "
                + String.join(
                        ", ", Arrays.stream(type.getEnumConstants()).map(word).toList());
    }

    private static void once(Map<String, String> seen, String key, RegisterLines.Line line, String column) {
        String before = seen.putIfAbsent(key, line.where());
        if (before != null) {
            throw line.refused(column, "\"" + key + "\", which stands at " + before, "every key once");
        }
    }
}
