package sensorrounds.ingest;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.schema.GroupType;
import org.apache.parquet.schema.LogicalTypeAnnotation.ListLogicalTypeAnnotation;
import org.apache.parquet.schema.LogicalTypeAnnotation.MapLogicalTypeAnnotation;
import org.apache.parquet.schema.Type;
import sensorrounds.intake.Field;
import sensorrounds.workbook.Cell;

/**
 * A nested Parquet record as the line of JSON that says the same, so that both meet one parser. Fields without a value are
 * left out: a column is there for every record of the file, whether it was written down or not.
 */
final class ParquetJson {
    private static final JsonFactory JSON = new JsonFactory();
    private static final int DATE_LENGTH = "2025-03-04".length();

    private final StringWriter text = new StringWriter();
    private final JsonGenerator json;

    private ParquetJson() throws IOException {
        this.json = JSON.createGenerator(text);
    }

    static String of(Group record) {
        try {
            ParquetJson line = new ParquetJson();
            line.object(record);
            line.json.close();
            return line.text.toString();
        } catch (IOException e) {
            throw new UncheckedIOException("writing to memory", e);
        }
    }

    private void object(Group group) throws IOException {
        json.writeStartObject();
        GroupType type = group.getType();
        for (int field = 0; field < type.getFieldCount(); field++) {
            Type of = type.getType(field);
            int times = group.getFieldRepetitionCount(field);
            if (of.isRepetition(Type.Repetition.REPEATED)) {
                // A list that is not marked as one has no null either: empty and absent are the same.
                if (times > 0) {
                    json.writeFieldName(of.getName());
                    array(group, field, times);
                }
            } else if (times > 0) {
                json.writeFieldName(of.getName());
                value(group, field, 0);
            }
        }
        json.writeEndObject();
    }

    private void array(Group group, int field, int times) throws IOException {
        json.writeStartArray();
        for (int i = 0; i < times; i++) {
            value(group, field, i);
        }
        json.writeEndArray();
    }

    private void value(Group group, int field, int index) throws IOException {
        Type type = group.getType().getType(field);
        if (type.isPrimitive()) {
            scalar(ParquetValues.of(group, field, index, type.asPrimitiveType()), type.getName());
        } else if (type.getLogicalTypeAnnotation() instanceof ListLogicalTypeAnnotation) {
            list(group.getGroup(field, index));
        } else if (type.getLogicalTypeAnnotation() instanceof MapLogicalTypeAnnotation) {
            map(group.getGroup(field, index));
        } else {
            object(group.getGroup(field, index));
        }
    }

    private void scalar(Cell cell, String name) throws IOException {
        switch (cell.kind()) {
            case NUMBER -> json.writeNumber(cell.text());
            case FLAG -> json.writeBoolean(cell.text().equals("true"));
            case DAY -> {
                boolean dayOnly =
                        name.equals(Field.WARNING_SINCE.key()) && cell.text().length() > DATE_LENGTH;
                json.writeString(dayOnly ? cell.text().substring(0, DATE_LENGTH) : cell.text());
            }
            default -> json.writeString(cell.text());
        }
    }

    /** Lists of three levels, and the older ones of two (LogicalTypes.md, backward-compatibility rules). */
    private void list(Group list) throws IOException {
        Type repeated = list.getType().getType(0);
        int times = list.getFieldRepetitionCount(0);
        boolean wrapped = !repeated.isPrimitive()
                && repeated.asGroupType().getFieldCount() == 1
                && !repeated.getName().equals("array")
                && !repeated.getName().endsWith("_tuple");
        if (!wrapped) {
            array(list, 0, times);
            return;
        }
        json.writeStartArray();
        for (int i = 0; i < times; i++) {
            Group element = list.getGroup(0, i);
            if (element.getFieldRepetitionCount(0) == 0) {
                json.writeNull();
            } else {
                value(element, 0, 0);
            }
        }
        json.writeEndArray();
    }

    private void map(Group map) throws IOException {
        json.writeStartObject();
        for (int i = 0; i < map.getFieldRepetitionCount(0); i++) {
            Group entry = map.getGroup(0, i);
            Type key = entry.getType().getType(0);
            if (entry.getFieldRepetitionCount(1) > 0 && key.isPrimitive()) {
                json.writeFieldName(
                        ParquetValues.of(entry, 0, 0, key.asPrimitiveType()).text());
                value(entry, 1, 0);
            }
        }
        json.writeEndObject();
    }
}
