package sensorrounds.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** IDs by the form of their file. Which slips occur is common practice, no source; the arithmetic is checked by hand. */
class SensorIdsTest {
    private static Layout layout(IdForm.Base base, Integer digits) {
        return new Layout(
                "yard",
                List.of("*.csv"),
                ',',
                "UTF-8",
                '.',
                null,
                null,
                null,
                Map.of(),
                Set.of(),
                Map.of(),
                Map.of(),
                new IdForm(base, digits),
                Set.of());
    }

    private static FlatRecord id(String text) {
        return FlatRecord.good().with(Field.SENSOR_ID, text);
    }

    /** 0xFFFFFFFE = 4294967294; 0x0A1B2C3D = 169552957; 0x00ABCDEF = 11259375. */
    @ParameterizedTest
    @CsvSource({"4294967294, FFFFFFFE", "169552957, 0A1B2C3D", "11259375, 00ABCDEF", "0169552957, 0A1B2C3D"})
    void decimalIdsBecomeHexadecimalWhereTheLayoutSaysSo(String text, String stored) {
        Layout decimal = layout(IdForm.Base.DECIMAL, null);

        assertThat(id(text).accepted(decimal).wheel().sensorId()).isEqualTo(stored);
        assertThat(id(text).notes(decimal)).isEqualTo(Map.of(Note.ID_FROM_DECIMAL, 1L));
    }

    @ParameterizedTest
    @CsvSource({
        "0A1B2C3D, BAD_SENSOR_ID",
        "4294967296, BAD_SENSOR_ID",
        "12345678901, BAD_SENSOR_ID",
        "1.23457E+08, ID_AS_NUMBER",
        "4294967295, PLACEHOLDER_ID",
        "0, PLACEHOLDER_ID"
    })
    void whatIsNoDecimalIdIsRefusedInADecimalFile(String text, RejectionRule rule) {
        assertThat(id(text).rejected(layout(IdForm.Base.DECIMAL, null)).rule()).isEqualTo(rule);
    }

    @Test
    void aDecimalIdMayHaveFewerHexadecimalDigits() {
        assertThat(id("11259375")
                        .accepted(layout(IdForm.Base.DECIMAL, 7))
                        .wheel()
                        .sensorId())
                .isEqualTo("0ABCDEF");
        assertThat(id("4294967294").rejected(layout(IdForm.Base.DECIMAL, 7)).expected())
                .contains("268435455");
    }

    @Test
    void leadingZerosComeBackOnlyWhereTheLayoutGivesTheWidth() {
        assertThat(id("1234567").accepted().wheel().sensorId()).isEqualTo("1234567");
        assertThat(id("12345").rejected().rule()).isEqualTo(RejectionRule.BAD_SENSOR_ID);

        Layout eight = layout(IdForm.Base.HEX, 8);
        assertThat(id("1234567").accepted(eight).wheel().sensorId()).isEqualTo("01234567");
        assertThat(id("12345").accepted(eight).wheel().sensorId()).isEqualTo("00012345");
        assertThat(id("12345").notes(eight)).containsEntry(Note.ID_PADDED, 1L);
        // No spreadsheet takes a zero off an ID with letters: this one lost another digit.
        assertThat(id("A1B2C3D").rejected(eight).expected()).startsWith("8 hexadecimal digits");
    }

    /** 1234 × 10^56 = 1.234 × 10^59; the same number is 12340E55 and 01234E56. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1.234E+59 | 1234E56 or 01234E56 or 12340E55",
                "1,234E+59 | 1234E56 or 01234E56 or 12340E55",
                "1.23E+12 | 123E10 or 0123E10 or 00123E10 or 1230E9",
                "12345678.0 | 12345678",
            })
    void anIdInExponentFormIsRefusedWithWhatItMayHaveBeen(String text, String candidates) {
        Rejection rejection = id(text).rejected();

        assertThat(rejection.rule()).isEqualTo(RejectionRule.ID_AS_NUMBER);
        assertThat(rejection.expected()).endsWith("it was " + candidates);
        assertThat(rejection.remedy()).contains("formatted as text");
    }

    @ParameterizedTest
    @CsvSource({
        "OA1B2C3D, 0A1B2C3D",
        "0A1B2C3I, 0A1B2C31",
        "0A1B2CS8, 0A1B2C58",
        "0A1B2CG8, 0A1B2C68",
        "OA1B2CSl, 0A1B2C51"
    })
    void lettersWrittenForDigitsAreReportedAndNotApplied(String text, String near) {
        Rejection rejection = id(text).rejected();

        assertThat(rejection.rule()).isEqualTo(RejectionRule.BAD_SENSOR_ID);
        assertThat(rejection.rawValue()).isEqualTo(text);
        assertThat(rejection.expected()).endsWith("copied by hand it may stand for " + near);
    }

    @Test
    void aNumberOfTenDigitsPointsToTheDecimalBase() {
        assertThat(id("4294967294").rejected().expected()).contains("idBase \"decimal\"");
    }

    @Test
    void aWidthThatNoIdHasIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new IdForm(IdForm.Base.HEX, 9))
                .withMessageContaining("6 to 8");
    }
}
