package sensorrounds.causes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.causes.Lives.Cause;

class StateOccupationTest {
    @Test
    void withoutPassingThroughItIsTheIncidenceOfCauses() {
        // From age 0 on: under delayed entry the two kinds of error differ a little.
        List<EndedLife<Cause>> lives = Lives.competing(8, 300).stream()
                .map(l -> new EndedLife<>(0, l.exit(), l.cause(), 1))
                .toList();
        List<Stay<String>> stays = new ArrayList<>();
        for (EndedLife<Cause> life : lives) {
            String next = life.cause() == null ? null : life.cause().name();
            stays.add(new Stay<>(stays.size(), "good", life.entry(), life.exit(), next));
        }
        StateOccupation<String> states = StateOccupation.of(List.of("good", "BATTERY", "DAMAGE"), stays);
        Incidence<Cause> incidence =
                AalenJohansen.withDefaults().fit(CauseSample.of(List.of(Cause.BATTERY, Cause.DAMAGE), lives));
        for (double age = 500; age < incidence.to(); age += 500) {
            assertThat(states.of("BATTERY").at(age))
                    .isCloseTo(incidence.of(Cause.BATTERY).at(age), within(1e-12));
            // The jackknife equals the Greenwood-type error exactly here.
            assertThat(states.errorOf("BATTERY").at(age))
                    .isCloseTo(incidence.errorOf(Cause.BATTERY).at(age), within(1e-12));
            assertThat(states.errorOf("good").at(age))
                    .isCloseTo(incidence.eventFreeError().at(age), within(1e-12));
        }
    }

    /** On paper: at 1, one of four good goes weak; at 2, one of three good fails; at 3, the one weak fails. */
    @Test
    void fourSensorsByHand() {
        StateOccupation<String> states = StateOccupation.of(
                List.of("good", "weak", "dead"),
                List.of(
                        new Stay<>(1, "good", 0, 1, "weak"),
                        new Stay<>(1, "weak", 1, 3, "dead"),
                        new Stay<>(2, "good", 0, 2, "dead"),
                        new Stay<>(3, "good", 0, 4, null),
                        new Stay<>(4, "good", 0, 4, null)));
        assertThat(states.of("good").at(1)).isEqualTo(0.75);
        assertThat(states.of("weak").at(2)).isEqualTo(0.25);
        assertThat(states.of("dead").at(2)).isCloseTo(0.25, within(1e-15));
        assertThat(states.of("dead").at(3)).isCloseTo(0.5, within(1e-15));
        assertThat(states.of("weak").at(3)).isZero();
        assertThat(states.meanTime("weak", 4)).isCloseTo(0.5, within(1e-15));
        // Without censoring before 4 it is the share of four units, with its binomial error.
        assertThat(states.errorOf("dead").at(3)).isCloseTo(Math.sqrt(0.5 * 0.5 / 4), within(1e-15));
    }

    @Test
    void staysThatCannotBe() {
        assertThatThrownBy(() -> new Stay<>(1, "good", 0, 1, "good")).hasMessageContaining("other than its own");
        assertThatThrownBy(() -> StateOccupation.of(
                        List.of("good", "dead"),
                        List.of(new Stay<>(1, "good", 0, 5, null), new Stay<>(1, "good", 3, 9, "dead"))))
                .hasMessageContaining("overlaps");
        assertThatThrownBy(() -> StateOccupation.of(List.of("good"), List.of(new Stay<>(1, "good", 0, 5, "dead"))))
                .hasMessageContaining("not among [good]");
    }
}
