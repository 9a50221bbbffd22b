package sensorrounds.run;

import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.report.VehiclePage;
import sensorrounds.story.VehicleFacts;
import sensorrounds.story.VehicleStory;

/** A page of its own for each of the first vehicles whose warning keeps coming back, beside the report of the run. */
final class VehiclePages {
    /** Pages written; {@code explain --html} makes any other. */
    static final int MOST = 100;

    private static final String FOLDER = "vehicles/";
    private static final int LONGEST_NAME = 60;
    /** Names that some file systems keep for devices. */
    private static final String DEVICE = "(?i)(con|prn|aux|nul|com\\d|lpt\\d)";

    private VehiclePages() {}

    /**
     * Address of each page relative to the run's folder, by vehicle: of those whose warning recurs, in the order of the list.
     * IDs come from logs, so nothing of them but plain letters, digits, hyphens and underscores reaches a file name.
     */
    static Map<String, String> names(List<RecurringVehicle> vehicles) {
        Map<String, String> names = new LinkedHashMap<>();
        Set<String> taken = new HashSet<>();
        for (RecurringVehicle v : vehicles) {
            if (v.pattern() != RecurringVehicle.Pattern.NOT_RECURRING && names.size() < MOST) {
                names.put(v.vehicleId(), FOLDER + free(v.vehicleId(), taken) + ".html");
            }
        }
        return names;
    }

    private static String free(String vehicleId, Set<String> taken) {
        String plain = vehicleId.replaceAll("[^A-Za-z0-9_-]", "_");
        if (plain.length() > LONGEST_NAME) {
            plain = plain.substring(0, LONGEST_NAME);
        }
        if (plain.matches(DEVICE) || !plain.matches("[A-Za-z0-9].*")) {
            plain = "v_" + plain;
        }
        String name = plain;
        // Two names that differ in case alone are one file on some systems.
        for (int n = 2; !taken.add(name.toLowerCase(Locale.ROOT)); n++) {
            name = plain + "_" + n;
        }
        return name;
    }

    /** Writes the pages into the run's folder, whose tables and run.json stand. */
    static void write(Path run, Map<String, String> names, RunStore store, Configuration hadoop) {
        if (names.isEmpty()) {
            return;
        }
        for (VehicleFacts facts : new StoredRun(run, hadoop).facts(List.copyOf(names.keySet()))) {
            String html = VehiclePage.html(VehicleStory.of(facts), "../report.html#recurring");
            store.write(new Path(run, names.get(facts.vehicleId())), html.getBytes(StandardCharsets.UTF_8));
        }
    }
}
