package sensorrounds.tables;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import org.apache.spark.sql.catalyst.InternalRow;
import org.apache.spark.unsafe.types.UTF8String;

/**
 * A row as Spark has it inside, which spares making an object of every value twice. Texts that come again, and nearly all
 * in a log do, are made into a string once; so one of these serves many rows, one after the other.
 */
final class InnerRow implements RowCursor {
    /** Texts remembered; a power of two. */
    private static final int REMEMBERED = 1 << 12;

    private static final long MICROS = 1_000_000;
    private static final int NANOS = 1000;

    private final UTF8String[] texts = new UTF8String[REMEMBERED];
    private final String[] strings = new String[REMEMBERED];
    private final Map<Class<?>, Map<UTF8String, Enum<?>>> words = new HashMap<>();
    private InternalRow row;
    private int at;

    InnerRow on(InternalRow next, int from) {
        row = next;
        at = from;
        return this;
    }

    @Override
    public String text() {
        int column = at++;
        if (row.isNullAt(column)) {
            return null;
        }
        UTF8String text = row.getUTF8String(column);
        int slot = text.hashCode() & REMEMBERED - 1;
        if (!text.equals(texts[slot])) {
            // The text's bytes may be those of a buffer that Spark fills anew.
            texts[slot] = text.copy();
            strings[slot] = text.toString();
        }
        return strings[slot];
    }

    @Override
    public Double number() {
        int column = at++;
        return row.isNullAt(column) ? null : (Double) row.getDouble(column);
    }

    @Override
    public Integer whole() {
        int column = at++;
        return row.isNullAt(column) ? null : (Integer) row.getInt(column);
    }

    @Override
    public Long count() {
        int column = at++;
        return row.isNullAt(column) ? null : (Long) row.getLong(column);
    }

    @Override
    public LocalDate day() {
        int column = at++;
        return row.isNullAt(column) ? null : LocalDate.ofEpochDay(row.getInt(column));
    }

    @Override
    public LocalDateTime time() {
        int column = at++;
        if (row.isNullAt(column)) {
            return null;
        }
        long micros = row.getLong(column);
        return LocalDateTime.ofEpochSecond(
                Math.floorDiv(micros, MICROS), (int) Math.floorMod(micros, MICROS) * NANOS, ZoneOffset.UTC);
    }

    @Override
    public Boolean flag() {
        int column = at++;
        return row.isNullAt(column) ? null : (Boolean) row.getBoolean(column);
    }

    @Override
    public <E extends Enum<E>> E word(Class<E> type) {
        int column = at++;
        if (row.isNullAt(column)) {
            return null;
        }
        UTF8String text = row.getUTF8String(column);
        Enum<?> word = words.computeIfAbsent(type, InnerRow::words).get(text);
        return word == null ? Enum.valueOf(type, text.toString()) : type.cast(word);
    }

    private static Map<UTF8String, Enum<?>> words(Class<?> type) {
        Map<UTF8String, Enum<?>> words = new HashMap<>();
        for (Object constant : type.getEnumConstants()) {
            Enum<?> word = (Enum<?>) constant;
            words.put(UTF8String.fromString(word.name()), word);
        }
        return words;
    }
}
