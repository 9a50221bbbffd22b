package sensorrounds.intake;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Reads single fields of the record it is set to, by the conventions of one layout. Every method gives null for a blank
 * field and throws {@link FieldProblem} for one it cannot read.
 */
final class FieldReader {
    private static final LocalDate FIRST_DAY = LocalDate.of(1990, 1, 1);
    private static final LocalDate END_OF_DAYS = LocalDate.of(2100, 1, 1);
    private static final double MAX_KPA = 1500;
    private static final double SMALL_KPA = 15;
    private static final double MIN_CELSIUS = -60;
    private static final double MAX_CELSIUS = 150;

    private final char decimalMark;
    private final DateForm datePattern;
    private final DateForm dateTimePattern;
    private final Set<Double> noTemperature;
    private final String[] constants = new String[Field.values().length];
    private final Map<?, ?>[] words = new Map<?, ?>[Field.values().length];

    private RawRecord record;
    private long notes;
    private long evidence;

    FieldReader(Layout layout) {
        this.decimalMark = layout.decimalMark();
        this.datePattern = layout.dateFormat() == null ? null : DateForm.of(layout.dateFormat());
        this.dateTimePattern = layout.dateTimeFormat() == null ? null : DateForm.of(layout.dateTimeFormat());
        this.noTemperature = layout.noTemperature();
        layout.constants().forEach((field, text) -> constants[field.ordinal()] = text);
        layout.words().forEach((field, map) -> words[field.ordinal()] = map);
    }

    void begin(RawRecord next) {
        this.record = next;
        this.notes = 0;
        this.evidence = 0;
    }

    /** What the record says about the form of its file so far, as bits. */
    long evidence() {
        return evidence;
    }

    void evidence(long bits) {
        evidence |= bits;
    }

    /** Notes of the record so far, as bits. */
    long notes() {
        return notes;
    }

    void note(long bits) {
        notes |= bits;
    }

    String text(Field field) {
        String text = record.get(field);
        text = text == null ? "" : text.strip();
        String constant = constants[field.ordinal()];
        if (constant != null && text.isEmpty()) {
            text = constant;
            notes |= Note.CONSTANT_USED.bit();
        }
        Map<?, ?> mapping = words[field.ordinal()];
        if (mapping != null) {
            Object mapped = mapping.get(text.toLowerCase(Locale.ROOT));
            if (mapped != null) {
                text = (String) mapped;
                notes |= field == Field.POSITION ? Note.POSITION_WORD.bit() : Note.WORD_MAPPED.bit();
            }
        }
        if (text.isEmpty()) {
            return null;
        }
        if (text.indexOf('\uFFFD') >= 0) {
            throw new FieldProblem(RejectionRule.NOT_TEXT, field.key(), text, "text without replacement characters");
        }
        return text;
    }

    String required(Field field, String expected) {
        String text = text(field);
        if (text == null) {
            throw new FieldProblem(RejectionRule.MISSING_VALUE, field.key(), record.get(field), expected);
        }
        return text;
    }

    Double number(Field field, double min, String expected) {
        String text = text(field);
        if (text == null) {
            return null;
        }
        double value = number(field, text);
        if (!(value >= min)) {
            throw outOfRange(field, text, expected);
        }
        return value;
    }

    Double kpa(Field field, Units.Pressure unit) {
        String text = text(field);
        if (text == null) {
            return null;
        }
        double value = unit.toKpa(number(field, text));
        if (!(value >= 0 && value <= MAX_KPA)) {
            throw outOfRange(field, text, "a gauge pressure of " + unit.range(MAX_KPA));
        }
        if (value > 0 && value < SMALL_KPA) {
            notes |= Note.PRESSURE_SMALL.bit();
        }
        notes |= unit.note();
        return value;
    }

    Double celsius(Field field, Units.Temperature unit) {
        String text = text(field);
        if (text == null) {
            return null;
        }
        double written = number(field, text);
        if (noTemperature.contains(written)) {
            notes |= Note.TEMPERATURE_NO_VALUE.bit();
            return null;
        }
        double value = unit.toCelsius(written);
        if (!(value >= MIN_CELSIUS && value <= MAX_CELSIUS)) {
            throw outOfRange(
                    field, text, unit == Units.Temperature.C ? "−60 to 150 °C" : "−76 to 302 °F (−60 to 150 °C)");
        }
        notes |= unit.note();
        return value;
    }

    Double km(Field field, Units.Distance unit) {
        Double value = number(field, 0, "a distance of 0 or more");
        if (value == null) {
            return null;
        }
        notes |= unit.note();
        return unit.toKm(value);
    }

    Integer whole(Field field, int min, int max) {
        String text = text(field);
        if (text == null) {
            return null;
        }
        int value = Numbers.readWhole(text);
        if (value < 0) {
            throw new FieldProblem(
                    RejectionRule.BAD_NUMBER, field.key(), text, "a whole number from " + min + " to " + max);
        }
        if (value < min || value > max) {
            throw outOfRange(field, text, min + " to " + max);
        }
        return value;
    }

    <E extends Enum<E>> E word(Field field, Words<E> list) {
        String text = text(field);
        if (text == null) {
            return null;
        }
        E constant = list.read(text);
        if (constant == null) {
            throw new FieldProblem(RejectionRule.UNKNOWN_WORD, field.key(), text, "one of " + list.expected());
        }
        return constant;
    }

    Boolean flag(Field field) {
        FieldWords.Flag flag = word(field, FieldWords.FLAG);
        return flag == null ? null : flag == FieldWords.Flag.TRUE;
    }

    LocalDate date(Field field) {
        String text = text(field);
        if (text == null) {
            return null;
        }
        LocalDate date;
        if (datePattern == null || isIn(record.days(), field)) {
            date = IsoDateTimes.date(text);
        } else {
            LocalDateTime read = read(datePattern, text);
            date = read == null ? null : read.toLocalDate();
        }
        if (date == null) {
            throw badDate(field, text, "a date as " + (datePattern == null ? "2025-03-04" : datePattern.pattern()));
        }
        return checkRange(field, text, date);
    }

    LocalDateTime dateTime(Field field, String text) {
        boolean iso = datePattern == null && dateTimePattern == null || isIn(record.days(), field);
        LocalDateTime time = iso ? isoDateTime(text) : ownDateTime(text);
        if (time == null) {
            throw badDate(field, text, "a time as " + dateTimeForms());
        }
        checkRange(field, text, time.toLocalDate());
        return time;
    }

    private LocalDateTime isoDateTime(String text) {
        LocalDateTime time = IsoDateTimes.dateTime(text);
        if (time != null && IsoDateTimes.hasOffset(text)) {
            notes |= Note.OFFSET_LEFT_OUT.bit();
        }
        if (time != null && text.length() == "2025-03-04".length()) {
            notes |= Note.DATE_WITHOUT_TIME.bit();
        }
        return time;
    }

    private LocalDateTime ownDateTime(String text) {
        LocalDateTime time = dateTimePattern == null ? null : read(dateTimePattern, text);
        if (time == null && datePattern != null) {
            time = read(datePattern, text);
            notes |= time == null || datePattern.hasTime() ? 0 : Note.DATE_WITHOUT_TIME.bit();
        }
        return time;
    }

    /** Reads, and counts what the date says about the order of day and month in the file. */
    private LocalDateTime read(DateForm form, String text) {
        LocalDateTime time = form.read(text);
        DateForm exchanged = form.exchanged();
        if (time != null) {
            notes |= form.notes();
        }
        if (exchanged != null && (time == null || time.getDayOfMonth() != time.getMonthValue())) {
            boolean other = exchanged.read(text) != null;
            if (other || time != null) {
                evidence |= (time == null
                                ? Evidence.DATE_OTHER_ORDER
                                : other ? Evidence.DATE_EITHER_ORDER : Evidence.DATE_PROVES_ORDER)
                        .bit();
            }
        }
        return time;
    }

    private String dateTimeForms() {
        if (datePattern == null && dateTimePattern == null) {
            return "2025-03-04T09:05 or 2025-03-04";
        }
        String time = dateTimePattern == null ? null : dateTimePattern.pattern();
        String date = datePattern == null ? null : datePattern.pattern();
        return time == null ? date : date == null ? time : time + " or " + date;
    }

    private FieldProblem badDate(Field field, String text, String expected) {
        String hint = "";
        if ((evidence & Evidence.DATE_OTHER_ORDER.bit()) != 0) {
            hint = "; with day and month exchanged it would be one";
        } else if (looksLikeDayNumber(text)) {
            hint = "; the day number of a spreadsheet is read with dateFormat serial1900 or serial1904 in a layout";
        }
        return new FieldProblem(RejectionRule.BAD_DATE, field.key(), text, expected + hint);
    }

    /** A number of days that is a date from 1990 to 2100 in one of the two systems. */
    private static boolean looksLikeDayNumber(String text) {
        double number = Numbers.read(text, '.');
        return number >= 31_000 && number < 74_000;
    }

    private static LocalDate checkRange(Field field, String text, LocalDate date) {
        if (date.isBefore(FIRST_DAY) || !date.isBefore(END_OF_DAYS)) {
            throw outOfRange(field, text, "a day from 1990 to 2099");
        }
        return date;
    }

    double number(Field field, String text) {
        double value = looseNumber(field, text);
        if (Double.isNaN(value)) {
            throw new FieldProblem(
                    RejectionRule.BAD_NUMBER,
                    field.key(),
                    text,
                    "a number with the decimal mark " + decimalMark + " and no other marks");
        }
        if (decimalMark == ',' && text.indexOf(',') >= 0) {
            notes |= Note.DECIMAL_COMMA.bit();
        }
        return value;
    }

    /** A number inside a longer text of the field; NaN when it is none. */
    double looseNumber(Field field, String text) {
        return Numbers.read(text, isNumber(field) ? '.' : decimalMark);
    }

    /** True when the file holds the value as a number, so that nothing is left of how it was written. */
    boolean isNumber(Field field) {
        return isIn(record.numbers(), field);
    }

    private static boolean isIn(long fields, Field field) {
        return (fields >> field.ordinal() & 1) != 0;
    }

    private static FieldProblem outOfRange(Field field, String text, String expected) {
        return new FieldProblem(RejectionRule.OUT_OF_RANGE, field.key(), text, expected);
    }
}
