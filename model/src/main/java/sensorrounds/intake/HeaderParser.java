package sensorrounds.intake;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelPosition;

/** Reads the fields that stand once per visit. */
final class HeaderParser {
    private static final SortedMap<Integer, Double> NO_PLACARD = Collections.emptySortedMap();
    private static final int MAX_REVISION = 999_999;
    private static final String NO_CODES = "none";

    private final FieldReader in;

    HeaderParser(FieldReader in) {
        this.in = in;
    }

    /** @throws FieldProblem for the first field that cannot be read */
    VisitHeader parse() {
        ContractVersion.check(in.text(Field.CONTRACT_VERSION));
        Units.Distance distance = orElse(in.word(Field.ODOMETER_UNIT, FieldWords.DISTANCE_UNIT), Units.Distance.KM);
        Units.Temperature temperature = temperatureUnit();
        Integer revision = in.whole(Field.REVISION, 0, MAX_REVISION);
        return new VisitHeader(
                in.required(Field.VISIT_ID, "a key, unique among the visits of the vehicle"),
                revision == null ? 0 : revision,
                in.dateTime(Field.VISITED_AT, in.required(Field.VISITED_AT, "the day or time of the visit")),
                in.text(Field.TECHNICIAN_ID),
                in.text(Field.READER_ID),
                in.required(Field.VEHICLE_ID, "the key of the vehicle"),
                vin(),
                in.text(Field.REGISTRATION),
                in.km(Field.ODOMETER, distance),
                in.celsius(Field.AMBIENT_TEMPERATURE, temperature),
                placard(),
                in.text(Field.WHEEL_SET),
                in.word(Field.REASON, FieldWords.REASON),
                in.word(Field.WARNING, FieldWords.WARNING),
                in.date(Field.WARNING_SINCE),
                in.number(Field.DRIVING_MINUTES_TO_WARNING, 0, "minutes, 0 or more"),
                faultCodes(),
                in.word(Field.RELEARN, FieldWords.RELEARN),
                in.word(Field.RELEARN_RESULT, FieldWords.RELEARN_RESULT),
                in.flag(Field.PRESSURES_STORED),
                in.flag(Field.CODES_CLEARED),
                testDrive(distance),
                in.text(Field.NOTES));
    }

    /** Read with the visit, since the unit holds for the wheels too. */
    Units.Temperature temperatureUnit() {
        return orElse(in.word(Field.TEMPERATURE_UNIT, FieldWords.TEMPERATURE_UNIT), Units.Temperature.C);
    }

    Units.Pressure pressureUnit() {
        return orElse(in.word(Field.PRESSURE_UNIT, FieldWords.PRESSURE_UNIT), Units.Pressure.KPA);
    }

    private static <T> T orElse(T value, T byDefault) {
        return value == null ? byDefault : value;
    }

    private String vin() {
        String vin = in.text(Field.VIN);
        if (vin == null) {
            return null;
        }
        String upper = vin.toUpperCase(Locale.ROOT);
        in.note(Codes.vinNotes(upper));
        return upper;
    }

    private SortedMap<Integer, Double> placard() {
        SortedMap<Integer, Double> placard = null;
        Units.Pressure unit = pressureUnit();
        for (int axle = 1; axle <= WheelPosition.MAX_AXLE; axle++) {
            Double kpa = in.kpa(Field.placardPressure(axle), unit);
            if (kpa != null) {
                placard = placard == null ? new TreeMap<>() : placard;
                placard.put(axle, kpa);
            }
        }
        return placard == null ? NO_PLACARD : Collections.unmodifiableSortedMap(placard);
    }

    private TestDrive testDrive(Units.Distance unit) {
        Double minutes = in.number(Field.TEST_DRIVE_MINUTES, 0, "minutes, 0 or more");
        Double km = in.km(Field.TEST_DRIVE_DISTANCE, unit);
        Boolean returned = in.flag(Field.TEST_DRIVE_WARNING_RETURNED);
        return minutes == null && km == null && returned == null ? null : new TestDrive(minutes, km, returned);
    }

    /** Written {@code C1234/stored;C0750-11/current@1L}, or {@code none} when codes were read and there were none. */
    private List<FaultCode> faultCodes() {
        String text = in.text(Field.FAULT_CODES);
        if (text == null || text.equalsIgnoreCase(NO_CODES)) {
            return List.of();
        }
        List<FaultCode> codes = new ArrayList<>();
        for (int from = 0; from <= text.length(); ) {
            int semicolon = text.indexOf(';', from);
            int to = semicolon < 0 ? text.length() : semicolon;
            codes.add(faultCode(text.substring(from, to).strip()));
            from = to + 1;
        }
        return List.copyOf(codes);
    }

    private static FaultCode faultCode(String text) {
        int at = text.indexOf('@');
        int slash = text.indexOf('/');
        int codeEnd = slash >= 0 ? slash : at >= 0 ? at : text.length();
        String code = Codes.faultCode(text.substring(0, codeEnd).strip());
        boolean ordered = slash < 0 || at < 0 || slash < at;
        if (code == null || !ordered) {
            throw new FieldProblem(
                    RejectionRule.BAD_FAULT_CODE,
                    Field.FAULT_CODES.key(),
                    text,
                    "a code such as C1234, then /current, /stored or /cleared and @position where known");
        }
        return new FaultCode(
                code,
                slash < 0
                        ? null
                        : state(text.substring(slash + 1, at < 0 ? text.length() : at)
                                .strip()),
                at < 0 ? null : position(text.substring(at + 1).strip()));
    }

    private static FaultCode.State state(String word) {
        FaultCode.State state = STATES.read(word);
        if (state == null) {
            throw new FieldProblem(
                    RejectionRule.UNKNOWN_WORD, Field.FAULT_CODES.key(), word, "one of " + STATES.expected());
        }
        return state;
    }

    private static final Words<FaultCode.State> STATES = Words.of(FaultCode.State.class);

    private static WheelPosition position(String code) {
        return WheelPosition.parse(code)
                .orElseThrow(() -> new FieldProblem(
                        RejectionRule.UNKNOWN_POSITION,
                        Field.FAULT_CODES.key(),
                        code,
                        "a wheel position such as 1L, 2RI or spare after @"));
    }
}
