package sensorrounds.workbook;

import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.zip.CRC32;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/**
 * The parts of a workbook, which is a zip archive (ECMA-376 part 2). Each is unpacked as it is read, and no further than
 * any workbook goes: an archive of some kilobytes can be made to unpack to terabytes.
 */
final class ZipParts implements Closeable {
    /** A full sheet, a million rows of fifty columns, unpacks to about this much. */
    private static final long MOST_BYTES = 4L << 30;
    /** Sheets unpack to ten or thirty times their size; a part may repeat itself more, as long as it stays small. */
    private static final long MOST_RATIO = 250;

    private static final long SMALL_BYTES = 64L << 20;
    private static final byte[] OLE_MAGIC = {
        (byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, (byte) 0xA1, (byte) 0xB1, 0x1A, (byte) 0xE1
    };

    private final ZipFile zip;
    private final Map<String, ZipArchiveEntry> entries = new HashMap<>();

    private ZipParts(ZipFile zip) {
        this.zip = zip;
        // Part names are compared without regard to capitals (ECMA-376 part 2, 6.2.2.3).
        zip.getEntries().asIterator().forEachRemaining(e -> entries.put(key(e.getName()), e));
    }

    /** @throws WorkbookProblem for what is no zip archive, each with its own way out */
    static ZipParts of(byte[] bytes) throws IOException {
        if (startsWith(bytes, OLE_MAGIC)) {
            throw contains(bytes, "EncryptedPackage")
                    ? new WorkbookProblem(
                            "a workbook with a password",
                            null,
                            "a workbook that opens without a password",
                            "save it without a password, or export the sheet as CSV")
                    : new WorkbookProblem(
                            "a workbook of the old binary form (.xls)",
                            null,
                            "the form .xlsx",
                            "open it with a spreadsheet program and save it as .xlsx, or export the sheet as CSV");
        }
        if (!startsWith(bytes, new byte[] {'P', 'K'})) {
            throw new WorkbookProblem(
                    "not a workbook",
                    null,
                    "a file of the form .xlsx, which a spreadsheet program writes",
                    "name it by what it is, such as .csv, or save it as .xlsx");
        }
        try {
            return new ZipParts(ZipFile.builder()
                    .setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes))
                    .get());
        } catch (IOException | IllegalArgumentException e) {
            throw WorkbookProblem.damaged(e.getMessage());
        }
    }

    private static boolean startsWith(byte[] bytes, byte[] magic) {
        return bytes.length >= magic.length && Arrays.equals(bytes, 0, magic.length, magic, 0, magic.length);
    }

    /** True when the text stands in a compound file, which writes names in UTF-16. */
    private static boolean contains(byte[] bytes, String text) {
        for (int at = 0; at + 2 * text.length() <= bytes.length; at++) {
            int i = 0;
            while (i < text.length() && bytes[at + 2 * i] == text.charAt(i) && bytes[at + 2 * i + 1] == 0) {
                i++;
            }
            if (i == text.length()) {
                return true;
            }
        }
        return false;
    }

    private static String key(String name) {
        return (name.startsWith("/") ? name.substring(1) : name).toLowerCase(Locale.ROOT);
    }

    boolean has(String name) {
        return entries.containsKey(key(name));
    }

    /** @throws WorkbookProblem when there is no such part */
    InputStream open(String name) throws IOException {
        ZipArchiveEntry entry = entries.get(key(name));
        if (entry == null) {
            throw WorkbookProblem.damaged("no part " + name);
        }
        if (!zip.canReadEntryData(entry)) {
            throw WorkbookProblem.damaged(name + " is packed in a way that is not read");
        }
        InputStream in = zip.getInputStream(entry);
        return in == null ? new ByteArrayInputStream(new byte[0]) : new Guarded(in, entry);
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }

    /** Holds what is unpacked against the limits, and at the end against its checksum. */
    private static final class Guarded extends FilterInputStream {
        private final ZipArchiveEntry entry;
        private final CRC32 crc = new CRC32();
        private long bytes;

        Guarded(InputStream in, ZipArchiveEntry entry) {
            super(in);
            this.entry = entry;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int size = in.read(buffer, offset, length);
            if (size < 0) {
                if (crc.getValue() != entry.getCrc()) {
                    throw WorkbookProblem.damaged("the checksum of " + entry.getName() + " does not agree");
                }
                return size;
            }
            crc.update(buffer, offset, size);
            bytes += size;
            boolean swollen = bytes > SMALL_BYTES && bytes > MOST_RATIO * Math.max(1, entry.getCompressedSize());
            if (bytes > MOST_BYTES || swollen) {
                throw new WorkbookProblem(
                        "a workbook that unpacks to more than any sheet holds",
                        entry.getName() + ": " + entry.getCompressedSize() + " bytes packed, more than " + bytes
                                + " unpacked",
                        "at most " + MOST_RATIO + " times its size, and " + (MOST_BYTES >> 30) + " GB",
                        "export the sheet as CSV; do not open a file of unknown origin");
            }
            return size;
        }
    }
}
