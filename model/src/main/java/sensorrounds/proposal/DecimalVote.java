package sensorrounds.proposal;

import java.util.List;
import java.util.regex.Pattern;

/** Which mark stands before the decimals: counted over all figures that show it. */
final class DecimalVote {
    /** Three decimals may be thousands: 12,345 shows nothing. */
    private static final String FORM = "[-+]?\\d+%s(\\d{1,2}|\\d{4,})";

    private static final Pattern POINT = Pattern.compile(String.format(FORM, "\\."));
    private static final Pattern COMMA = Pattern.compile(String.format(FORM, ","));

    private DecimalVote() {}

    static Decision of(List<Column> columns) {
        long points = 0;
        long commas = 0;
        String point = null;
        String comma = null;
        for (Column column : columns) {
            points += column.rows(t -> POINT.matcher(t).matches());
            commas += column.rows(t -> COMMA.matcher(t).matches());
            point = point != null ? point : column.first(t -> POINT.matcher(t).matches());
            comma = comma != null ? comma : column.first(t -> COMMA.matcher(t).matches());
        }
        String entry = "decimalMark";
        if (points == 0 && commas == 0) {
            return Decision.sure(entry, ".", 0, 0, "no figure has decimals, so that either mark reads them", null);
        }
        boolean isComma = commas > points;
        long most = Math.max(points, commas);
        long least = Math.min(points, commas);
        String basis = "figures with decimals after this mark, against figures after the other";
        if (least * 20 > most) {
            return Decision.open(
                    entry,
                    most + least,
                    "figures with decimals: " + points + " after a point (" + point + "), " + commas
                            + " after a comma (" + comma + ")",
                    null,
                    "which of the two is the decimal mark? The file has both");
        }
        return Decision.sure(entry, isComma ? "," : ".", most, least, basis, isComma ? comma : point);
    }
}
