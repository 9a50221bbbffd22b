package sensorrounds.ingest;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.zip.GZIPInputStream;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.proposal.Decision;
import sensorrounds.proposal.Sample;

/** Reads the beginning of files whose layout is not known, as rows of texts. */
public final class SampleReader {
    /** Enough for tens of thousands of rows, and little enough to hold. */
    private static final int MOST_BYTES = 16 << 20;

    static final int MOST_ROWS = 50_000;

    private final Configuration hadoop;

    public SampleReader(Configuration hadoop) {
        this.hadoop = hadoop;
    }

    /**
     * A sample and the form it was read in.
     *
     * @param format word for the form of the files
     * @param encoding decision on the encoding; null where the form has none of its own
     * @param delimiter decision on the delimiter; null where there is none
     * @param leftOut sheets with another header, which were not looked at
     */
    public record Cut(
            Sample sample, LogFile.Format format, Decision encoding, Decision delimiter, List<String> leftOut) {
        /** Decisions on the form of the bytes, in the order of the mapping file. */
        public List<Decision> form() {
            return delimiter == null ? List.of() : List.of(delimiter, encoding);
        }
    }

    /**
     * @param files at least one; of one layout, so with one header
     * @throws RefusedInput for a file that cannot be read, is no table, or has another header than the first
     */
    public Cut read(List<String> files) {
        Cut whole = null;
        List<List<String>> rows = new ArrayList<>();
        for (String file : files) {
            Cut cut = read(file);
            if (whole != null && !whole.sample().headers().equals(cut.sample().headers())) {
                throw new RefusedInput(
                        "files of two layouts",
                        file,
                        "another header than in " + files.get(0),
                        "files of one technician with one header",
                        "call the command for each layout");
            }
            if (whole != null && whole.format() != cut.format()) {
                throw new RefusedInput(
                        "files of two forms",
                        file,
                        "." + cut.format().word() + " beside ." + whole.format().word(),
                        "files of one form",
                        "call the command for one form; the layout then reads the other one too");
            }
            // Bytes above 127 in any of the files show more than a file without them.
            boolean shown = whole == null
                    || whole.encoding() == null
                    || whole.encoding().inFavour() == 0;
            whole = whole == null
                    ? cut
                    : new Cut(
                            cut.sample(),
                            cut.format(),
                            shown ? cut.encoding() : whole.encoding(),
                            cut.delimiter(),
                            whole.leftOut());
            rows.addAll(cut.sample().rows());
        }
        return new Cut(
                new Sample(whole.sample().headers(), rows, whole.sample().whole()),
                whole.format(),
                whole.encoding(),
                whole.delimiter(),
                whole.leftOut());
    }

    private Cut read(String file) {
        String lower = file.toLowerCase(Locale.ROOT);
        if (lower.endsWith(".xlsx") || lower.endsWith(".xlsm") || lower.endsWith(".parquet")) {
            return TypedSamples.read(file, hadoop);
        }
        if (!lower.endsWith(".csv") && !lower.endsWith(".csv.gz") && !lower.endsWith(".txt")) {
            throw new RefusedInput(
                    "not a table",
                    file,
                    null,
                    "a name ending in .csv, .csv.gz, .txt, .xlsx or .parquet",
                    "save the file as .xlsx, or export it as CSV; JSON lines are read in the canonical form only (docs/visit-log.md)");
        }
        byte[] bytes;
        try (InputStream raw = LogStreams.open(file, hadoop);
                InputStream plain = lower.endsWith(".gz") ? new GZIPInputStream(raw) : raw) {
            bytes = plain.readNBytes(MOST_BYTES + 1);
        } catch (IOException e) {
            throw new RefusedInput(
                    "a file cannot be read",
                    file,
                    e.getMessage(),
                    "a readable file",
                    "check the path and its permissions");
        }
        if (bytes.length == 0) {
            throw LogFiles.empty(file);
        }
        boolean cut = bytes.length > MOST_BYTES;
        Decision encoding = EncodingVote.of(bytes, cut);
        String text = new String(bytes, Charset.forName(encoding.value()));
        text = text.startsWith("\uFEFF") ? text.substring(1) : text;
        // The last line may be cut in its middle.
        text = cut ? text.substring(0, text.lastIndexOf('\n') + 1) : text;
        Decision delimiter = DelimiterVote.of(text);
        if (delimiter == null) {
            throw new RefusedInput(
                    "no table with a header",
                    file,
                    null,
                    "a first line with three or more column names, and under it lines with as many fields, between"
                            + " commas, semicolons, tabs or bars",
                    "take out titles above the header; write one line per wheel with the visit's columns repeated");
        }
        return new Cut(
                sample(text, delimiter.value().charAt(0), cut, file),
                LogFile.Format.CSV,
                encoding,
                delimiter,
                List.of());
    }

    private static Sample sample(String text, char delimiter, boolean cut, String file) {
        List<List<String>> rows = new ArrayList<>();
        List<String> headers = null;
        boolean whole = !cut;
        try (CsvReader<CsvRecord> csv = CsvRows.reader(new StringReader(text), delimiter)) {
            for (CsvRecord line : csv) {
                if (headers == null) {
                    headers = line.getFields().stream().map(String::strip).toList();
                } else if (rows.size() == MOST_ROWS) {
                    whole = false;
                    break;
                } else if (!line.getFields().stream().allMatch(String::isBlank)) {
                    rows.add(line.getFields());
                }
            }
        } catch (CsvParseException e) {
            // Whole lines before the quote that does not end are a sample still.
            whole = false;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (rows.isEmpty()) {
            throw withoutRows(file);
        }
        return new Sample(headers, rows, whole);
    }

    static RefusedInput withoutRows(String file) {
        return new RefusedInput(
                "a header without rows", file, null, "some rows to learn from", "name a file with visits in it");
    }
}
