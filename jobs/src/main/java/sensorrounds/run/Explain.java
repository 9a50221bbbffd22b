package sensorrounds.run;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.stream.Collectors;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import sensorrounds.report.VehiclePage;
import sensorrounds.story.OtherVersion;
import sensorrounds.story.Page;
import sensorrounds.story.PageText;
import sensorrounds.story.VehicleFacts;
import sensorrounds.story.VehicleStory;

/**
 * One vehicle's story from the newest run, for the technician who stands before it. Reads the files of the run, which takes
 * no Spark and so no waiting.
 */
public final class Explain {
    private static final int MOST_NAMED = 10;

    private final Page page;
    private final boolean byIdentity;

    private Explain(Page page, boolean byIdentity) {
        this.page = page;
        this.byIdentity = byIdentity;
    }

    /**
     * @param out output folder of earlier runs
     * @param asked ID of the vehicle as the logs write it, or its number plate or VIN
     * @throws UsageError when there is no finished run, or it knows no such vehicle
     */
    public static Explain of(String out, String asked) {
        Configuration hadoop = Pipeline.hadoop();
        Path run = new RunStore(out, hadoop)
                .latest()
                .orElseThrow(() -> new UsageError(
                        "no finished run", "--out", out, "a folder with latest.json", "start with sensor-rounds run"));
        StoredRun stored = new StoredRun(run, hadoop);
        VehicleFacts facts = stored.facts(List.of(asked)).get(0);
        boolean byIdentity = facts.isEmpty();
        if (byIdentity) {
            facts = stored.facts(List.of(vehicle(stored, run, asked, hadoop))).get(0);
        }
        try {
            return new Explain(VehicleStory.of(facts), byIdentity);
        } catch (OtherVersion e) {
            throw new UsageError(
                    "the newest run was written by another version",
                    run.toString(),
                    e.getMessage(),
                    "tables of this version",
                    "start with sensor-rounds run again");
        }
    }

    /** True when a number plate or VIN was asked for. */
    public boolean isByIdentity() {
        return byIdentity;
    }

    /**
     * For the terminal.
     *
     * @param columns width of the terminal
     */
    public String text(int columns) {
        return PageText.of(page, columns);
    }

    /** A page that stands alone. */
    public String html() {
        return VehiclePage.html(page, null);
    }

    /** The one vehicle of a number plate or VIN. What was asked for is not repeated where it is one. */
    private static String vehicle(StoredRun stored, Path run, String asked, Configuration hadoop) {
        Set<String> registered = new HashSet<>();
        stored.eachRegistered(registered::add);
        if (registered.contains(asked)) {
            throw new UsageError(
                    "the vehicle is in the fleet register, and no log mentions it",
                    run.toString(),
                    asked,
                    "a vehicle with a visit",
                    "look whether its logs are among those read, and whether they write another vehicleId");
        }
        SortedSet<String> found = StoredIdentities.vehicles(run, asked, hadoop);
        if (found.size() == 1) {
            return found.first();
        }
        if (!found.isEmpty()) {
            throw new UsageError(
                    "more than one vehicle has had that number plate or VIN",
                    run.toString(),
                    found.size() + " vehicles",
                    "one vehicle",
                    "give one of " + found.stream().limit(MOST_NAMED).collect(Collectors.joining(", ")));
        }
        NearNames near = new NearNames(asked);
        stored.eachVehicle(near::offer);
        registered.forEach(near::offer);
        throw new UsageError(
                "the newest run knows no such vehicle: no log, no table and no line of the fleet register names it",
                run.toString(),
                asked,
                near.names().isEmpty() ? "a vehicle of the logs" : "one like " + String.join(", ", near.names()),
                "check the spelling; csv/sensor-lives.csv lists the vehicles that have sensors. A number plate or VIN is"
                        + " found too, but not in a run with --pseudonymise");
    }
}
