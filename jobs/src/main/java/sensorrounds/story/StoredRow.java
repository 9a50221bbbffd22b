package sensorrounds.story;

import java.time.LocalDate;
import java.util.Map;

/**
 * A row of a result table as people get it: text by column name, blank for no value. The columns are those of
 * docs/outputs.md.
 *
 * @param cells every column of the table
 */
public record StoredRow(Map<String, String> cells) {
    public StoredRow {
        cells = Map.copyOf(cells);
    }

    /**
     * @return null when blank
     * @throws OtherVersion when the table has no such column
     */
    public String text(String column) {
        String value = cells.get(column);
        if (value == null) {
            throw new OtherVersion(column);
        }
        return value.isEmpty() ? null : value;
    }

    boolean has(String column) {
        return text(column) != null;
    }

    boolean is(String column, String value) {
        return value.equals(text(column));
    }

    /** Text, empty when blank. */
    String orEmpty(String column) {
        String value = text(column);
        return value == null ? "" : value;
    }

    /** A constant in words: {@code SENSOR_REPLACED} reads "sensor replaced". */
    String words(String column) {
        return Say.constant(orEmpty(column));
    }

    /** NaN when blank. */
    double number(String column) {
        String value = text(column);
        return value == null ? Double.NaN : Double.parseDouble(value);
    }

    /** 0 when blank. */
    int whole(String column) {
        String value = text(column);
        return value == null ? 0 : Integer.parseInt(value);
    }

    /** Null when blank. */
    LocalDate day(String column) {
        String value = text(column);
        return value == null ? null : LocalDate.parse(value);
    }

    boolean flag(String column) {
        return Boolean.parseBoolean(text(column));
    }

    /** Place, with the wheel set where the vehicle has two. */
    String place() {
        String set = text("wheel_set");
        return orEmpty("position") + (set == null ? "" : "/" + set);
    }
}
