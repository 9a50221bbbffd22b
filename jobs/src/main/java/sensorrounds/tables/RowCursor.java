package sensorrounds.tables;

import java.time.LocalDate;
import java.util.function.Function;
import org.apache.spark.sql.Row;

/** Reads the columns of a row in their stored order; a null column gives null. */
final class RowCursor {
    private final Row row;
    private int at;

    RowCursor(Row row, int from) {
        this.row = row;
        this.at = from;
    }

    @SuppressWarnings("unchecked")
    <V> V next() {
        // The type of each column is fixed by the table's schema, against which the row was read.
        return (V) row.get(at++);
    }

    String text() {
        return next();
    }

    Double number() {
        return next();
    }

    Integer whole() {
        return next();
    }

    Long count() {
        return next();
    }

    LocalDate day() {
        return next();
    }

    Boolean flag() {
        return next();
    }

    <E extends Enum<E>> E word(Class<E> type) {
        return map(name -> Enum.valueOf(type, name));
    }

    /** A text turned into something else, null staying null. */
    <V> V map(Function<String, V> decode) {
        String text = text();
        return text == null ? null : decode.apply(text);
    }
}
