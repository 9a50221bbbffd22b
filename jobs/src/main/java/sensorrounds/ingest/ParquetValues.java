package sensorrounds.ingest;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.UUID;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.schema.LogicalTypeAnnotation;
import org.apache.parquet.schema.LogicalTypeAnnotation.DateLogicalTypeAnnotation;
import org.apache.parquet.schema.LogicalTypeAnnotation.DecimalLogicalTypeAnnotation;
import org.apache.parquet.schema.LogicalTypeAnnotation.IntLogicalTypeAnnotation;
import org.apache.parquet.schema.LogicalTypeAnnotation.TimeLogicalTypeAnnotation;
import org.apache.parquet.schema.LogicalTypeAnnotation.TimeUnit;
import org.apache.parquet.schema.LogicalTypeAnnotation.TimestampLogicalTypeAnnotation;
import org.apache.parquet.schema.LogicalTypeAnnotation.UUIDLogicalTypeAnnotation;
import org.apache.parquet.schema.PrimitiveType;
import sensorrounds.workbook.Cell;

/**
 * Single values of a Parquet record as texts of the canonical form, by their types (Apache Parquet, LogicalTypes.md). A time
 * that is kept as an instant keeps its {@code Z}: what the clock at the place showed is no longer known.
 */
final class ParquetValues {
    /** Above this a double no longer holds every whole number of fifteen digits and more. */
    private static final double SURE = 1e15;

    private static final long JULIAN_DAY_OF_EPOCH = 2_440_588;
    private static final long SECONDS_A_DAY = 24L * 60 * 60;

    private ParquetValues() {}

    /** @return the value of a field of single values that is there */
    static Cell of(Group group, int field, int index, PrimitiveType type) {
        LogicalTypeAnnotation meaning = type.getLogicalTypeAnnotation();
        return switch (type.getPrimitiveTypeName()) {
            case BOOLEAN -> new Cell(Cell.Kind.FLAG, String.valueOf(group.getBoolean(field, index)));
            case INT32 -> whole(group.getInteger(field, index), 32, meaning);
            case INT64 -> whole(group.getLong(field, index), 64, meaning);
            // Through its own shortest text: widened to a double, 7.3 would be 7.300000190734863.
            case FLOAT -> number(Float.toString(group.getFloat(field, index)), group.getFloat(field, index));
            case DOUBLE -> number(Double.toString(group.getDouble(field, index)), group.getDouble(field, index));
            case INT96 -> instant96(group.getInt96(field, index));
            default -> bytes(group.getBinary(field, index), meaning);
        };
    }

    private static Cell whole(long value, int bits, LogicalTypeAnnotation meaning) {
        if (meaning instanceof DateLogicalTypeAnnotation) {
            return new Cell(Cell.Kind.DAY, LocalDate.ofEpochDay(value).toString());
        }
        if (meaning instanceof TimestampLogicalTypeAnnotation time) {
            return time(value, time.getUnit(), time.isAdjustedToUTC());
        }
        if (meaning instanceof TimeLogicalTypeAnnotation time) {
            return new Cell(
                    Cell.Kind.TEXT,
                    LocalTime.ofNanoOfDay(Math.floorMod(nanos(value, time.getUnit()), SECONDS_A_DAY * 1_000_000_000L))
                            .toString());
        }
        if (meaning instanceof DecimalLogicalTypeAnnotation decimal) {
            return decimal(BigInteger.valueOf(value), decimal.getScale());
        }
        boolean unsigned = meaning instanceof IntLogicalTypeAnnotation of && !of.isSigned();
        return new Cell(
                Cell.Kind.NUMBER,
                !unsigned
                        ? Long.toString(value)
                        : bits == 32 ? Integer.toUnsignedString((int) value) : Long.toUnsignedString(value));
    }

    private static long nanos(long value, TimeUnit unit) {
        return value * perUnit(unit);
    }

    /** Nanoseconds in a unit. */
    private static long perUnit(TimeUnit unit) {
        return switch (unit) {
            case MILLIS -> 1_000_000L;
            case MICROS -> 1_000L;
            case NANOS -> 1L;
        };
    }

    private static Cell time(long value, TimeUnit unit, boolean instant) {
        long perSecond = 1_000_000_000L / perUnit(unit);
        return time(Math.floorDiv(value, perSecond), Math.floorMod(value, perSecond) * perUnit(unit), instant);
    }

    private static Cell time(long seconds, long nanos, boolean instant) {
        LocalDateTime time = LocalDateTime.ofInstant(Instant.ofEpochSecond(seconds, nanos), ZoneOffset.UTC);
        return new Cell(Cell.Kind.DAY, time + (instant ? "Z" : ""));
    }

    /** The old form of an instant: nanoseconds of the day, and the day by its Julian number. */
    private static Cell instant96(Binary bytes) {
        ByteBuffer buffer = bytes.toByteBuffer().order(ByteOrder.LITTLE_ENDIAN);
        long nanos = buffer.getLong();
        long day = buffer.getInt() - JULIAN_DAY_OF_EPOCH;
        return time(day * SECONDS_A_DAY, nanos, true);
    }

    private static Cell number(String shortest, double value) {
        if (Double.isNaN(value) || Double.isInfinite(value)) {
            return new Cell(Cell.Kind.TEXT, shortest);
        }
        boolean plain = Math.abs(value) < SURE;
        return new Cell(Cell.Kind.NUMBER, plain ? plain(new BigDecimal(shortest)) : shortest.replace("E", "E+"));
    }

    private static Cell decimal(BigInteger unscaled, int scale) {
        return new Cell(Cell.Kind.NUMBER, plain(new BigDecimal(unscaled, scale)));
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    private static Cell bytes(Binary bytes, LogicalTypeAnnotation meaning) {
        if (meaning instanceof DecimalLogicalTypeAnnotation decimal) {
            return decimal(new BigInteger(bytes.getBytes()), decimal.getScale());
        }
        if (meaning instanceof UUIDLogicalTypeAnnotation) {
            ByteBuffer buffer = bytes.toByteBuffer();
            return new Cell(Cell.Kind.TEXT, new UUID(buffer.getLong(), buffer.getLong()).toString());
        }
        // Older writers leave out that their bytes are text; what is none shows by its replacement characters.
        return new Cell(Cell.Kind.TEXT, new String(bytes.getBytes(), StandardCharsets.UTF_8));
    }
}
