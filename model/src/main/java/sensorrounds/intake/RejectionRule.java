package sensorrounds.intake;

/** Why a row was put into quarantine. The name is stored; the remedy is the way out that holds for the rule in general. */
public enum RejectionRule {
    NOT_JSON("the line is not a JSON object", "mend the line, or write the visit again from its source"),
    NOT_TEXT(
            "the bytes are not text in the encoding of the file",
            "write the file as UTF-8, or name its encoding in a layout"),
    FIELD_COUNT(
            "the line has not as many fields as the header",
            "quote fields that hold the delimiter, and write every field of the header"),
    CELL_ERROR(
            "a cell of a spreadsheet that shows an error instead of a value",
            "mend the formula, or write the value itself into the cell"),
    NO_HEADER(
            "a value in a column without a header",
            "give the column a header, and put it under ignore in a layout when it is no field; or clear the cell"),
    OTHER_CONTRACT(
            "a version of the input contract that is not read",
            "write the log in version 1 (docs/visit-log.md), or use a release that reads its version"),
    UNKNOWN_KEY(
            "a name the input contract does not know",
            "spell the name as in docs/visit-log.md, or leave the field out"),
    NAMED_TWICE("a name stands twice in one object", "keep one of the two"),
    WRONG_KIND("a value of the wrong kind", "write the kind of value docs/visit-log.md names for the field"),
    MISSING_VALUE("a field that must be written is blank", "write the value, or leave the row out"),
    BAD_DATE(
            "not a date in the form of this file", "write ISO 8601, or give dateFormat and dateTimeFormat in a layout"),
    BAD_NUMBER("not a number", "write digits only, or give decimalMark in a layout"),
    OUT_OF_RANGE("a number nothing on the road can have", "check the value and its unit"),
    UNKNOWN_WORD(
            "a word the field does not know",
            "write one of the words expected, or map this one under words in a layout"),
    UNKNOWN_POSITION(
            "a wheel position that is not known",
            "write a code such as 1L, 2RI or spare, or map the word under words.position in a layout"),
    BAD_SENSOR_ID("not a sensor ID", "write the ID as 6 to 8 hexadecimal digits, as text, with its leading zeros"),
    ID_AS_NUMBER(
            "a sensor ID that a spreadsheet has turned into a number",
            "take the ID from its source again, into a column formatted as text before it is filled"),
    PLACEHOLDER_ID(
            "an ID that stands for no sensor",
            "leave the ID blank when none was read, or map it to \"\" under words.sensorId in a layout"),
    BAD_FAULT_CODE("not a fault code", "write codes as in SAE J2012: one letter P, C, B or U and four digits"),
    BAD_BATTERY("not a battery report", "write ok, low, 35%, 2.9V or 14 months; leave it blank when none was given"),
    BAD_TYRE_DATE(
            "not a tyre date code",
            "write week and year as four digits, such as 2319; leave older three-digit codes blank"),
    TWO_WHEELS_ONE_PLACE(
            "two wheels claim the same place at one visit", "correct the position of one of the two wheels"),
    VISIT_KEY_REUSED(
            "one visit key on days more than a week apart at one revision",
            "give each visit a key of its own; an edited visit needs a higher revision");

    private final String words;
    private final String remedy;

    RejectionRule(String words, String remedy) {
        this.words = words;
        this.remedy = remedy;
    }

    /** What is wrong, in words. */
    public String words() {
        return words;
    }

    /** The way out. */
    public String remedy() {
        return remedy;
    }
}
