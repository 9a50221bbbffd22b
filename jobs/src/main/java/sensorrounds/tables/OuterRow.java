package sensorrounds.tables;

import java.time.LocalDate;
import java.time.LocalDateTime;
import org.apache.spark.sql.Row;

/** A row as Spark hands it out. */
final class OuterRow implements RowCursor {
    private final Row row;
    private int at;

    OuterRow(Row row, int from) {
        this.row = row;
        this.at = from;
    }

    @SuppressWarnings("unchecked")
    private <V> V next() {
        // The type of each column is fixed by the table's schema, against which the row was read.
        return (V) row.get(at++);
    }

    @Override
    public String text() {
        return next();
    }

    @Override
    public Double number() {
        return next();
    }

    @Override
    public Integer whole() {
        return next();
    }

    @Override
    public Long count() {
        return next();
    }

    @Override
    public LocalDate day() {
        return next();
    }

    @Override
    public LocalDateTime time() {
        return next();
    }

    @Override
    public Boolean flag() {
        return next();
    }

    @Override
    public <E extends Enum<E>> E word(Class<E> type) {
        return map(name -> Enum.valueOf(type, name));
    }
}
