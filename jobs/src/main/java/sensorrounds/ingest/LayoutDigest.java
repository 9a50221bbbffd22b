package sensorrounds.ingest;

import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.zip.CRC32;
import java.util.zip.CRC32C;
import sensorrounds.intake.Layout;

/** A short word for what a layout says, equal for equal layouts in any process. Every component of the record takes part. */
final class LayoutDigest {
    private LayoutDigest() {}

    static String of(Layout layout) {
        byte[] text = text(layout).getBytes(StandardCharsets.UTF_8);
        CRC32 crc = new CRC32();
        crc.update(text);
        CRC32C castagnoli = new CRC32C();
        castagnoli.update(text);
        return String.format("%08x%08x", crc.getValue(), castagnoli.getValue());
    }

    /** Sets and maps are put in order, since their own differs from one JVM to the next. */
    private static String text(Object value) {
        if (value instanceof Map<?, ?> map) {
            TreeMap<String, String> ordered = new TreeMap<>();
            map.forEach((key, entry) -> ordered.put(text(key), text(entry)));
            return ordered.toString();
        }
        if (value instanceof Collection<?> collection) {
            return collection.stream().map(LayoutDigest::text).sorted().collect(Collectors.joining(",", "[", "]"));
        }
        if (value instanceof Enum<?> word) {
            return word.name();
        }
        if (value == null || !value.getClass().isRecord()) {
            String plain = String.valueOf(value);
            return value == null ? "null" : plain.length() + ":" + plain;
        }
        StringBuilder parts = new StringBuilder(value.getClass().getSimpleName()).append('(');
        for (RecordComponent part : value.getClass().getRecordComponents()) {
            try {
                parts.append(part.getName())
                        .append('=')
                        .append(text(part.getAccessor().invoke(value)))
                        .append(';');
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException("cannot read " + part + " of a layout", e);
            }
        }
        return parts.append(')').toString();
    }
}
