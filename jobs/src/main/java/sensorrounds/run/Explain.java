package sensorrounds.run;

import java.util.List;
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
    private final Page page;

    private Explain(Page page) {
        this.page = page;
    }

    /**
     * @param out output folder of earlier runs
     * @throws UsageError when there is no finished run, or it knows no such vehicle
     */
    public static Explain of(String out, String vehicle) {
        Configuration hadoop = Pipeline.hadoop();
        Path run = new RunStore(out, hadoop)
                .latest()
                .orElseThrow(() -> new UsageError(
                        "no finished run", "--out", out, "a folder with latest.json", "start with sensor-rounds run"));
        StoredRun stored = new StoredRun(run, hadoop);
        VehicleFacts facts = stored.facts(List.of(vehicle)).get(0);
        if (facts.isEmpty()) {
            throw unknown(stored, run, vehicle);
        }
        try {
            return new Explain(VehicleStory.of(facts));
        } catch (OtherVersion e) {
            throw new UsageError(
                    "the newest run was written by another version",
                    run.toString(),
                    e.getMessage(),
                    "tables of this version",
                    "start with sensor-rounds run again");
        }
    }

    /** For the terminal. */
    public String text() {
        return PageText.of(page);
    }

    /** A page that stands alone. */
    public String html() {
        return VehiclePage.html(page, null);
    }

    private static UsageError unknown(StoredRun stored, Path run, String vehicle) {
        NearNames near = new NearNames(vehicle);
        stored.eachVehicle(near::offer);
        return new UsageError(
                "the newest run knows no such vehicle: neither its logs nor its tables name it",
                run.toString(),
                vehicle,
                near.names().isEmpty() ? "a vehicle of the logs" : "one like " + String.join(", ", near.names()),
                "check the spelling; csv/sensor-lives.csv lists the vehicles that have sensors");
    }
}
