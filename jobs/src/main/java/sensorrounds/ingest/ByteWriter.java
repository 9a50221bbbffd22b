package sensorrounds.ingest;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;

/** A growing array of bytes with the few kinds of value that blocks are made of; every kind but the numbers may be null. */
final class ByteWriter {
    private static final int MORE = 0x80;

    private byte[] bytes = new byte[512];
    private int size;

    byte[] take() {
        byte[] taken = Arrays.copyOf(bytes, size);
        size = 0;
        return taken;
    }

    void number(long value) {
        long left = value;
        room(10);
        while ((left & ~0x7FL) != 0) {
            bytes[size++] = (byte) (left & 0x7F | MORE);
            left >>>= 7;
        }
        bytes[size++] = (byte) left;
    }

    void text(String value) {
        if (value == null) {
            number(0);
            return;
        }
        byte[] utf8 = value.getBytes(StandardCharsets.UTF_8);
        number(utf8.length + 1L);
        room(utf8.length);
        System.arraycopy(utf8, 0, bytes, size, utf8.length);
        size += utf8.length;
    }

    void decimal(Double value) {
        number(value == null ? 0 : 1);
        if (value != null) {
            long bits = Double.doubleToRawLongBits(value);
            room(Long.BYTES);
            for (int shift = 0; shift < Long.SIZE; shift += Byte.SIZE) {
                bytes[size++] = (byte) (bits >>> shift);
            }
        }
    }

    /** A number that is not negative. */
    void whole(Integer value) {
        number(value == null ? 0 : value + 1L);
    }

    void flag(Boolean value) {
        number(value == null ? 0 : value ? 1 : 2);
    }

    /** By its place in the enum: a block is read again only by the code that wrote it, see {@link ReaderVersion}. */
    void word(Enum<?> value) {
        number(value == null ? 0 : value.ordinal() + 1L);
    }

    void day(LocalDate value) {
        number(value == null ? 0 : value.toEpochDay() + 1);
    }

    private void room(int more) {
        if (size + more > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(size + more, bytes.length * 2));
        }
    }
}
