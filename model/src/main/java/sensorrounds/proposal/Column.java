package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** One column of a sample: its distinct texts, in the order of their first row, and how many rows have each. */
final class Column {
    private final String header;
    private final List<String> texts;
    private final Map<String, Integer> counts;
    private final int written;

    private Column(String header, List<String> texts, Map<String, Integer> counts, int written) {
        this.header = header;
        this.texts = texts;
        this.counts = Collections.unmodifiableMap(counts);
        this.written = written;
    }

    static List<Column> of(Sample sample) {
        List<Column> columns = new ArrayList<>();
        for (int c = 0; c < sample.headers().size(); c++) {
            List<String> texts = new ArrayList<>();
            Map<String, Integer> counts = new LinkedHashMap<>();
            int written = 0;
            for (List<String> row : sample.rows()) {
                String text = c < row.size() ? row.get(c).strip() : "";
                texts.add(text);
                if (!text.isEmpty()) {
                    counts.merge(text, 1, Integer::sum);
                    written++;
                }
            }
            columns.add(new Column(sample.headers().get(c), texts, counts, written));
        }
        return columns;
    }

    String header() {
        return header;
    }

    int rowCount() {
        return texts.size();
    }

    /** The text of a row; empty for a blank. */
    String text(int row) {
        return texts.get(row);
    }

    /** Distinct texts and their rows, blanks left out. */
    Map<String, Integer> counts() {
        return counts;
    }

    /** Rows that are not blank. */
    int written() {
        return written;
    }

    /** Rows whose text fits. */
    int rows(Predicate<String> fits) {
        return counts.entrySet().stream()
                .filter(e -> fits.test(e.getKey()))
                .mapToInt(Map.Entry::getValue)
                .sum();
    }

    /** @return the first text that fits, or null */
    String first(Predicate<String> fits) {
        return counts.keySet().stream().filter(fits).findFirst().orElse(null);
    }
}
