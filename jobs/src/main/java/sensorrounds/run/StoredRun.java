package sensorrounds.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import sensorrounds.story.RunContext;
import sensorrounds.story.StoredRow;
import sensorrounds.story.VehicleFacts;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.Visit;

/** What a finished run holds of single vehicles, read from its files without Spark. */
final class StoredRun {
    /** The tables a vehicle's story is made of. */
    private static final List<String> TABLES = List.of(
            "recurring-vehicles",
            "suspects",
            "warning-episodes",
            "follow-ups",
            "unmonitored-wheels",
            "watch-list",
            "ranked-replacements",
            "condition-history",
            "sensor-lives",
            "findings");

    private static final String VEHICLE = "vehicle_id";

    private final Path run;
    private final Configuration hadoop;

    StoredRun(Path run, Configuration hadoop) {
        this.run = run;
        this.hadoop = hadoop;
    }

    /** Facts of each of these vehicles, in one pass over each table; of one the run does not know they are empty. */
    List<VehicleFacts> facts(List<String> vehicles) {
        RunContext context = context();
        Map<String, String> byCell = new HashMap<>();
        Map<String, Map<String, List<StoredRow>>> tables = new LinkedHashMap<>();
        for (String v : vehicles) {
            byCell.put(CsvSheet.harmless(v), v);
            tables.put(v, new HashMap<>());
        }
        for (String table : TABLES) {
            each(table, r -> {
                String vehicle = byCell.get(r.getField(VEHICLE));
                if (vehicle != null) {
                    tables.get(vehicle)
                            .computeIfAbsent(table, t -> new ArrayList<>())
                            .add(row(r));
                }
            });
        }
        Map<String, List<Visit>> visits = StoredVisits.of(run, Set.copyOf(vehicles), context.asOf(), hadoop);
        return vehicles.stream()
                .distinct()
                .map(v -> new VehicleFacts(v, context, tables.get(v), visits.getOrDefault(v, List.of())))
                .toList();
    }

    /** Hands over the ID of every vehicle that has a sensor, with repeats. */
    void eachVehicle(Consumer<String> each) {
        each("sensor-lives", r -> each.accept(unharmed(r.getField(VEHICLE))));
    }

    /** Hands over the ID of every vehicle of the fleet register as the run had it; none for a run that kept no register. */
    void eachRegistered(Consumer<String> each) {
        try {
            Path register = new Path(run, "csv/" + RegisterSheet.NAME + ".csv");
            if (register.getFileSystem(hadoop).exists(register)) {
                each(RegisterSheet.NAME, r -> each.accept(unharmed(r.getField(VEHICLE))));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the run's fleet register cannot be read", e);
        }
    }

    private RunContext context() {
        JsonNode json = json();
        JsonNode settings = json.path("settings");
        JsonNode battery = settings.path("battery");
        List<StoredRow> readers = new ArrayList<>();
        each("reader-quality", r -> readers.add(row(r)));
        return new RunContext(
                run.getName(),
                LocalDate.parse(json.path("asOf").asText()),
                settings.path("proofDriveMinutes").asDouble(),
                settings.path("history").path("drivingKmh").asDouble(),
                settings.path("history").path("referenceCelsius").asDouble(),
                settings.path("history").path("lowPressureShare").asDouble(),
                new BatteryReport.LowLimits(
                        battery.path("percent").asDouble(),
                        battery.path("volts").asDouble(),
                        battery.path("months").asDouble()),
                settings.path("outlook").path("horizonDays").asInt(),
                settings.path("costs").path("currency").asText(),
                readers);
    }

    private JsonNode json() {
        try (InputStream in = open(new Path(run, "run.json"))) {
            return new JsonMapper().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException("the run's run.json cannot be read", e);
        }
    }

    private void each(String table, Consumer<NamedCsvRecord> each) {
        try (InputStream in = open(new Path(run, "csv/" + table + ".csv"));
                CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(in)) {
            csv.forEach(each);
        } catch (IOException e) {
            throw new UncheckedIOException("the run's " + table + ".csv cannot be read", e);
        }
    }

    private InputStream open(Path file) throws IOException {
        FileSystem files = file.getFileSystem(hadoop);
        return files.open(file);
    }

    private static StoredRow row(NamedCsvRecord r) {
        Map<String, String> cells = new HashMap<>();
        r.getFieldsAsMap().forEach((column, text) -> cells.put(column, unharmed(text)));
        return new StoredRow(cells);
    }

    /** The text before it was made safe for spreadsheets. */
    private static String unharmed(String cell) {
        return cell.startsWith("'") && cell.equals(CsvSheet.harmless(cell.substring(1))) ? cell.substring(1) : cell;
    }
}
