package sensorrounds.proposal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import sensorrounds.intake.Field;
import sensorrounds.intake.FieldTrial;
import sensorrounds.intake.IdForm;

/** How many rows of a column have texts that could be values of a field. */
final class FieldFit {
    private static final Pattern VIN = Pattern.compile("[A-HJ-NPR-Za-hj-npr-z0-9]{17}");
    private static final Pattern DIGIT_PLACE = Pattern.compile("[1-9]");

    private final FieldTrial plain;
    private final FieldTrial hex = Trials.ids(IdForm.CANONICAL);
    private final FieldTrial decimal = Trials.ids(new IdForm(IdForm.Base.DECIMAL, null));
    private final Map<Column, DateVote> dates = new HashMap<>();

    FieldFit(List<Column> columns, char decimalMark) {
        this.plain = Trials.decimalMark(decimalMark);
        for (Column column : columns) {
            dates.put(column, DateVote.of(column));
        }
    }

    /** How the column writes dates; null when it has none. */
    DateVote dates(Column column) {
        return dates.get(column);
    }

    int rows(Column column, Field field) {
        if (FieldKinds.DATES.contains(field)) {
            DateVote vote = dates.get(column);
            int serials = column.rows(DateVote::isSerial);
            int read = vote == null ? 0 : (int) Math.round((double) column.written() * vote.read() / vote.of());
            return Math.max(serials, read);
        }
        return column.rows(text -> takes(field, text));
    }

    boolean takes(Field field, String text) {
        if (FieldKinds.FREE.contains(field)) {
            return true;
        }
        if (FieldKinds.IDS.contains(field)) {
            return hex.takes(field, text) || decimal.takes(field, text);
        }
        if (field == Field.VIN) {
            return VIN.matcher(text).matches();
        }
        if (field == Field.POSITION) {
            return plain.takes(field, text)
                    || PositionWords.isSpare(text)
                    || DIGIT_PLACE.matcher(text).matches()
                    || PositionWords.schemes().stream()
                            .anyMatch(s -> !s.places(text).isEmpty());
        }
        if (FieldKinds.WORDS.contains(field)) {
            return plain.takes(field, text) || WordHints.of(field, text) != null;
        }
        return plain.takes(field, text);
    }
}
