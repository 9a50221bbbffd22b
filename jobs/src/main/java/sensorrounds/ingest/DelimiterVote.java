package sensorrounds.ingest;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.proposal.Decision;

/** Which character stands between the fields: the one with which the lines have as many fields as the header. */
final class DelimiterVote {
    private static final String CANDIDATES = ",;\t|";
    private static final int LINES_LOOKED_AT = 500;
    private static final int FEWEST_COLUMNS = 3;

    private DelimiterVote() {}

    /**
     * @return null when no character cuts nine of ten lines into as many fields as the first
     */
    static Decision of(String text) {
        Decision best = null;
        int mostColumns = 0;
        for (char delimiter : CANDIDATES.toCharArray()) {
            List<Integer> widths = widths(text, delimiter);
            int columns = widths.isEmpty() ? 0 : widths.get(0);
            long same = widths.stream().skip(1).filter(w -> w == columns).count();
            long others = widths.size() - 1 - same;
            if (columns >= FEWEST_COLUMNS && columns > mostColumns && others * 10 <= same) {
                mostColumns = columns;
                best = new Decision(
                        "delimiter",
                        String.valueOf(delimiter),
                        same,
                        others,
                        "lines with " + columns + " fields, as many as the header",
                        null,
                        null);
            }
        }
        return best;
    }

    private static List<Integer> widths(String text, char delimiter) {
        List<Integer> widths = new ArrayList<>();
        try (Reader in = new StringReader(text);
                CsvReader<CsvRecord> csv = CsvRows.reader(in, delimiter)) {
            for (CsvRecord line : csv) {
                boolean blank = line.getFields().stream().allMatch(String::isBlank);
                if (!blank) {
                    widths.add(line.getFieldCount());
                }
                if (widths.size() > LINES_LOOKED_AT) {
                    break;
                }
            }
        } catch (CsvParseException e) {
            // A quote that does not end, perhaps since the sample is cut: what was read so far counts.
            return widths;
        } catch (IOException e) {
            throw new IllegalStateException("reading from memory", e);
        }
        return widths;
    }
}
