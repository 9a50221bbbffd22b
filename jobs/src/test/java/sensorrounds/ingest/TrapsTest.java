package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.FileDoubt;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.RejectionRule;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;

/** One small file per trap that logs set. */
class TrapsTest {
    private static List<LogRow> read(String file) {
        return Fixtures.read(Fixtures.TRAPS.resolve(file));
    }

    private static FileCount count(List<LogRow> rows) {
        return rows.get(rows.size() - 1).file();
    }

    @ParameterizedTest
    @CsvSource({
        "bad-date.csv, 3, BAD_DATE, visitedAt, 04.03.2025, 1",
        "bad-unit.csv, 2, UNKNOWN_WORD, pressureUnit, atm, 0",
        "unknown-position.csv, 2, UNKNOWN_POSITION, position, NSF, 0",
        "field-count.csv, 2, FIELD_COUNT, , 7 fields, 0",
        "tyre-date.csv, 3, BAD_TYRE_DATE, tyreDate, 319, 1",
    })
    void oneBadFieldPutsOneRowAside(
            String file, long line, RejectionRule rule, String field, String value, int accepted) {
        List<LogRow> rows = read(file);

        Rejection rejection = Fixtures.rejected(rows).get(0);
        assertThat(Fixtures.rejected(rows)).hasSize(1);
        assertThat(Fixtures.accepted(rows)).hasSize(accepted);
        assertThat(rejection.rule()).isEqualTo(rule);
        assertThat(rejection.field()).isEqualTo(field);
        assertThat(rejection.rawValue()).isEqualTo(value);
        assertThat(rejection.source().toString()).isEqualTo(file + ":" + line);
        assertThat(rejection.rawText()).startsWith("V");
        assertThat(count(rows).rows()).isEqualTo(accepted + 1);
    }

    @Test
    void aBlankBatteryIsMissingAndNotOk() {
        assertThat(Fixtures.accepted(read("blank-battery.csv")))
                .extracting(r -> r.wheel().battery())
                .containsExactly(null, BatteryReport.OK);
    }

    @Test
    void blankLinesAreNoRowsButLinesKeepTheirNumbers() {
        List<LogRow> rows = read("blank-lines.csv");

        assertThat(count(rows).rows()).isEqualTo(1);
        assertThat(Fixtures.accepted(rows).get(0).source().line()).isEqualTo(3);
    }

    @Test
    void hexIdsAreNormalisedAndAVinCheckDigitIsOnlyNoted() {
        List<LogRow> rows = read("hex-and-vin.csv");

        assertThat(Fixtures.accepted(rows).get(0).wheel().sensorId()).isEqualTo("0A1B2C01");
        assertThat(count(rows).notes())
                .isEqualTo(Map.of(Note.DATE_WITHOUT_TIME, 1L, Note.ID_NORMALISED, 1L, Note.VIN_CHECK_DIGIT, 1L));
    }

    /** ISO 8601: Monday of week 23 of 2019 is the 3rd of June. */
    @Test
    void aTyreDateIsAWeek() {
        assertThat(Fixtures.accepted(read("tyre-date.csv")).get(0).wheel().tyreDate())
                .isEqualTo(LocalDate.of(2019, 6, 3));
    }

    @Test
    void anUnknownKeyOfAWheelPutsThatWheelAsideAndOneOfAVisitAllItsWheels() {
        List<LogRow> rows = read("unknown-key.jsonl");

        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.wheel().position().code())
                .containsExactly("1R");
        assertThat(Fixtures.rejected(rows))
                .extracting(Rejection::field)
                .containsExactly("sensorID", "milage", "milage");
        assertThat(Fixtures.rejected(rows).get(0).rawText())
                .isEqualTo("{\"position\":\"1L\",\"read\":\"ok\",\"sensorID\":\"0A1B2C01\"}");
        assertThat(Fixtures.rejected(rows).get(0).remedy()).contains("docs/visit-log.md");
        assertThat(count(rows).rows()).isEqualTo(4);
    }

    @Test
    void aLineThatIsNoJsonIsOneRowAndDoesNotHarmTheNext() {
        List<LogRow> rows = read("broken-line.jsonl");

        assertThat(Fixtures.accepted(rows)).extracting(r -> r.source().line()).containsExactly(1L);
        assertThat(Fixtures.rejected(rows))
                .extracting(Rejection::rule)
                .containsExactly(RejectionRule.NOT_JSON, RejectionRule.WRONG_KIND, RejectionRule.NOT_JSON);
        assertThat(Fixtures.rejected(rows).get(1).expected()).contains("leading zeros");
    }

    /** 32.5 psi = 224.08 kPa (NIST SP 811, appendix B.8: 6.894757 kPa). */
    @Test
    void aLayoutMapsHeadersDatesUnitsDecimalCommaAndSides() {
        Path folder = Fixtures.TRAPS.resolve("layouts");
        List<LogRow> rows = Fixtures.read(folder, folder.resolve("visit-logs"));

        LoggedWheel first = Fixtures.accepted(rows).get(0);
        LoggedWheel second = Fixtures.accepted(rows).get(1);
        assertThat(first.visit().visitedAt()).isEqualTo(LocalDateTime.of(2025, 3, 4, 0, 0));
        assertThat(first.wheel().pressureKpa()).isCloseTo(32.5 * 6.894757, within(1e-4));
        assertThat(first.wheel().position().code()).isEqualTo("1L");
        assertThat(first.wheel().positionRaw()).isEqualTo("NSF");
        assertThat(second.wheel().position().code()).isEqualTo("2RI");
        assertThat(second.wheel().read()).isEqualTo(ReadOutcome.NO_ANSWER);
        assertThat(first.source().file()).isEqualTo("visit-logs/bay1.csv");
        assertThat(count(rows).layout()).isEqualTo("bay");
        assertThat(count(rows).notes())
                .containsEntry(Note.PRESSURE_PSI, 1L)
                .containsEntry(Note.DECIMAL_COMMA, 1L)
                .containsEntry(Note.POSITION_WORD, 2L)
                .containsEntry(Note.DATE_FORMAT, 2L);
    }

    @Test
    void idsThatASpreadsheetOrAHandSpoiledAreRefusedWithAHintAndNotMended() {
        List<LogRow> rows = read("spoiled-ids.csv");

        assertThat(Fixtures.rejected(rows))
                .extracting(Rejection::rule)
                .containsExactly(RejectionRule.ID_AS_NUMBER, RejectionRule.BAD_SENSOR_ID, RejectionRule.BAD_SENSOR_ID);
        assertThat(Fixtures.rejected(rows).get(0).expected()).contains("1234E56");
        assertThat(Fixtures.rejected(rows).get(1).expected()).contains("0A1B2C3D");
        assertThat(Fixtures.rejected(rows).get(2).expected()).contains("idBase");
        assertThat(Fixtures.accepted(rows)).hasSize(1);
    }

    private static List<LogRow> form(String file) {
        Path folder = Fixtures.TRAPS.resolve("file-forms");
        return Fixtures.read(folder, folder.resolve("visit-logs/" + file));
    }

    /** 169552957 = 0x0A1B2C3D, 4294967294 = 0xFFFFFFFE. */
    @Test
    void decimalIdsAndCodesForNoTemperatureHoldForTheWholeFile() {
        List<LogRow> rows = form("decimal.csv");

        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.wheel().sensorId())
                .containsExactly("0A1B2C3D", "FFFFFFFE");
        assertThat(Fixtures.accepted(rows))
                .allSatisfy(r -> assertThat(r.wheel().temperatureCelsius()).isNull());
        assertThat(Fixtures.rejected(rows)).extracting(Rejection::rawValue).containsExactly("0A1B2C04");
        assertThat(count(rows).notes())
                .containsEntry(Note.ID_FROM_DECIMAL, 2L)
                .containsEntry(Note.TEMPERATURE_NO_VALUE, 2L);
    }

    @Test
    void lostZerosComeBackWhereTheWidthIsKnown() {
        List<LogRow> rows = form("width.csv");

        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.wheel().sensorId())
                .containsExactly("01234567", "00000012");
        assertThat(Fixtures.rejected(rows)).extracting(Rejection::rawValue).containsExactly("A1B2C04");
    }

    /** The same day and time in the two systems, 1462 days apart (ECMA-376 part 1, 18.17.4.1). */
    @Test
    void dayNumbersOfBothSpreadsheetSystemsAreRead() {
        for (String file : List.of("serial1900.csv", "serial1904.csv")) {
            assertThat(Fixtures.accepted(form(file)).get(0).visit().visitedAt())
                    .as(file)
                    .isEqualTo(LocalDateTime.of(2025, 3, 4, 9, 0));
        }
    }

    @Test
    void aWrongOrderOfDayAndMonthIsProvenByOneDateAndToldForTheFile() {
        List<LogRow> rows = form("monthfirst.csv");

        assertThat(Fixtures.rejected(rows))
                .singleElement()
                .satisfies(r -> assertThat(r.expected()).contains("with day and month exchanged"));
        assertThat(FileDoubt.of(count(rows))).extracting(FileDoubt::kind).containsExactly(FileDoubt.Kind.DATE_ORDER);
        assertThat(count(rows).notes()).containsEntry(Note.DATE_TWO_DIGIT_YEAR, 1L);
    }
}
