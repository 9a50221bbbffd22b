package sensorrounds.tables;

import java.io.Serializable;
import java.util.function.Function;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.Metadata;
import org.apache.spark.sql.types.MetadataBuilder;
import sensorrounds.visit.WheelPosition;

/**
 * One column of a stored table.
 *
 * @param meaning what it holds, with its unit and what null means
 * @param value how it is read off the record; null for no value
 */
public record Column<T>(String name, DataType type, String meaning, Getter<T> value) implements Serializable {
    /** A function that can travel to the executors. */
    @FunctionalInterface
    public interface Getter<T> extends Function<T, Object>, Serializable {}

    public Metadata metadata() {
        return new MetadataBuilder().putString("comment", meaning).build();
    }

    public static <T> Column<T> text(String name, String meaning, Getter<T> value) {
        return new Column<>(name, DataTypes.StringType, meaning, value);
    }

    /** Text of an enum constant's name. */
    public static <T> Column<T> word(String name, String meaning, Getter<T> value) {
        return new Column<>(name, DataTypes.StringType, meaning, r -> {
            Object v = value.apply(r);
            return v == null ? null : ((Enum<?>) v).name();
        });
    }

    /** Text of a wheel's place; null for none. */
    public static <T> Column<T> place(String name, String meaning, Getter<T> value) {
        return new Column<>(name, DataTypes.StringType, meaning, r -> {
            Object v = value.apply(r);
            return v == null ? null : ((WheelPosition) v).code();
        });
    }

    public static <T> Column<T> number(String name, String meaning, Getter<T> value) {
        return new Column<>(name, DataTypes.DoubleType, meaning, r -> {
            Object v = value.apply(r);
            return v instanceof Double d && d.isNaN() ? null : v;
        });
    }

    public static <T> Column<T> whole(String name, String meaning, Getter<T> value) {
        return new Column<>(name, DataTypes.IntegerType, meaning, value);
    }

    public static <T> Column<T> count(String name, String meaning, Getter<T> value) {
        return new Column<>(name, DataTypes.LongType, meaning, value);
    }

    public static <T> Column<T> day(String name, String meaning, Getter<T> value) {
        return new Column<>(name, DataTypes.DateType, meaning, value);
    }

    public static <T> Column<T> flag(String name, String meaning, Getter<T> value) {
        return new Column<>(name, DataTypes.BooleanType, meaning, value);
    }
}
