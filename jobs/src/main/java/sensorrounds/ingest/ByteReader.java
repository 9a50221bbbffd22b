package sensorrounds.ingest;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;

/** Reads what {@link ByteWriter} wrote, in the same order. */
final class ByteReader {
    private final byte[] bytes;
    private int at;

    ByteReader(byte[] bytes) {
        this.bytes = bytes;
    }

    long number() {
        long value = 0;
        int shift = 0;
        byte next = bytes[at++];
        while (next < 0) {
            value |= (next & 0x7FL) << shift;
            shift += 7;
            next = bytes[at++];
        }
        return value | (long) next << shift;
    }

    String text() {
        int length = (int) number() - 1;
        if (length < 0) {
            return null;
        }
        String text = new String(bytes, at, length, StandardCharsets.UTF_8);
        at += length;
        return text;
    }

    Double decimal() {
        if (number() == 0) {
            return null;
        }
        long bits = 0;
        for (int shift = 0; shift < Long.SIZE; shift += Byte.SIZE) {
            bits |= (bytes[at++] & 0xFFL) << shift;
        }
        return Double.longBitsToDouble(bits);
    }

    Integer whole() {
        long value = number();
        return value == 0 ? null : (int) (value - 1);
    }

    Boolean flag() {
        long value = number();
        return value == 0 ? null : value == 1;
    }

    <E extends Enum<E>> E word(E[] values) {
        int value = (int) number();
        return value == 0 ? null : values[value - 1];
    }

    LocalDate day() {
        long value = number();
        return value == 0 ? null : LocalDate.ofEpochDay(value - 1);
    }
}
