package sensorrounds.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DatesAndCodesTest {
    /** Forms of ISO 8601-1:2019, sections 5.2.2 and 5.4.2; the offset is checked and left out. */
    @ParameterizedTest
    @CsvSource({
        "2025-03-04, 2025-03-04T00:00",
        "2025-03-04T09:05, 2025-03-04T09:05",
        "2025-03-04T09:05:30, 2025-03-04T09:05:30",
        "2025-03-04T09:05:30.25, 2025-03-04T09:05:30.250",
        "'2025-03-04T09:05:30,123456789', 2025-03-04T09:05:30.123456",
        "2025-03-04T09:05Z, 2025-03-04T09:05",
        "2025-03-04T09:05:30+01:00, 2025-03-04T09:05:30",
        "2025-03-04T09:05-0330, 2025-03-04T09:05",
        "2024-02-29T23:59, 2024-02-29T23:59",
    })
    void isoTimesKeepTheWallClock(String text, LocalDateTime expected) {
        assertThat(IsoDateTimes.dateTime(text)).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "2025",
                "2025-3-4",
                "2025/03/04",
                "2025-02-29",
                "2025-03-04T",
                "2025-03-04T9:05",
                "2025-03-04T24:00",
                "2025-03-04T09:60",
                "2025-03-04 09:05",
                "2025-03-04T09:05:",
                "2025-03-04T09:05:30.",
                "2025-03-04T09:05+",
                "2025-03-04T09:05+25:00",
                "2025-03-04T09:05x",
                "2025-03-04T09:05Z1",
                "+2025-03-04",
                "2025-03-0४"
            })
    void anythingElseIsNoTime(String text) {
        assertThat(IsoDateTimes.dateTime(text)).isNull();
    }

    @ParameterizedTest
    @CsvSource({
        "dd.MM.yyyy, 04.03.2025, 2025-03-04T00:00",
        "d/M/yyyy, 4/3/2025, 2025-03-04T00:00",
        "d/M/yyyy, 14/12/2025, 2025-12-14T00:00",
        "MM/dd/yy HH:mm, 03/04/25 17:08, 2025-03-04T17:08",
        "MM/dd/yy HH:mm, 03/04/90 17:08, 1990-03-04T17:08",
        "yyyyMMdd'T'HHmmss, 20250304T091530, 2025-03-04T09:15:30",
    })
    void ownFormsAreRead(String pattern, String text, LocalDateTime expected) {
        assertThat(DatePattern.of(pattern).read(text)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"dd.MM.yyyy, 4.3.2025", "dd.MM.yyyy, 31.02.2025", "dd.MM.yyyy, 04.03.2025x", "dd.MM.yyyy, 04.03.20"})
    void aTextOfAnotherFormIsNoDate(String pattern, String text) {
        assertThat(DatePattern.of(pattern).read(text)).isNull();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"dd.MM", "dd MMM yyyy", "yyyy-MM-dd hh:mm a", "yyyy-MM-dd HH", "yyyyy-MM-dd", "dd.MM.yyyy dd"})
    void aFormThatIsNotSupportedIsRefusedWithTheLettersThatAre(String pattern) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DatePattern.of(pattern))
                .withMessageContaining(pattern)
                .withMessageContaining("yyyy");
    }

    /** Week dates of ISO 8601: 2009-W01 starts on 2008-12-29, 2009-W53 on 2009-12-28; 2010 has 52 weeks only. */
    @ParameterizedTest
    @CsvSource({"0109, 2008-12-29", "5309, 2009-12-28", "2319, 2019-06-03"})
    void aTyreDateIsTheMondayOfItsWeek(String text, LocalDate monday) {
        assertThat(Codes.tyreDate(text)).isEqualTo(monday);
        assertThat(Codes.tyreDate("5310")).isNull();
        assertThat(Codes.tyreDate("0019")).isNull();
    }

    /** Forms of SAE J2012 / ISO 15031-6: letter, digit 0 to 3, three hexadecimal digits, possibly a failure type. */
    @ParameterizedTest
    @CsvSource({
        "C0750, C0750",
        "b1a2f, B1A2F",
        "U0100-87, U0100-87",
        "P0420:1a, P0420-1A",
        "C1234 11, C1234-11",
        "C123411, C1234-11"
    })
    void faultCodesAreNormalised(String text, String code) {
        assertThat(Codes.faultCode(text)).isEqualTo(code);
        assertThat(code.matches("[PCBU][0-3][0-9A-F]{3}(-[0-9A-F]{2})?")).isTrue();
    }

    /**
     * Two bytes carry a code in ISO 15031-5 / SAE J1979: two bits for the letter P, C, B or U, two for the first digit, and
     * three hexadecimal digits, so that each of the 65,536 values is one code; E1 03 is U2103 (all from memory).
     */
    @Test
    void everyCodeThatTwoBytesCanCarryIsReadAndNoOther() {
        assertThat(ofTwoBytes(0xE103)).isEqualTo("U2103");
        for (int bytes = 0; bytes < 0x10000; bytes++) {
            assertThat(Codes.faultCode(ofTwoBytes(bytes))).isEqualTo(ofTwoBytes(bytes));
        }
        for (char letter = ' '; letter < 0x7F; letter++) {
            assertThat(Codes.faultCode(letter + "0123") != null)
                    .as("letter " + letter)
                    .isEqualTo("PCBUpcbu".indexOf(letter) >= 0);
            assertThat(Codes.faultCode("P" + letter + "123") != null)
                    .as("first digit " + letter)
                    .isEqualTo(letter >= '0' && letter <= '3');
        }
    }

    private static String ofTwoBytes(int bytes) {
        return "PCBU".charAt(bytes >> 14) + String.format("%d%03X", bytes >> 12 & 3, bytes & 0xFFF);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "C075", "D0750", "C4750", "C07G0", "CO750", "C0750-1", "C0750-111", "C0750/11"})
    void otherTextIsNoFaultCode(String text) {
        assertThat(Codes.faultCode(text)).isNull();
    }

    @ParameterizedTest
    @CsvSource({"0a1b2c3d, 0A1B2C3D", "0x0A1B2C3D, 0A1B2C3D", "0X00a1b2, 00A1B2", "12345678, 12345678"})
    void sensorIdsKeepTheirLeadingZeros(String text, String id) {
        assertThat(Codes.sensorId(text)).isEqualTo(id);
    }

    /** The library's own reading of decimal numbers is the reference; seed 20250304. */
    @Test
    void numbersAreReadExactlyAsTheLibraryReadsThem() {
        Random random = new Random(20250304);
        for (int i = 0; i < 100_000; i++) {
            String text = Double.toString(random.nextGaussian() * Math.pow(10, random.nextInt(12) - 4));
            assertThat(Numbers.read(text, '.')).isEqualTo(Double.parseDouble(text));
            String rounded =
                    String.format(java.util.Locale.ROOT, "%." + random.nextInt(5) + "f", random.nextDouble() * 1e6);
            assertThat(Numbers.read(rounded, '.')).isEqualTo(Double.parseDouble(rounded));
            assertThat(Numbers.read(rounded.replace('.', ','), ',')).isEqualTo(Double.parseDouble(rounded));
        }
        assertThat(Numbers.read(".5", '.')).isEqualTo(0.5);
        assertThat(Numbers.read("1e3", '.')).isEqualTo(1000);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "-", ".", "1.2.3", "1,2", "1 000", "NaN", "Infinity", "1f", "0x10", "1e999", "--1", "e5", "١"
            })
    void otherTextIsNoNumber(String text) {
        assertThat(Numbers.read(text, '.')).isNaN();
    }
}
