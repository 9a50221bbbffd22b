package sensorrounds.intake;

import java.io.Serializable;
import sensorrounds.visit.Source;
import sensorrounds.visit.WheelPosition;

/**
 * A row in quarantine: one that was read and counted but not used.
 *
 * @param visitId key of the visit as written; null when it could not be read
 * @param vehicleId key of the vehicle as written; null when it could not be read
 * @param position word for the wheel as written; null when the whole visit is at fault
 * @param field canonical name of the field at fault; null when the whole row is
 * @param rawValue its value as written, of a personal field its shape only, cut to {@value #VALUE_LIMIT} characters; null for none
 * @param expected what would have been right, in words
 * @param remedy the way out, in words
 * @param rawText the row as it stands in the file, cut to {@value #TEXT_LIMIT} characters
 */
public record Rejection(
        Source source,
        String visitId,
        String vehicleId,
        String position,
        String field,
        String rawValue,
        RejectionRule rule,
        String expected,
        String remedy,
        String rawText)
        implements ParsedRow, Serializable {
    /** Longest value kept. */
    public static final int VALUE_LIMIT = 200;
    /** Longest row kept. */
    public static final int TEXT_LIMIT = 2000;

    public Rejection {
        rawValue = cut(rawValue, VALUE_LIMIT);
        rawText = cut(rawText, TEXT_LIMIT);
        visitId = cut(visitId, VALUE_LIMIT);
        vehicleId = cut(vehicleId, VALUE_LIMIT);
        position = cut(position, VALUE_LIMIT);
        field = cut(field, VALUE_LIMIT);
    }

    static Rejection of(FieldProblem problem, RawRecord visit, RawRecord wheel) {
        RawRecord row = wheel == null ? visit : wheel;
        boolean personal = problem.field() != null
                && Field.of(problem.field()).filter(Field::isPersonal).isPresent();
        return new Rejection(
                row.source(),
                visit.get(Field.VISIT_ID),
                visit.get(Field.VEHICLE_ID),
                wheel == null ? null : wheel.get(Field.POSITION),
                problem.field(),
                personal ? TextShape.of(problem.rawValue()) : problem.rawValue(),
                problem.rule(),
                problem.expected(),
                problem.rule().remedy(),
                row.text());
    }

    /**
     * The same without anything that may be personal: where columns have slipped, a plate or a name stands in any field. What
     * is left is the shape of the texts, and file and line, under which whoever may read the log finds them.
     */
    public Rejection masked() {
        return new Rejection(
                source,
                visitId,
                vehicleId,
                WheelPosition.parse(position == null ? "" : position).isPresent() ? position : TextShape.of(position),
                field,
                TextShape.of(rawValue),
                rule,
                expected,
                remedy,
                null);
    }

    private static String cut(String text, int limit) {
        return text == null || text.length() <= limit ? text : text.substring(0, limit - 1) + "…";
    }
}
