package sensorrounds.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Side;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelPosition;

class VisitParserTest {
    @Test
    void theFewestFieldsMakeARowAndLeaveEveryOtherUnknown() {
        LoggedWheel row = FlatRecord.good().accepted();

        VisitHeader visit = row.visit();
        assertThat(visit.visitedAt()).isEqualTo(LocalDateTime.of(2025, 3, 4, 9, 5));
        assertThat(visit.revision()).isZero();
        assertThat(visit.odometerKm()).isNull();
        assertThat(visit.placardKpa()).isEmpty();
        assertThat(visit.faultCodes()).isEmpty();
        assertThat(visit.testDrive()).isNull();
        assertThat(row.wheel().read()).isEqualTo(ReadOutcome.OK);
        assertThat(row.wheel().hot()).isNull();
        assertThat(row.wheel().work()).isNull();
        assertThat(row.source().toString()).isEqualTo("visit-logs/a.csv:2");
    }

    /** A blank field is no report, which is not the same as OK. */
    @Test
    void aBlankBatteryIsMissingAndNotOk() {
        assertThat(FlatRecord.good().with(Field.BATTERY, " ").accepted().wheel().battery())
                .isNull();
        assertThat(FlatRecord.good()
                        .with(Field.BATTERY, "OK")
                        .accepted()
                        .wheel()
                        .battery())
                .isEqualTo(BatteryReport.OK);
    }

    @ParameterizedTest
    @CsvSource({
        "35%, PERCENT, 35",
        "35 %, PERCENT, 35",
        "2.9V, VOLTS, 2.9",
        "2.9 v, VOLTS, 2.9",
        "14 months, MONTHS, 14"
    })
    void aBatteryReportKeepsItsKindAndValue(String text, BatteryReport.Kind kind, double value) {
        assertThat(FlatRecord.good()
                        .with(Field.BATTERY, text)
                        .accepted()
                        .wheel()
                        .battery())
                .isEqualTo(new BatteryReport(kind, value));
    }

    /** Factors of NIST Special Publication 811 (2008), appendix B.8: 1 psi = 6.894757 kPa, 1 bar = 100 kPa. */
    @ParameterizedTest
    @CsvSource({"kPa, 240, 240", "psi, 32, 220.632233381388", "PSI, 1, 6.894757", "bar, 2.4, 240"})
    void pressuresBecomeKilopascals(String unit, String text, double kpa) {
        FlatRecord row = FlatRecord.good()
                .with(Field.PRESSURE_UNIT, unit)
                .with(Field.PRESSURE, text)
                .with(Field.GAUGE_PRESSURE, text)
                .with(Field.PLACARD_PRESSURE_2, text);

        LoggedWheel read = row.accepted();

        assertThat(read.wheel().pressureKpa()).isCloseTo(kpa, within(1e-6));
        assertThat(read.wheel().gaugePressureKpa()).isCloseTo(kpa, within(1e-6));
        assertThat(read.visit().placardKpa()).containsOnlyKeys(2);
        assertThat(read.visit().placardKpa().get(2)).isCloseTo(kpa, within(1e-6));
    }

    /** Fixed points of the Celsius and Fahrenheit scales: water freezes at 32 °F, boils at 212 °F; −40 is the same. */
    @ParameterizedTest
    @CsvSource({"32, 0", "212, 100", "-40, -40"})
    void fahrenheitBecomesCelsius(String fahrenheit, double celsius) {
        LoggedWheel read = FlatRecord.good()
                .with(Field.TEMPERATURE_UNIT, "F")
                .with(Field.TEMPERATURE, fahrenheit)
                .with(Field.AMBIENT_TEMPERATURE, fahrenheit)
                .accepted();

        assertThat(read.wheel().temperatureCelsius()).isCloseTo(celsius, within(1e-12));
        assertThat(read.visit().ambientCelsius()).isCloseTo(celsius, within(1e-12));
    }

    /** The international mile is 1.609344 km (NIST SP 811, appendix B.8). */
    @Test
    void milesBecomeKilometresForOdometerAndTestDrive() {
        LoggedWheel read = FlatRecord.good()
                .with(Field.ODOMETER_UNIT, "mi")
                .with(Field.ODOMETER, "100000")
                .with(Field.TEST_DRIVE_DISTANCE, "10")
                .with(Field.TEST_DRIVE_MINUTES, "12")
                .accepted();

        assertThat(read.visit().odometerKm()).isCloseTo(160934.4, within(1e-9));
        assertThat(read.visit().testDrive()).isEqualTo(new TestDrive(12.0, 16.09344, null));
    }

    @Test
    void everyConversionIsCountedInRows() {
        VisitParser parser = new VisitParser(Layouts.withConstant(Field.PRESSURE_UNIT, "psi"));
        parser.row(FlatRecord.good().with(Field.PRESSURE, "35").with(Field.GAUGE_PRESSURE, "36"));
        parser.row(FlatRecord.good().with(Field.SENSOR_ID, "0x0a1b2c3d"));
        parser.row(FlatRecord.good().with(Field.PRESSURE, "much"));

        assertThat(parser.counts().asMap())
                .isEqualTo(Map.of(Note.PRESSURE_PSI, 1L, Note.CONSTANT_USED, 2L, Note.ID_NORMALISED, 1L));
    }

    @Test
    void aLineWithoutAnyWheelFieldIsAVisitWithoutWheels() {
        FlatRecord row = FlatRecord.good()
                .with(Field.POSITION, "")
                .with(Field.READ, null)
                .with(Field.SENSOR_ID, " ");

        assertThat(row.accepted().wheel()).isNull();
        assertThat(row.with(Field.READ, "ok").rejected().rule()).isEqualTo(RejectionRule.MISSING_VALUE);
    }

    @Test
    void aDecimalCommaIsReadOnlyWhereTheLayoutSaysSo() {
        FlatRecord row = FlatRecord.good().with(Field.PRESSURE, "240,5");

        assertThat(row.accepted(Layouts.withComma()).wheel().pressureKpa()).isEqualTo(240.5);
        assertThat(row.notes(Layouts.withComma())).containsEntry(Note.DECIMAL_COMMA, 1L);
        assertThat(row.rejected().rule()).isEqualTo(RejectionRule.BAD_NUMBER);
        assertThat(row.rejected().remedy()).contains("decimalMark");
        // A point in a file with decimal commas groups thousands or is a slip: neither is guessed.
        assertThat(row.with(Field.PRESSURE, "1.240")
                        .rejected(Layouts.withComma())
                        .rule())
                .isEqualTo(RejectionRule.BAD_NUMBER);
    }

    @Test
    void wordsOfALayoutAreMappedAndTheRawPositionIsKept() {
        Layout layout = Layouts.withWords(Side.LEFT, Field.POSITION, Map.of("NSF", "1 nearside", "OSR", "2 offside"));

        LoggedWheel read = FlatRecord.good().with(Field.POSITION, "osr").accepted(layout);

        assertThat(read.wheel().position().code()).isEqualTo("2R");
        assertThat(read.wheel().positionRaw()).isEqualTo("osr");
    }

    @Test
    void nearsideIsLeftWhereOneDrivesOnTheLeftAndRightElsewhere() {
        Map<String, String> words = Map.of("NSF", "1 nearside");

        assertThat(position("NSF", Layouts.withWords(Side.LEFT, Field.POSITION, words)))
                .isEqualTo("1L");
        assertThat(position("NSF", Layouts.withWords(Side.RIGHT, Field.POSITION, words)))
                .isEqualTo("1R");
    }

    private static String position(String word, Layout layout) {
        return FlatRecord.good()
                .with(Field.POSITION, word)
                .accepted(layout)
                .wheel()
                .position()
                .code();
    }

    @Test
    void aWordMappedToNothingIsNotWrittenDown() {
        Layout layout = Layouts.withWords(null, Field.SENSOR_ID, Map.of("00000000", ""));

        assertThat(FlatRecord.good()
                        .with(Field.SENSOR_ID, "00000000")
                        .accepted(layout)
                        .wheel()
                        .sensorId())
                .isNull();
        assertThat(FlatRecord.good()
                        .with(Field.SENSOR_ID, "00000000")
                        .rejected()
                        .rule())
                .isEqualTo(RejectionRule.PLACEHOLDER_ID);
    }

    @Test
    void faultCodesKeepStateAndPlace() {
        LoggedWheel read = FlatRecord.good()
                .with(Field.FAULT_CODES, "c1234/stored; C0750:11/current@2RI;u0100")
                .accepted();

        assertThat(read.visit().faultCodes())
                .containsExactly(
                        new FaultCode("C1234", FaultCode.State.STORED, null),
                        new FaultCode(
                                "C0750-11",
                                FaultCode.State.CURRENT,
                                WheelPosition.parse("2RI").orElseThrow()),
                        new FaultCode("U0100", null, null));
        assertThat(FlatRecord.good()
                        .with(Field.FAULT_CODES, "none")
                        .accepted()
                        .visit()
                        .faultCodes())
                .isEmpty();
    }

    @Test
    void aVinIsPutIntoUpperCaseAndItsCheckDigitOnlyNoted() {
        // 49 CFR 565.15(c), table VI, prints 1G4AH59H45G118341 as its worked example; one digit is changed in the
        // second.
        FlatRecord good = FlatRecord.good().with(Field.VIN, "1g4ah59h45g118341");
        FlatRecord odd = FlatRecord.good().with(Field.VIN, "1G4AH59H55G118341");
        FlatRecord notOne = FlatRecord.good().with(Field.VIN, "IM8GDM9AXKP042788");

        assertThat(good.accepted().visit().vin()).isEqualTo("1G4AH59H45G118341");
        assertThat(good.notes(Layout.CANONICAL)).isEmpty();
        assertThat(odd.accepted().visit().vin()).isEqualTo("1G4AH59H55G118341");
        assertThat(odd.notes(Layout.CANONICAL)).isEqualTo(Map.of(Note.VIN_CHECK_DIGIT, 1L));
        assertThat(notOne.notes(Layout.CANONICAL)).isEqualTo(Map.of(Note.VIN_FORM, 1L));
    }

    @Test
    void datesAndTimesFollowTheLayout() {
        Layout layout = Layouts.withDates("dd.MM.yyyy", "dd.MM.yyyy HH:mm");
        FlatRecord row = FlatRecord.good().with(Field.WARNING_SINCE, "02.03.2025");

        LoggedWheel read = row.with(Field.VISITED_AT, "04.03.2025 09:05").accepted(layout);

        assertThat(read.visit().visitedAt()).isEqualTo(LocalDateTime.of(2025, 3, 4, 9, 5));
        assertThat(read.visit().warningSince()).isEqualTo(LocalDate.of(2025, 3, 2));
        assertThat(row.with(Field.VISITED_AT, "2025-03-04").rejected(layout).expected())
                .contains("dd.MM.yyyy HH:mm");
    }

    @ParameterizedTest
    @CsvSource({
        "VISITED_AT, 04.03.2025, BAD_DATE",
        "VISITED_AT, 2025-02-29, BAD_DATE",
        "VISITED_AT, 1899-12-31, OUT_OF_RANGE",
        "VISITED_AT, 2205-03-04, OUT_OF_RANGE",
        "WARNING_SINCE, yesterday, BAD_DATE",
        "VISIT_ID, '', MISSING_VALUE",
        "VEHICLE_ID, ' ', MISSING_VALUE",
        "READ, '', MISSING_VALUE",
        "READ, dead, UNKNOWN_WORD",
        "POSITION, NSF, UNKNOWN_POSITION",
        "POSITION, 0L, UNKNOWN_POSITION",
        "PRESSURE, 1500.1, OUT_OF_RANGE",
        "PRESSURE, -1, OUT_OF_RANGE",
        "PRESSURE, NaN, BAD_NUMBER",
        "PRESSURE, 240 kPa, BAD_NUMBER",
        "PRESSURE_UNIT, atm, UNKNOWN_WORD",
        "PLACARD_PRESSURE_1, 9999, OUT_OF_RANGE",
        "TEMPERATURE, -61, OUT_OF_RANGE",
        "TEMPERATURE, 151, OUT_OF_RANGE",
        "WAKE_ATTEMPTS, 0, OUT_OF_RANGE",
        "WAKE_ATTEMPTS, 100, OUT_OF_RANGE",
        "WAKE_ATTEMPTS, 1.5, BAD_NUMBER",
        "ODOMETER, -5, OUT_OF_RANGE",
        "REVISION, -1, BAD_NUMBER",
        "SENSOR_ID, 0A1B2, BAD_SENSOR_ID",
        "SENSOR_ID, 0A1B2C3DE, BAD_SENSOR_ID",
        "SENSOR_ID, OA1B2C3D, BAD_SENSOR_ID",
        "SENSOR_ID, 1.2E+05, ID_AS_NUMBER",
        "NEW_SENSOR_ID, FFFFFFFF, PLACEHOLDER_ID",
        "FAULT_CODES, X1234, BAD_FAULT_CODE",
        "FAULT_CODES, P4234, BAD_FAULT_CODE",
        "FAULT_CODES, C1234/maybe, UNKNOWN_WORD",
        "FAULT_CODES, C1234/stored@9X, UNKNOWN_POSITION",
        "BATTERY, 35, BAD_BATTERY",
        "BATTERY, 101%, BAD_BATTERY",
        "BATTERY, good, BAD_BATTERY",
        "TYRE_DATE, 319, BAD_TYRE_DATE",
        "TYRE_DATE, 5419, BAD_TYRE_DATE",
        "HOT, warm, UNKNOWN_WORD",
    })
    void aBadFieldGoesToQuarantineWithFieldValueAndRule(Field field, String text, RejectionRule rule) {
        Rejection rejection = FlatRecord.good().with(field, text).rejected();

        assertThat(rejection.rule()).isEqualTo(rule);
        assertThat(rejection.field()).isEqualTo(field.key());
        assertThat(rejection.expected()).isNotBlank();
        assertThat(rejection.remedy()).isEqualTo(rule.remedy());
        assertThat(rejection.source().line()).isEqualTo(2);
        assertThat(rejection.rawText()).contains(text.strip());
    }

    @Test
    void aBadVisitFieldSendsEveryWheelOfANestedVisitToQuarantineAndABadWheelOnlyItself() {
        FlatRecord visit = FlatRecord.good();
        List<FlatRecord> wheels = List.of(FlatRecord.good(), FlatRecord.good().with(Field.POSITION, "?"));

        assertThat(new VisitParser(Layout.CANONICAL).visit(visit, wheels))
                .satisfiesExactly(
                        good -> assertThat(good).isInstanceOf(ParsedRow.Accepted.class),
                        bad -> assertThat(bad).isInstanceOf(Rejection.class));
        visit.with(Field.VISITED_AT, "soon");
        assertThat(new VisitParser(Layout.CANONICAL).visit(visit, wheels))
                .hasSize(2)
                .allSatisfy(row -> assertThat(((Rejection) row).field()).isEqualTo("visitedAt"));
        assertThat(new VisitParser(Layout.CANONICAL).visit(visit, List.of())).hasSize(1);
    }

    /** The header of the line before is used again only when no visit field differs. */
    @Test
    void aChangedVisitFieldIsSeenThoughTheLineBeforeWasOfTheSameVisit() {
        VisitParser parser = new VisitParser(Layout.CANONICAL);
        LoggedWheel first = row(parser, FlatRecord.good());
        LoggedWheel same = row(parser, FlatRecord.good().with(Field.POSITION, "1R"));
        LoggedWheel other = row(parser, FlatRecord.good().with(Field.NOTES, "again"));

        assertThat(same.visit()).isSameAs(first.visit());
        assertThat(other.visit().notes()).isEqualTo("again");
    }

    private static LoggedWheel row(VisitParser parser, FlatRecord record) {
        return ((ParsedRow.Accepted) parser.row(record)).row();
    }

    @Test
    void aHugeRowIsCutInQuarantine() {
        Rejection rejection =
                FlatRecord.good().with(Field.READ, "x".repeat(5000)).rejected();

        assertThat(rejection.rawText()).hasSize(Rejection.TEXT_LIMIT).endsWith("…");
        assertThat(rejection.rawValue()).hasSize(Rejection.VALUE_LIMIT);
    }

    @Test
    void textThatWasNotInTheEncodingOfTheFileIsNotTakenForAValue() {
        assertThat(FlatRecord.good().with(Field.NOTES, "Stra\uFFFDe").rejected().rule())
                .isEqualTo(RejectionRule.NOT_TEXT);
    }
}
