package sensorrounds.ingest;

import java.util.Map;
import sensorrounds.intake.ContractVersion;
import sensorrounds.intake.Field;
import sensorrounds.intake.FieldProblem;
import sensorrounds.intake.RawRecord;
import sensorrounds.intake.RejectionRule;
import sensorrounds.visit.Source;

/** One row of a file that has a header and one text a column: what its columns mean, and those that are not known. */
abstract class FlatRow implements RawRecord {
    private final LogFile file;
    private final CsvHeader header;

    FlatRow(LogFile file, CsvHeader header) {
        this.file = file;
        this.header = header;
    }

    /** @return the text of a column of the header; null for none, also where the row is too short to have it */
    abstract String at(int column);

    /** The line of the file that the row begins on. */
    abstract long line();

    @Override
    public final String get(Field field) {
        int column = header.column(field);
        return column < 0 ? null : at(column);
    }

    @Override
    public final Source source() {
        return new Source(file.name(), line());
    }

    @Override
    public final boolean hasLaterNames() {
        return unknownColumn() != null && isLaterMinor();
    }

    /** A column with a value in it that the contract does not know, unless the row says it follows a later one. */
    final FieldProblem unknownName() {
        String unknown = unknownColumn();
        return unknown == null || isLaterMinor()
                ? null
                : new FieldProblem(RejectionRule.UNKNOWN_KEY, unknown, null, "a field of docs/visit-log.md");
    }

    private boolean isLaterMinor() {
        String version = get(Field.CONTRACT_VERSION);
        return ContractVersion.isLaterMinor(
                version == null || version.isBlank() ? file.layout().constants().get(Field.CONTRACT_VERSION) : version);
    }

    private String unknownColumn() {
        for (Map.Entry<Integer, String> column : header.laterColumns().entrySet()) {
            String text = at(column.getKey());
            if (text != null && !text.isBlank()) {
                return column.getValue();
            }
        }
        return null;
    }
}
