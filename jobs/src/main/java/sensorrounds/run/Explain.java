package sensorrounds.run;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;

/**
 * One vehicle's story from the newest run, for the technician who stands before it. Reads the CSV files, which takes no
 * Spark and so no waiting.
 */
public final class Explain {
    private static final String SAFETY =
            "A rank says inspect or offer; it is never a verdict on safety. The vehicle handbook decides.";

    private final Configuration hadoop;
    private final Path run;
    private final String vehicle;
    private final StringBuilder text = new StringBuilder();

    private Explain(Configuration hadoop, Path run, String vehicle) {
        this.hadoop = hadoop;
        this.run = run;
        this.vehicle = vehicle;
    }

    /**
     * @param out output folder of earlier runs
     * @throws UsageError when there is no finished run, or it knows no such vehicle
     */
    public static String of(String out, String vehicle) {
        Configuration hadoop = Pipeline.hadoop();
        Path run = new RunStore(out, hadoop)
                .latest()
                .orElseThrow(() -> new UsageError(
                        "no finished run", "--out", out, "a folder with latest.json", "start with sensor-rounds run"));
        return new Explain(hadoop, run, vehicle).text();
    }

    private String text() {
        List<NamedCsvRecord> lives = of("sensor-lives");
        if (lives.isEmpty()
                && of("warning-episodes").isEmpty()
                && of("findings").isEmpty()) {
            throw new UsageError(
                    "the newest run knows no such vehicle",
                    run.toString(),
                    vehicle,
                    "one of " + some(),
                    "check the spelling; csv/sensor-lives.csv lists all");
        }
        line("Vehicle %s, from run %s", vehicle, run.getName());
        warnings();
        replacements();
        sensors(lives);
        list(
                "Wheels without low-pressure warning",
                "unmonitored-wheels",
                r -> words(f(r, "certainty")) + ", " + (f(r, "position").isEmpty() ? "whole vehicle" : at(r).strip())
                        + ": " + f(r, "reason"));
        list("Watch", "watch-list", r -> at(r) + ": " + f(r, "reason") + ". Settled by: " + f(r, "settled_by"));
        list(
                "Follow-ups",
                "follow-ups",
                r -> f(r, "repaired_on") + " " + words(f(r, "repair")) + ": " + f(r, "standing") + " ("
                        + f(r, "driven_minutes") + " of " + f(r, "required_minutes") + " minutes driven that day)");
        list("Contradictions in the logs", "findings", r -> f(r, "day") + ": " + f(r, "what") + "; " + f(r, "done"));
        line("%n%s", SAFETY);
        return text.toString();
    }

    private void warnings() {
        list("System warnings", "recurring-vehicles", r -> f(r, "story"));
        list(
                "What may be behind it",
                "suspects",
                r -> String.format("%3.0f %%  ", 100 * Double.parseDouble(f(r, "probability")))
                        + (f(r, "sensor_id").isEmpty()
                                ? "not a sensor" + (f(r, "position").isEmpty() ? "" : ", place " + f(r, "position"))
                                : f(r, "position") + " sensor " + f(r, "sensor_id"))
                        + ": " + f(r, "reasons"));
        list(
                "Warning episodes",
                "warning-episodes",
                r -> f(r, "first_seen") + " to "
                        + (f(r, "proven_off").isEmpty() ? "open, last seen " + f(r, "last_seen") : f(r, "proven_off"))
                        + ": " + words(f(r, "warning"))
                        + (f(r, "explained_by_cold").equals("true") ? ", explained by the cold" : "")
                        + (f(r, "returns_after_repair").equals("0")
                                ? ""
                                : ", back " + f(r, "returns_after_repair") + " times after work"));
    }

    private void replacements() {
        list(
                "Replacement list",
                "ranked-replacements",
                r -> "rank " + f(r, "rank") + "  " + at(r) + "  " + words(f(r, "advice")) + ": " + f(r, "reason")
                        + " Law of life: " + f(r, "cohort") + " (" + words(f(r, "rung"))
                        + "); hazard ratio of the last report "
                        + shortNumber(f(r, "failure_ratio")) + ".");
    }

    private void sensors(List<NamedCsvRecord> lives) {
        line("%nSensors over time");
        for (NamedCsvRecord r : lives) {
            line(
                    "  %-5s %-10s %s to %s  %s%s",
                    f(r, "position") + (f(r, "wheel_set").isEmpty() ? "" : "/" + f(r, "wheel_set")),
                    f(r, "sensor_id"),
                    f(r, "fitted_on").isEmpty() ? "?         " : f(r, "fitted_on"),
                    f(r, "ended_on").isEmpty() ? "now       " : f(r, "ended_on"),
                    words(f(r, "life_end")),
                    f(r, "cause").isEmpty() ? "" : ", " + words(f(r, "cause")));
        }
    }

    private interface Words {
        String of(NamedCsvRecord record);
    }

    private void list(String title, String table, Words words) {
        List<NamedCsvRecord> rows = of(table);
        if (!rows.isEmpty()) {
            line("%n%s", title);
            rows.forEach(r -> line("  %s", words.of(r)));
        }
    }

    private List<NamedCsvRecord> of(String table) {
        List<NamedCsvRecord> found = new ArrayList<>();
        read(table, r -> {
            if (r.getField("vehicle_id").equals(CsvSheet.harmless(vehicle))) {
                found.add(r);
            }
        });
        return found;
    }

    private String some() {
        Set<String> vehicles = new TreeSet<>();
        read("sensor-lives", r -> {
            if (vehicles.size() < 5) {
                vehicles.add(r.getField("vehicle_id"));
            }
        });
        return String.join(", ", vehicles) + " ...";
    }

    private void read(String table, java.util.function.Consumer<NamedCsvRecord> each) {
        Path file = new Path(run, "csv/" + table + ".csv");
        try {
            FileSystem files = file.getFileSystem(hadoop);
            try (InputStream in = files.open(file);
                    CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(in)) {
                csv.forEach(each);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the run's " + table + ".csv cannot be read", e);
        }
    }

    private static String at(NamedCsvRecord r) {
        String set = f(r, "wheel_set");
        return f(r, "position") + (set.isEmpty() ? "" : "/" + set) + " " + f(r, "sensor_id");
    }

    private static String f(NamedCsvRecord r, String column) {
        return r.getField(column);
    }

    private static String words(String constant) {
        return constant.toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    }

    private static String shortNumber(String number) {
        return number.isEmpty()
                ? "not known"
                : String.format(java.util.Locale.ROOT, "%.2f", Double.parseDouble(number));
    }

    private void line(String format, Object... values) {
        text.append(String.format(java.util.Locale.ROOT, format, values)).append('\n');
    }
}
