package sensorrounds.simulate;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.simulate.Crew.Export;
import sensorrounds.simulate.LogEntry.Expected;
import sensorrounds.simulate.LogEntry.Mishap;

/** Writes a whole data folder as several technicians' exports would leave it, with the truth apart. */
final class SampleWriter {
    /** A vehicle that somebody forgot to put into the register. */
    private static final int UNREGISTERED = 140;

    /** Exports that are closed are packed; the year is the last one packed. */
    private static final Map<String, Integer> PACKED_UNTIL = Map.of("T11", 2024, "T22", 2023);

    private static final String FILES_HEAD =
            "file,layout,visits,rows,duplicateRows,supersededRows,quarantinedRows,acceptedRows\n";

    private final SimulationSettings settings;
    private final OutputFolder folder;
    private final StringBuilder mess = new StringBuilder("file,line,kind,visitId,rows,expected\n");
    private final StringBuilder files = new StringBuilder(FILES_HEAD);
    private long rowsWritten;

    SampleWriter(SimulationSettings settings, OutputFolder folder) {
        this.settings = settings;
        this.folder = folder;
    }

    SimulationSummary write() throws IOException {
        List<SimulatedVehicle> vehicles = new FleetSimulator(settings).all();
        long visits = vehicles.stream().mapToLong(v -> v.visits().size()).sum();
        for (Crew.Technician t : settings.crew().technicians()) {
            logsOf(t, vehicles);
        }
        registers(vehicles);
        layouts();
        truth(vehicles);
        return new SimulationSummary(vehicles.size(), visits, rowsWritten, folder.files(), folder.bytes());
    }

    private void logsOf(Crew.Technician technician, List<SimulatedVehicle> vehicles) throws IOException {
        SortedMap<String, List<SimulatedVisit>> byFile = new TreeMap<>();
        vehicles.stream()
                .flatMap(v -> v.visits().stream())
                .filter(v -> v.header().technicianId().equals(technician.id()))
                .sorted(Comparator.comparing((SimulatedVisit v) -> v.header().visitedAt())
                        .thenComparing(v -> v.header().visitId()))
                .forEach(v -> byFile.computeIfAbsent(
                                fileName(technician, v.header().visitedAt()), f -> new ArrayList<>())
                        .add(v));
        Mess messMaker = new Mess(settings.mess(), settings.seed(), technician.export());
        List<LogEntry> carriedOver = new ArrayList<>();
        String last = byFile.isEmpty() ? "" : byFile.lastKey();
        for (Map.Entry<String, List<SimulatedVisit>> file : byFile.entrySet()) {
            List<LogEntry> entries = new ArrayList<>(carriedOver);
            List<LogEntry> atEnd = new ArrayList<>();
            carriedOver.clear();
            for (SimulatedVisit v : file.getValue()) {
                Mess.Outcome outcome = messMaker.befall(v);
                entries.addAll(outcome.here());
                if (outcome.later() != null) {
                    boolean next = outcome.nextFile() && !file.getKey().equals(last);
                    (next ? carriedOver : atEnd).add(outcome.later());
                }
            }
            entries.addAll(atEnd);
            logFile(file.getKey(), technician.export(), format(technician), entries);
        }
    }

    private void logFile(String name, Export export, VisitFormat format, List<LogEntry> entries) throws IOException {
        StringBuilder text = new StringBuilder(format.head());
        int line = format.head().isEmpty() ? 1 : 2;
        int rows = 0;
        Map<Expected, Integer> fate = new LinkedHashMap<>();
        for (LogEntry e : entries) {
            int from = text.length();
            format.append(text, e.visit(), e.slips());
            if (e.cutOff()) {
                text.setLength(from + (text.length() - from) * 3 / 5);
                text.append('\n');
            }
            rows += e.rows();
            for (Mishap m : e.mishaps()) {
                int at = line + (format.lines(e.visit()) > 1 ? Math.max(0, m.wheel()) : 0);
                mess.append(name)
                        .append(',')
                        .append(at)
                        .append(',')
                        .append(m.kind())
                        .append(',');
                mess.append(e.visit().header().visitId()).append(',').append(m.rows());
                mess.append(',').append(CanonicalWords.word(m.expected())).append('\n');
                fate.merge(m.expected(), m.rows(), Integer::sum);
            }
            line += format.lines(e.visit());
        }
        folder.write(name, text, Layouts.charset(export));
        rowsWritten += rows;
        int duplicate = fate.getOrDefault(Expected.DUPLICATE, 0);
        int superseded = fate.getOrDefault(Expected.SUPERSEDED, 0);
        int quarantined = fate.getOrDefault(Expected.QUARANTINED, 0);
        files.append(name).append(',').append(CanonicalWords.word(export)).append(',');
        files.append(entries.size()).append(',').append(rows).append(',').append(duplicate);
        files.append(',').append(superseded).append(',').append(quarantined).append(',');
        files.append(rows - duplicate - superseded - quarantined).append('\n');
    }

    /** JSON lines come by the quarter, CSV by the year. */
    private static String fileName(Crew.Technician t, LocalDateTime at) {
        boolean json = t.export() == Export.JSON_LINES;
        String period = json ? at.getYear() + "-q" + ((at.getMonthValue() + 2) / 3) : Integer.toString(at.getYear());
        String packed = at.getYear() <= PACKED_UNTIL.getOrDefault(t.id(), 0) ? ".gz" : "";
        return "visit-logs/" + t.id() + "/" + t.id() + "-" + period + (json ? ".jsonl" : ".csv") + packed;
    }

    private static VisitFormat format(Crew.Technician t) {
        return switch (t.export()) {
            case JSON_LINES ->
                t.id().equals("T21") ? new JsonLines(Units.BAR_KM_C, "+01:00") : new JsonLines(Units.KPA_KM_C, "");
            case CANONICAL_CSV -> Layouts.canonicalCsv();
            case TRADE_CSV -> Layouts.tradeCsv();
            case DECIMAL_COMMA_CSV -> Layouts.decimalCommaCsv();
        };
    }

    private void registers(List<SimulatedVehicle> vehicles) throws IOException {
        StringBuilder fleet = new StringBuilder(Registers.FLEET_HEAD);
        List<SimulatedVehicle> byName = vehicles.stream()
                .sorted(Comparator.comparing(v -> v.register().vehicleId()))
                .toList();
        String forgotten = settings.mess().badDate() > 0 && UNREGISTERED < settings.vehicles()
                ? VehicleIds.vehicle(UNREGISTERED)
                : "";
        for (SimulatedVehicle v : byName) {
            if (v.register().vehicleId().equals(forgotten)) {
                mess.append("fleet.csv,,vehicle-not-in-register,")
                        .append(forgotten)
                        .append(",1,accepted\n");
            } else {
                Registers.appendVehicle(fleet, v.register());
            }
        }
        folder.write("fleet.csv", fleet);
        folder.write("parts.csv", Registers.parts(InventedOperator.parts()));
        folder.write("stock.csv", Registers.stock(settings, InventedOperator.parts()));
    }

    private void layouts() throws IOException {
        for (Crew.Technician t : settings.crew().technicians()) {
            String where = "visit-logs/" + t.id() + "/*.csv";
            if (t.export() == Export.TRADE_CSV) {
                folder.write("layouts/trade-words.json", json(Layouts.tradeMapping(where)));
            } else if (t.export() == Export.DECIMAL_COMMA_CSV) {
                folder.write("layouts/decimal-comma.json", json(Layouts.decimalCommaMapping(where)));
            }
        }
    }

    private void truth(List<SimulatedVehicle> vehicles) throws IOException {
        StringBuilder sensors = new StringBuilder(Truth.SENSORS_HEAD);
        vehicles.forEach(v -> Truth.appendSensors(sensors, v));
        folder.write("truth/sensors.csv", sensors);
        folder.write("truth/laws.csv", Truth.laws(settings.kinds()));
        folder.write("truth/patterns.csv", Truth.stories(vehicles));
        folder.write("truth/mess.csv", mess);
        folder.write("truth/files.csv", files);
        folder.write("truth/README.md", Truth.readMe(settings));
    }

    private static String json(Map<String, Object> mapping) throws IOException {
        DefaultIndenter indent = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter().withObjectIndenter(indent);
        return new ObjectMapper().writer(printer).writeValueAsString(mapping) + "\n";
    }
}
