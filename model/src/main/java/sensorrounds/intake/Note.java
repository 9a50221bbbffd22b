package sensorrounds.intake;

/** What the intake changed, or thought odd, without putting the row into quarantine. Counted in rows, per file. */
public enum Note {
    PRESSURE_PSI("pressures converted from psi to kPa"),
    PRESSURE_BAR("pressures converted from bar to kPa"),
    TEMPERATURE_FAHRENHEIT("temperatures converted from °F to °C"),
    DISTANCE_MILES("distances converted from miles to km"),
    DECIMAL_COMMA("numbers read with a decimal comma"),
    DATE_FORMAT("dates read in the layout's own form"),
    DATE_WITHOUT_TIME("visit times that are a date only, taken as the start of the day"),
    DATE_TWO_DIGIT_YEAR("years of two digits, taken as 1990 to 2089"),
    OFFSET_LEFT_OUT("times with an offset from UTC, of which the wall-clock time is kept"),
    POSITION_WORD("wheel positions mapped by the layout"),
    WORD_MAPPED("other words mapped by the layout"),
    CONSTANT_USED("values that the layout states for the whole file"),
    ID_NORMALISED("sensor IDs put into upper case or stripped of 0x"),
    VIN_FORM("vehicle identification numbers that are not 17 letters and digits without I, O and Q"),
    VIN_CHECK_DIGIT("vehicle identification numbers whose check digit does not agree (not all makers use one)"),
    PRESSURE_SMALL("pressures of 1 to 15 kPa: a flat tyre, or bar or psi written without its unit"),
    DATE_SERIAL("dates read from the day numbers of a spreadsheet"),
    ID_FROM_DECIMAL("sensor IDs converted from decimal to hexadecimal"),
    ID_PADDED("sensor IDs given back the leading zeros that idDigits of the layout asks for"),
    TEMPERATURE_NO_VALUE("temperatures that the layout takes for no value"),
    REPLACED_WITHOUT_NEW_ID("sensors replaced without the ID or the part of the new one"),
    LATER_NAMES_LEFT_OUT("names of a later minor version of the contract, left out"),
    MERGED_CELLS("blank cells that are merged with the one above, whose value was taken"),
    SHEET_LEFT_OUT("rows of sheets that are no visit log, left out");

    private final String words;

    Note(String words) {
        this.words = words;
    }

    /** What was counted, in words. */
    public String words() {
        return words;
    }

    long bit() {
        return 1L << ordinal();
    }
}
