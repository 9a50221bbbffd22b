package sensorrounds.ingest;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sensorrounds.intake.Evidence;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.RejectionRule;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;
import sensorrounds.visit.VisitHeader;

/**
 * Neighbouring rows of one file that go through the shuffle as one: the accepted wheels of a visit, the rejected rows of a
 * line, or a file's count. A visit's header travels once, and Spark moves a quarter of the rows with four columns instead
 * of some seventy.
 *
 * @param key what the shuffle brings together: the vehicle, or the file for rows that name no vehicle
 * @param file file of the rows
 * @param line line of the first of them
 * @param bytes the rows
 * @param rows how many
 * @param outcome what became of all of them
 */
record Block(String key, String file, long line, byte[] bytes, int rows, LogRow.Outcome outcome) {
    private static final LogRow.Outcome[] OUTCOMES = LogRow.Outcome.values();
    private static final RejectionRule[] RULES = RejectionRule.values();
    private static final Note[] NOTES = Note.values();
    private static final Evidence[] EVIDENCE = Evidence.values();

    /** Rows that may share a block with those before it. */
    static boolean together(LogRow a, LogRow b) {
        if (a.outcome() != b.outcome() || a.outcome() == LogRow.Outcome.FILE) {
            return false;
        }
        // The parser shares a header between rows that have the same; others may have to go to another vehicle.
        return a.outcome() == LogRow.Outcome.ACCEPTED
                ? a.accepted().visit() == b.accepted().visit()
                : a.source().line() == b.source().line() && key(a).equals(key(b));
    }

    private static String key(LogRow row) {
        String vehicle = row.quarantined() != null
                ? row.quarantined().vehicleId()
                : row.accepted() == null ? null : row.accepted().visit().vehicleId();
        return vehicle == null ? row.source().file() : vehicle;
    }

    /** @param rows rows of which each may stand together with the one before */
    static Block of(List<LogRow> rows, ByteWriter out) {
        LogRow first = rows.get(0);
        out.word(first.outcome());
        out.number(rows.size());
        out.text(first.source().file());
        if (first.accepted() != null) {
            VisitBytes.write(first.accepted().visit(), out);
        }
        for (LogRow row : rows) {
            out.number(row.source().line());
            switch (row.outcome()) {
                case ACCEPTED -> VisitBytes.write(row.accepted().wheel(), out);
                case QUARANTINED -> write(row.quarantined(), out);
                case FILE -> write(row.file(), out);
                default -> throw new IllegalArgumentException("duplicates are found after the shuffle only");
            }
        }
        return new Block(
                key(first), first.source().file(), first.source().line(), out.take(), rows.size(), first.outcome());
    }

    static List<LogRow> rows(byte[] bytes) {
        ByteReader in = new ByteReader(bytes);
        LogRow.Outcome outcome = in.word(OUTCOMES);
        int size = (int) in.number();
        String file = in.text();
        VisitHeader visit = outcome == LogRow.Outcome.ACCEPTED ? VisitBytes.readVisit(in) : null;
        List<LogRow> rows = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            Source source = new Source(file, in.number());
            rows.add(
                    switch (outcome) {
                        case ACCEPTED -> LogRow.of(new LoggedWheel(visit, VisitBytes.readWheel(in), source));
                        case QUARANTINED -> LogRow.of(readRejection(in, source));
                        case FILE -> LogRow.of(readFile(in, file));
                        case DUPLICATE -> throw new IllegalArgumentException("a block of duplicates");
                    });
        }
        return rows;
    }

    private static void write(Rejection r, ByteWriter out) {
        out.text(r.visitId());
        out.text(r.vehicleId());
        out.text(r.position());
        out.text(r.field());
        out.text(r.rawValue());
        out.word(r.rule());
        out.text(r.expected());
        out.text(r.remedy());
        out.text(r.rawText());
    }

    private static Rejection readRejection(ByteReader in, Source source) {
        return new Rejection(
                source,
                in.text(),
                in.text(),
                in.text(),
                in.text(),
                in.text(),
                in.word(RULES),
                in.text(),
                in.text(),
                in.text());
    }

    private static void write(FileCount f, ByteWriter out) {
        out.number(f.rows());
        out.number(f.lines());
        out.number(f.bytes());
        out.text(f.format());
        out.text(f.layout());
        write(f.notes(), out);
        write(f.evidence(), out);
    }

    private static void write(Map<? extends Enum<?>, Long> counts, ByteWriter out) {
        out.number(counts.size());
        counts.forEach((kind, rows) -> {
            out.word(kind);
            out.number(rows);
        });
    }

    private static FileCount readFile(ByteReader in, String file) {
        long rows = in.number();
        long lines = in.number();
        long size = in.number();
        String format = in.text();
        String layout = in.text();
        Map<Note, Long> notes = readCounts(in, NOTES, new EnumMap<>(Note.class));
        Map<Evidence, Long> evidence = readCounts(in, EVIDENCE, new EnumMap<>(Evidence.class));
        return new FileCount(file, rows, lines, size, format, layout, notes, evidence);
    }

    private static <E extends Enum<E>> Map<E, Long> readCounts(ByteReader in, E[] kinds, Map<E, Long> counts) {
        for (int left = (int) in.number(); left > 0; left--) {
            counts.put(in.word(kinds), in.number());
        }
        return counts;
    }
}
