package sensorrounds.ingest;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sensorrounds.assemble.Histories;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.Finding;
import sensorrounds.history.HistorySettings;
import sensorrounds.intake.Duplicate;
import sensorrounds.intake.FileDoubt;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.ResolvedVisits;
import sensorrounds.intake.VisitResolver;
import sensorrounds.plausibility.Doubt;
import sensorrounds.plausibility.SharedIds;
import sensorrounds.plausibility.VehicleDoubts;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;

/** Everything that is made of one log, without Spark: what became of each row, and every remark with the rows it names. */
final class LogReading {
    private static final LocalDate NO_END = LocalDate.of(2099, 12, 31);

    final Map<String, LoggedWheel> accepted = new HashMap<>();
    final Map<Note, Long> notes = new TreeMap<>();
    final Set<String> fileDoubts = new HashSet<>();
    long rowsIn;
    long rowsOut;
    /** By line: names of the rules, doubts and findings that name it, with the text of each. */
    private final Map<Long, Set<String>> remarks = new HashMap<>();

    private final Map<Long, Set<String>> names = new HashMap<>();

    static LogReading of(Path file, Map<String, Vehicle> register) {
        LogReading reading = new LogReading();
        Map<String, List<LoggedWheel>> byVehicle = new TreeMap<>();
        for (LogRow row : Fixtures.read(file)) {
            switch (row.outcome()) {
                case ACCEPTED ->
                    byVehicle
                            .computeIfAbsent(row.accepted().visit().vehicleId(), k -> new ArrayList<>())
                            .add(row.accepted());
                case QUARANTINED -> reading.rejected(row.quarantined());
                case FILE -> {
                    reading.rowsIn += row.file().rows();
                    reading.notes.putAll(row.file().notes());
                    FileDoubt.of(row.file())
                            .forEach(d -> reading.fileDoubts.add(d.kind().name()));
                }
                default -> throw new IllegalStateException("a reader finds no duplicates");
            }
        }
        byVehicle.values().forEach(rows -> reading.vehicle(rows, register));
        reading.shared();
        return reading;
    }

    private void rejected(Rejection rejection) {
        rowsOut++;
        remark(rejection.rule().name(), rejection.expected() + rejection.rawText(), List.of(rejection.source()));
    }

    private void vehicle(List<LoggedWheel> rows, Map<String, Vehicle> register) {
        ResolvedVisits resolved = VisitResolver.resolve(rows);
        resolved.rejections().forEach(this::rejected);
        for (Duplicate duplicate : resolved.duplicates()) {
            rowsOut++;
            remark(
                    duplicate.rule().name(),
                    duplicate.keptSource().toString(),
                    List.of(duplicate.row().source()));
        }
        for (LoggedWheel row : resolved.accepted()) {
            rowsOut++;
            accepted.put(key(row), row);
        }
        VehicleDoubts.of(resolved.visits()).forEach(d -> remark(d.kind().name(), d.what(), d.sources()));
        if (!resolved.accepted().isEmpty()) {
            Histories.of(resolved.accepted(), register, Map.of(), HistorySettings.defaults(), NO_END)
                    .findings()
                    .forEach(this::remark);
        }
    }

    private void remark(Finding finding) {
        remark(finding.kind().name(), finding.what(), finding.sources());
    }

    private void shared() {
        Map<String, SharedIds.Span> spans = new HashMap<>();
        for (LoggedWheel row : accepted.values()) {
            if (row.wheel() != null && row.wheel().sensorId() != null) {
                SharedIds.Sighting seen = new SharedIds.Sighting(row.visit().day(), row.source());
                spans.merge(
                        row.wheel().sensorId() + " " + row.visit().vehicleId(),
                        new SharedIds.Span(row.wheel().sensorId(), row.visit().vehicleId(), seen, seen),
                        (a, b) -> new SharedIds.Span(
                                a.id(),
                                a.vehicleId(),
                                a.first().day().isAfter(b.first().day()) ? b.first() : a.first(),
                                a.last().day().isBefore(b.last().day()) ? b.last() : a.last()));
            }
        }
        SharedIds.of(Doubt.Kind.SENSOR_AT_TWO_VEHICLES, List.copyOf(spans.values()))
                .forEach(d -> remark(d.kind().name(), d.what(), d.sources()));
    }

    private void remark(String name, String text, Collection<Source> sources) {
        for (Source source : sources) {
            remarks.computeIfAbsent(source.line(), l -> new HashSet<>()).add(name + ": " + text);
            names.computeIfAbsent(source.line(), l -> new HashSet<>()).add(name);
        }
    }

    /** Line and place: JSON has several rows on a line. */
    private static String key(LoggedWheel row) {
        return row.source().line() + " "
                + (row.wheel() == null ? "" : row.wheel().position());
    }

    Set<String> namesAt(long line) {
        return names.getOrDefault(line, Set.of());
    }

    /** Remarks about a line that another reading does not make. */
    Set<String> remarksBeyond(LogReading other, long line) {
        Set<String> more = new HashSet<>(remarks.getOrDefault(line, Set.of()));
        more.removeAll(other.remarks.getOrDefault(line, Set.of()));
        return more;
    }

    long remarked() {
        return remarks.size();
    }

    Map<Long, Set<String>> remarks() {
        return remarks;
    }
}
