package sensorrounds.intake;

import java.util.EnumMap;
import java.util.Map;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** Which fields take one of a fixed list of words, and which words. */
final class FieldWords {
    static final Words<Units.Distance> DISTANCE_UNIT = Words.of(Units.Distance.class);
    static final Words<Units.Temperature> TEMPERATURE_UNIT = Words.of(Units.Temperature.class);
    static final Words<Units.Pressure> PRESSURE_UNIT = Words.of(Units.Pressure.class);
    static final Words<VisitReason> REASON = Words.of(VisitReason.class);
    static final Words<Warning> WARNING = Words.of(Warning.class);
    static final Words<RelearnKind> RELEARN = Words.of(RelearnKind.class);
    static final Words<RelearnResult> RELEARN_RESULT = Words.of(RelearnResult.class);
    static final Words<ReadOutcome> READ = Words.of(ReadOutcome.class);
    static final Words<WheelWork> WORK = Words.of(WheelWork.class);
    static final Words<WorkReason> WORK_REASON = Words.of(WorkReason.class);
    static final Words<Flag> FLAG = Words.of(Flag.class);

    private static final Map<Field, Words<?>> BY_FIELD = new EnumMap<>(Field.class);

    static {
        BY_FIELD.put(Field.ODOMETER_UNIT, DISTANCE_UNIT);
        BY_FIELD.put(Field.TEMPERATURE_UNIT, TEMPERATURE_UNIT);
        BY_FIELD.put(Field.PRESSURE_UNIT, PRESSURE_UNIT);
        BY_FIELD.put(Field.REASON, REASON);
        BY_FIELD.put(Field.WARNING, WARNING);
        BY_FIELD.put(Field.RELEARN, RELEARN);
        BY_FIELD.put(Field.RELEARN_RESULT, RELEARN_RESULT);
        BY_FIELD.put(Field.PRESSURES_STORED, FLAG);
        BY_FIELD.put(Field.CODES_CLEARED, FLAG);
        BY_FIELD.put(Field.TEST_DRIVE_WARNING_RETURNED, FLAG);
        BY_FIELD.put(Field.READ, READ);
        BY_FIELD.put(Field.HOT, FLAG);
        BY_FIELD.put(Field.WORK, WORK);
        BY_FIELD.put(Field.WORK_REASON, WORK_REASON);
        BY_FIELD.put(Field.CLONED, FLAG);
    }

    private FieldWords() {}

    /** The words of a yes-or-no field. */
    enum Flag {
        TRUE,
        FALSE
    }

    /** @throws IllegalArgumentException when a layout gives a word that its field does not know */
    static void check(Map<Field, String> constants, Map<Field, Map<String, String>> mapped) {
        constants.forEach((field, word) -> check("constants", field, word));
        mapped.forEach((field, words) -> words.values().forEach(word -> check("words." + field.key(), field, word)));
    }

    private static void check(String where, Field field, String word) {
        Words<?> words = BY_FIELD.get(field);
        if (words != null && !word.isBlank() && words.read(word.strip()) == null) {
            throw new IllegalArgumentException(where + " gives \"" + word + "\" for " + field.key()
                    + "; expected one of " + words.expected() + ", or \"\" for not written down");
        }
    }
}
