package sensorrounds.intake;

import java.io.Serializable;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sensorrounds.visit.Side;
import sensorrounds.visit.WheelPosition;

/**
 * How one technician's files map to the canonical form. The mapping is data, written once per foreign layout; nothing in
 * the code knows any of them.
 *
 * @param name how the layout is called in counts and messages
 * @param appliesTo globs of the files it applies to, relative to the data folder; {@code *} stays within a folder,
 *     {@code **} does not
 * @param delimiter between two fields
 * @param encoding name of the character set
 * @param decimalMark {@code .} or {@code ,}
 * @param dateFormat form of dates as in {@link DatePattern}, or {@code serial1900}, {@code serial1904} for the day numbers
 *     of a spreadsheet; null for ISO 8601
 * @param dateTimeFormat form of times; null for dateFormat, or ISO 8601 when that is null too
 * @param drivingSide side of the road driven on, needed by the words nearside and offside; null when they do not occur
 * @param columns header in the file → field
 * @param ignore headers in the file that are left out on purpose
 * @param constants values that hold for every row and have no column
 * @param words per field: word in the file, in lower case → canonical word; an empty one stands for not written down
 * @param ids how sensor IDs are written
 * @param noTemperature figures that the reader writes for no temperature, in the unit of the file, such as −40 or 255
 */
public record Layout(
        String name,
        List<String> appliesTo,
        char delimiter,
        String encoding,
        char decimalMark,
        String dateFormat,
        String dateTimeFormat,
        Side drivingSide,
        Map<String, Field> columns,
        Set<String> ignore,
        Map<Field, String> constants,
        Map<Field, Map<String, String>> words,
        IdForm ids,
        Set<Double> noTemperature)
        implements Serializable {

    /** The form of docs/visit-log.md itself: comma, UTF-8, decimal point, ISO dates, canonical names. */
    public static final Layout CANONICAL =
            new Layout(null, List.of(), ',', "UTF-8", '.', null, null, null, Map.of(), Set.of(), Map.of(), Map.of());

    /** A layout with sensor IDs as in the canonical form, and no figure that stands for no temperature. */
    public Layout(
            String name,
            List<String> appliesTo,
            char delimiter,
            String encoding,
            char decimalMark,
            String dateFormat,
            String dateTimeFormat,
            Side drivingSide,
            Map<String, Field> columns,
            Set<String> ignore,
            Map<Field, String> constants,
            Map<Field, Map<String, String>> words) {
        this(
                name,
                appliesTo,
                delimiter,
                encoding,
                decimalMark,
                dateFormat,
                dateTimeFormat,
                drivingSide,
                columns,
                ignore,
                constants,
                words,
                IdForm.CANONICAL,
                Set.of());
    }

    /**
     * @throws IllegalArgumentException saying which entry is wrong, what was expected and the way out: a date form that
     *     is not supported, a mapped word that the field does not know, a field given twice
     */
    public Layout {
        appliesTo = List.copyOf(appliesTo);
        columns = Collections.unmodifiableMap(new TreeMap<>(columns));
        ignore = Collections.unmodifiableSet(new TreeSet<>(ignore));
        Map<Field, String> fixed = new EnumMap<>(Field.class);
        fixed.putAll(constants);
        constants = Collections.unmodifiableMap(fixed);
        Map<Field, Map<String, String>> mapped = new EnumMap<>(Field.class);
        for (Map.Entry<Field, Map<String, String>> entry : words.entrySet()) {
            mapped.put(entry.getKey(), lowerCased(entry.getKey(), entry.getValue(), drivingSide));
        }
        words = Collections.unmodifiableMap(mapped);
        if (decimalMark != '.' && decimalMark != ',') {
            throw new IllegalArgumentException("decimalMark \"" + decimalMark + "\"; expected \".\" or \",\"");
        }
        noTemperature = Set.copyOf(noTemperature);
        if (dateFormat != null) {
            DateForm.of(dateFormat);
        }
        if (dateTimeFormat != null && !DateForm.of(dateTimeFormat).hasTime()) {
            throw new IllegalArgumentException(
                    "dateTimeFormat \"" + dateTimeFormat + "\" has no HH:mm; for dates alone give dateFormat only");
        }
        Set<Field> given = new TreeSet<>();
        columns.forEach((header, field) -> {
            if (!given.add(field)) {
                throw new IllegalArgumentException("columns maps two headers to \"" + field.key()
                        + "\"; map one of them and put the other, here \"" + header + "\", under ignore");
            }
        });
        for (Field field : constants.keySet()) {
            if (!given.add(field)) {
                throw new IllegalArgumentException("\"" + field.key()
                        + "\" stands under columns and under constants; a constant is for a field without a column");
            }
        }
        for (String header : ignore) {
            if (columns.containsKey(header)) {
                throw new IllegalArgumentException(
                        "the header \"" + header + "\" stands under columns and under ignore; keep one");
            }
        }
        FieldWords.check(constants, mapped);
    }

    private static Map<String, String> lowerCased(Field field, Map<String, String> words, Side drivingSide) {
        Map<String, String> lower = new TreeMap<>();
        words.forEach((word, target) -> {
            String canonical = field == Field.POSITION && !target.isBlank() ? position(target, drivingSide) : target;
            String other = lower.put(word.strip().toLowerCase(Locale.ROOT), canonical);
            if (other != null && !other.equals(canonical)) {
                throw new IllegalArgumentException("words." + field.key() + " maps \"" + word
                        + "\" in two ways; words are read without regard to capitals");
            }
        });
        return Collections.unmodifiableMap(lower);
    }

    /** The code for {@code 1L}, or for {@code 1 nearside} and {@code 2 offside inner}. */
    private static String position(String target, Side drivingSide) {
        String[] parts = target.strip().toLowerCase(Locale.ROOT).split("\\s+");
        boolean roadSide = parts.length >= 2 && (parts[1].equals("nearside") || parts[1].equals("offside"));
        String code = target;
        if (roadSide) {
            if (drivingSide == null) {
                throw new IllegalArgumentException("words.position maps to \"" + target
                        + "\", which depends on the side of the road: give drivingSide \"left\" or \"right\"");
            }
            boolean left = parts[1].equals("nearside") == (drivingSide == Side.LEFT);
            String mount =
                    parts.length < 3 ? "" : parts[2].equals("inner") ? "I" : parts[2].equals("outer") ? "O" : "?";
            code = parts.length > 3 ? "?" : parts[0] + (left ? "L" : "R") + mount;
        }
        return WheelPosition.parse(code)
                .map(WheelPosition::code)
                .orElseThrow(() -> new IllegalArgumentException("words.position maps to \"" + target
                        + "\"; expected a code such as 1L, 2RI or spare, or \"1 nearside\", \"2 offside inner\""));
    }
}
