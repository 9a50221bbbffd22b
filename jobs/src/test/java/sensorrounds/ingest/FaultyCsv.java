package sensorrounds.ingest;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** A clean canonical CSV log into which faults are planted, one at a time; it remembers which lines a fault touches. */
final class FaultyCsv {
    /** A character of a private plane, whose first byte in UTF-8 is written as one that no text has. */
    static final String NO_TEXT = "\udb80\udc00";

    private static final byte NO_TEXT_LEAD = (byte) 0xF3;
    private static final byte NO_UTF8 = (byte) 0xFF;

    private final Map<String, Integer> columns = new HashMap<>();
    private final List<String[]> rows = new ArrayList<>();
    private final Map<Integer, String> rawLines = new HashMap<>();
    private Set<Long> touched = new TreeSet<>();

    private FaultyCsv() {}

    static FaultyCsv of(Path file) throws IOException {
        FaultyCsv csv = new FaultyCsv();
        try (CsvReader<CsvRecord> lines = CsvReader.builder().ofCsvRecord(file)) {
            lines.forEach(line -> csv.rows.add(line.getFields().toArray(String[]::new)));
        }
        String[] header = csv.rows.get(0);
        for (int c = 0; c < header.length; c++) {
            csv.columns.put(header[c], c);
        }
        return csv;
    }

    FaultyCsv copy() {
        FaultyCsv copy = new FaultyCsv();
        copy.columns.putAll(columns);
        rows.forEach(row -> copy.rows.add(row.clone()));
        return copy;
    }

    /** Rows, from 1; 0 is the header. */
    int size() {
        return rows.size();
    }

    String get(int row, String column) {
        return rows.get(row)[columns.get(column)];
    }

    boolean has(int row, String column) {
        return !get(row, column).isEmpty();
    }

    /** The number in a cell; infinite for a blank one. */
    double numberOr(int row, String column) {
        return has(row, column) ? number(row, column) : Double.POSITIVE_INFINITY;
    }

    double number(int row, String column) {
        return Double.parseDouble(get(row, column));
    }

    void put(int row, String column, String text) {
        rows.get(row)[columns.get(column)] = text;
        touch(row);
    }

    void putVisit(int row, String column, String text) {
        visitOf(row).forEach(r -> put(r, column, text));
    }

    List<Integer> visitOf(int row) {
        List<Integer> visit = new ArrayList<>();
        for (int r = 1; r < rows.size(); r++) {
            if (get(r, "visitId").equals(get(row, "visitId"))
                    && get(r, "vehicleId").equals(get(row, "vehicleId"))) {
                visit.add(r);
            }
        }
        return visit;
    }

    /** Rows of the same vehicle and place, in time order as they stand in the log. */
    List<Integer> samePlace(int row) {
        List<Integer> same = new ArrayList<>();
        for (int r = 1; r < rows.size(); r++) {
            if (get(r, "vehicleId").equals(get(row, "vehicleId"))
                    && get(r, "position").equals(get(row, "position"))
                    && get(r, "wheelSet").equals(get(row, "wheelSet"))) {
                same.add(r);
            }
        }
        return same;
    }

    /** Visits of the same vehicle, each by one of its rows, in time order. */
    List<Integer> visitsOfVehicle(int row) {
        Map<String, Integer> visits = new HashMap<>();
        for (int r = 1; r < rows.size(); r++) {
            if (get(r, "vehicleId").equals(get(row, "vehicleId"))) {
                visits.putIfAbsent(get(r, "visitId"), r);
            }
        }
        return visits.values().stream()
                .sorted((a, b) -> get(a, "visitedAt").compareTo(get(b, "visitedAt")))
                .toList();
    }

    /** Writes a row again at the end. @return its number */
    int repeat(int row) {
        rows.add(rows.get(row).clone());
        touch(rows.size() - 1);
        return rows.size() - 1;
    }

    void touch(int row) {
        touched.add((long) row + 1);
    }

    void raw(int row, String line) {
        rawLines.put(row, line);
        touch(row);
    }

    String line(int row) {
        return String.join(
                ",",
                Arrays.stream(rows.get(row))
                        .map(cell -> cell.matches("[^,\"]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"')
                        .toList());
    }

    /** Lines of the file touched since the last call. */
    Set<Long> takeTouched() {
        Set<Long> taken = touched;
        touched = new TreeSet<>();
        return taken;
    }

    void write(Path file) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int r = 0; r < rows.size(); r++) {
            String line = rawLines.getOrDefault(r, line(r)) + "\r\n";
            for (byte b : line.getBytes(StandardCharsets.UTF_8)) {
                // No UTF-8 text holds this byte; a fault writes it by this character.
                bytes.write(b == NO_TEXT_LEAD ? NO_UTF8 : b);
            }
        }
        Files.write(file, bytes.toByteArray());
    }
}
