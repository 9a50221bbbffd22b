package sensorrounds.ingest;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.Type;
import sensorrounds.intake.Field;
import sensorrounds.intake.IntakeCounts;
import sensorrounds.intake.ParsedRow;
import sensorrounds.intake.VisitParser;
import sensorrounds.visit.Source;

/**
 * The rows of a Parquet file, in one of the two shapes of a log: nested, one visit per record with its {@code wheels}, as in
 * JSON; or flat, one wheel per record, as in CSV. The line of a row is the number of its record in the file, from 1.
 */
final class ParquetLog implements RowSource {
    private static final String WHEELS = "wheels";

    private final LogFile file;
    private final ParquetRecords records;
    private final VisitParser parser;
    private final TypedRow flat;
    private final ArrayDeque<ParsedRow> ready = new ArrayDeque<>();
    private long row;

    private ParquetLog(LogSlice slice, ParquetRecords records) {
        this.file = slice.file();
        this.records = records;
        this.row = slice.linesBefore();
        this.parser = new VisitParser(file.layout());
        this.flat = isNested(records.schema())
                ? null
                : new TypedRow(file, CsvHeader.of(names(records.schema()), file, file.name() + ", its columns"));
    }

    /** @throws RefusedInput when the file cannot be read or is no visit log */
    static ParquetLog open(LogSlice slice, Configuration hadoop) throws IOException {
        ParquetRecords records = ParquetRecords.open(slice, hadoop);
        try {
            refuseIfNoLog(slice.file(), records.schema());
            return new ParquetLog(slice, records);
        } catch (RefusedInput e) {
            records.close();
            throw e;
        }
    }

    private static boolean isNested(MessageType schema) {
        return schema.containsField(WHEELS);
    }

    private static List<String> names(MessageType schema) {
        return schema.getFields().stream().map(Type::getName).toList();
    }

    private static void refuseIfNoLog(LogFile file, MessageType schema) {
        for (String folder : file.name().split("/")) {
            int mark = folder.indexOf('=');
            if (mark > 0 && CsvHeader.field(folder.substring(0, mark), file.layout()) != null) {
                throw new RefusedInput(
                        "a Parquet table parted by a field of the log",
                        file.name(),
                        folder,
                        "all fields inside the files; what stands in the names of folders only is not read",
                        "write the table without partitionBy");
            }
        }
        if (!isNested(schema)) {
            return;
        }
        if (Field.KEYS.stream().noneMatch(key -> schema.containsField(key.key()))) {
            throw new RefusedInput(
                    "not a visit log",
                    file.name() + ", its columns",
                    String.join(", ", names(schema)),
                    "the columns visitId, visitedAt and vehicleId beside wheels",
                    "move the file out of the folder of logs, or write it as in docs/visit-log.md");
        }
        if (file.layout().name() != null) {
            throw new RefusedInput(
                    "a layout for a file that is no table",
                    file.name(),
                    "layout \"" + file.layout().name() + "\"",
                    "nested Parquet in the canonical form",
                    "narrow appliesTo to files with one row per wheel");
        }
    }

    @Override
    public ParsedRow next() throws IOException {
        while (ready.isEmpty()) {
            Group record = records.next(row);
            if (record == null) {
                return null;
            }
            row++;
            if (flat == null) {
                JsonVisit visit = JsonVisit.read(ParquetJson.of(record), new Source(file.name(), row));
                ready.addAll(parser.visit(visit.visit(), visit.wheels()));
            } else if (fill(record)) {
                return parser.row(flat);
            }
        }
        return ready.poll();
    }

    /** @return false for a record without any value */
    private boolean fill(Group record) {
        flat.begin(row);
        for (int column = 0; column < record.getType().getFieldCount(); column++) {
            Type type = record.getType().getType(column);
            int values = record.getFieldRepetitionCount(column);
            if (values == 1 && type.isPrimitive()) {
                flat.set(column, ParquetValues.of(record, column, 0, type.asPrimitiveType()));
            } else if (values > 0) {
                flat.setMany(column);
            }
        }
        return !flat.isBlank();
    }

    @Override
    public long line() {
        return row;
    }

    @Override
    public IntakeCounts counts() {
        return parser.counts();
    }

    @Override
    public void close() throws IOException {
        records.close();
    }
}
