package sensorrounds.intake;

/**
 * What single values say about the form of their file, counted so that a doubt can be raised about the file as a whole.
 * Counted in rows, per file; parts of a file add up.
 */
public enum Evidence {
    /** Sensor IDs with a letter A to F: they are hexadecimal. */
    ID_WITH_LETTER,
    /** Sensor IDs of decimal digits only: one in forty-three of eight hexadecimal digits is. */
    ID_DIGITS_ONLY,
    /** Dates that can be read in the file's form only, since day and month would not do exchanged. */
    DATE_PROVES_ORDER,
    /** Dates that could be read with day and month exchanged as well. */
    DATE_EITHER_ORDER,
    /** Dates refused that could be read with day and month exchanged. */
    DATE_OTHER_ORDER,
    /** The last line of a file in which nothing but the line end shows that a line is whole has none: once per file. */
    LAST_LINE_OPEN;

    long bit() {
        return 1L << ordinal();
    }
}
