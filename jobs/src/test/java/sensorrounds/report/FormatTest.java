package sensorrounds.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Spacing after ISO 80000-1:2009, 7.3.1 (groups of three, by a small space) and 7.3.4 (a space before the symbol). */
class FormatTest {
    @ParameterizedTest
    @CsvSource({"0,0", "999,999", "1240,1_240", "48216,48_216", "1000000,1_000_000", "-1240,−1_240"})
    void groupsThousands(long n, String expected) {
        assertThat(Format.whole(n)).isEqualTo(expected.replace('_', '\u202f'));
    }

    @ParameterizedTest
    @CsvSource({"0.124,12.4", "0,0.0", "1,100.0", "0.0221,2.2", "0.00001,<~0.1"})
    void writesCountedSharesToOneDecimal(double share, String expected) {
        assertThat(Format.share(share)).isEqualTo(expected.replace('~', '\u00a0') + "\u202f%");
    }

    @ParameterizedTest
    @CsvSource({"0.431,43", "0,0", "1,100", "0.004,<~1", "0.996,>~99", "0.985,99"})
    void writesModelChancesInWholePercent(double p, String expected) {
        assertThat(Format.chance(p)).isEqualTo(expected.replace('~', '\u00a0') + "\u202f%");
    }

    @ParameterizedTest
    @CsvSource({"0.431,43", "0.985,99", "0.996,>~99", "1,>~99"})
    void isNeverQuiteCertainOfASuspect(double p, String expected) {
        assertThat(Format.sure(p)).isEqualTo(expected.replace('~', '\u00a0') + "\u202f%");
        assertThat(Format.sure(Double.NaN)).isEqualTo("–");
    }

    @ParameterizedTest
    @CsvSource({
        "2.5341,2.53",
        "1.5,1.50",
        "0.01234,0.0123",
        "12.06,12.1",
        "123.6,124",
        "1234,1_230",
        "-2.5,−2.50",
        "0,0"
    })
    void keepsThreeSignificantDigits(double x, String expected) {
        assertThat(Format.figure(x)).isEqualTo(expected.replace('_', '\u202f'));
    }

    @ParameterizedTest
    @CsvSource({"20,1~month", "300,10~months", "731,2.0~years", "2265,6.2~years"})
    void givesAgesInMonthsThenYears(int days, String expected) {
        assertThat(Format.age(days)).isEqualTo(expected.replace('~', '\u00a0'));
    }

    @Test
    void writesADashForWhatIsNoNumber() {
        assertThat(Format.share(Double.NaN)).isEqualTo("–");
        assertThat(Format.chance(Double.NaN)).isEqualTo("–");
        assertThat(Format.chances(0.1, Double.NaN)).isEqualTo("–");
        assertThat(Format.figure(Double.POSITIVE_INFINITY)).isEqualTo("–");
        assertThat(Format.fixed(Double.NaN, 1)).isEqualTo("–");
        assertThat(Format.money("EUR", Double.NaN)).isEqualTo("–");
        assertThat(Format.age(null)).isEqualTo("–");
        assertThat(Format.share(1, 0)).isEqualTo("–");
        assertThat(Format.key(Double.NaN)).isEmpty();
    }

    @Test
    void neverWritesMinusNought() {
        assertThat(Format.fixed(-0.04, 1)).isEqualTo("0.0");
        assertThat(Format.fixed(-0.06, 1)).isEqualTo("\u22120.1");
        assertThat(Format.money("EUR", -36.8)).isEqualTo("EUR\u00a0\u221237");
    }

    @Test
    void doesNotFollowTheLanguageOfTheMachine() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(Format.fixed(1234.5, 1)).isEqualTo("1\u202f234.5");
            assertThat(Format.key(1234.5)).isEqualTo("1234.5");
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void matchesTheNounToTheNumber() {
        assertThat(Format.count(1, "wheel")).isEqualTo("1\u00a0wheel");
        assertThat(Format.count(0, "wheel")).isEqualTo("0\u00a0wheels");
    }
}
