package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WarningSignsTest {
    /** Odds 1 to 10 that a class is dark, times 9 for each dark visit more than lit ones: 9/10, then 81/10. */
    @Test
    void twoDarkVisitsMoreThanLitOnesSayThatAClassShowsNoWarning() {
        WarningSigns signs = WarningSigns.of(new WarningSignCells()
                .dead("trailer", 0, 2)
                .dead("truck", 0, 1)
                .dead("van", 20, 3)
                .dead(null, 4, 6));
        assertThat(signs.shows("trailer")).isFalse();
        assertThat(signs.shows("truck")).isTrue();
        assertThat(signs.shows("van")).isTrue();
        assertThat(signs.shows(null)).isFalse();
        assertThat(signs.shows("never met")).isTrue();
    }
}
