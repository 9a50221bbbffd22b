package sensorrounds.intake;

import sensorrounds.visit.Source;

/**
 * What one line, or one wheel of a nested visit, says: texts by canonical field, untouched. The reader of a file format
 * is the only one to implement it.
 */
public interface RawRecord {
    /** @return the text as written, or null when the record has none for this field */
    String get(Field field);

    Source source();

    /** The record as it stands in the file, for quarantine; may be rebuilt from its fields. */
    String text();

    /**
     * The fields whose values the file itself holds as numbers, as bits by {@link Field#ordinal}. Their texts have a decimal
     * point, whatever the layout says of those that were typed as text.
     */
    default long numbers() {
        return 0;
    }

    /** The fields whose values the file itself holds as days or times, as bits; their texts are ISO 8601. */
    default long days() {
        return 0;
    }

    /** True when the record has names that only a later minor version of the contract knows, which were left out. */
    default boolean hasLaterNames() {
        return false;
    }

    /** @return what the file reader already found wrong with this record, or null */
    default FieldProblem problem() {
        return null;
    }
}
