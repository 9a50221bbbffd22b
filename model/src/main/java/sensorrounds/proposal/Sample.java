package sensorrounds.proposal;

import java.util.List;

/**
 * The first rows of files whose layout is not known, cut into fields.
 *
 * @param headers names of the columns, without spaces around them; as many as the longest row may have
 * @param rows the rows, blank ones left out; shorter ones lack their last fields
 * @param whole true when there are no more rows in the files
 */
public record Sample(List<String> headers, List<List<String>> rows, boolean whole) {
    public Sample {
        headers = List.copyOf(headers);
        rows = List.copyOf(rows);
    }
}
