package sensorrounds.tables;

import java.io.Serializable;
import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;

/**
 * One stored table: its name, its columns in order, and how a record becomes a row. Each table is one constant in one
 * class of this package; no other place spells a column name.
 *
 * @param <T> record that one row stands for
 * @param purpose what the table is for, a sentence for docs/outputs.md
 */
public record Table<T>(String name, String purpose, List<Column<T>> columns) implements Serializable {
    public Table {
        columns = List.copyOf(columns);
    }

    public StructType schema() {
        return new StructType(columns.stream()
                .map(c -> new StructField(c.name(), c.type(), true, c.metadata()))
                .toArray(StructField[]::new));
    }

    public Row encode(T record) {
        Object[] values = new Object[columns.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = columns.get(i).value().apply(record);
        }
        return RowFactory.create(values);
    }

    public Dataset<Row> frame(SparkSession spark, JavaRDD<T> records) {
        return spark.createDataFrame(records.map(this::encode), schema());
    }
}
