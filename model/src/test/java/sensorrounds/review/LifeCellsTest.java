package sensorrounds.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.history.FailureCause;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;

class LifeCellsTest {
    @Test
    void identicalLivesBecomeAWeight() {
        LifeCells cells = new LifeCells()
                .add(Lifetime.censored(0, 9), null, 1)
                .add(Lifetime.censored(0, 9), null, 2)
                .add(Lifetime.censored(0, 9), EndCause.PREVENTIVE, 1)
                .add(Lifetime.interval(0, 9, 12), EndCause.BATTERY, 4);
        assertThat(cells.size()).isEqualTo(3);
        assertThat(cells.lives()).isEqualTo(8);
        LifetimeSample sample = cells.sample();
        assertThat(sample.size())
                .as("to a survival curve a replacement is a censored life")
                .isEqualTo(2);
        assertThat(sample.failures()).isEqualTo(4);
        assertThat(cells.causes().ends(EndCause.PREVENTIVE)).isEqualTo(1);
        assertThat(cells.preventiveShare()).isEqualTo(0.2);
        assertThat(new LifeCells().preventiveShare()).isNaN();
    }

    /** Whole numbers: any split merged in any order is the same. */
    @Test
    void mergingKnowsNoOrder() {
        Random random = new Random(4);
        LifeCells whole = new LifeCells();
        LifeCells[] parts = Stream.generate(LifeCells::new).limit(5).toArray(LifeCells[]::new);
        for (int i = 0; i < 500; i++) {
            int entry = random.nextInt(20);
            Lifetime life = i % 2 == 0
                    ? Lifetime.interval(entry, entry + random.nextInt(5), entry + 6)
                    : Lifetime.censored(entry, entry + 1);
            EndCause cause =
                    i % 2 == 0 ? EndCause.values()[random.nextInt(5)] : i % 3 == 0 ? EndCause.PREVENTIVE : null;
            whole.add(life, cause, 1);
            parts[random.nextInt(5)].add(life, cause, 1);
        }
        LifeCells merged = new LifeCells();
        for (int i : new int[] {3, 0, 4, 2, 1}) {
            merged.merge(parts[i]);
        }
        assertThat(merged.size()).isEqualTo(whole.size());
        assertThat(merged.causes().lives()).isEqualTo(whole.causes().lives());
    }

    @ParameterizedTest
    @EnumSource(FailureCause.class)
    void everyCauseOfFailureIsAnEndOfTheSameName(FailureCause cause) {
        assertThat(EndCause.of(cause).name()).isEqualTo(cause.name());
    }

    @Test
    void aFailureNeedsItsCauseAndNothingElseHasOne() {
        LifeCells cells = new LifeCells();
        assertThatThrownBy(() -> cells.add(Lifetime.interval(0, 9, 12), null, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("exactly when it failed");
        assertThatThrownBy(() -> cells.add(Lifetime.interval(0, 9, 12), EndCause.PREVENTIVE, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> cells.add(Lifetime.censored(0, 9), EndCause.BATTERY, 1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /**
     * Over lives of all phases the grid neither adds time under observation nor moves the middles of the intervals, but for
     * half a day; on years by more, since a failure in the step of its entry can only go on to the next.
     */
    @ParameterizedTest
    @EnumSource(AgeGrid.class)
    void aCoarserGridMovesNothingOnAverage(AgeGrid grid) {
        Random random = new Random(11);
        int n = 200_000;
        double exposure = 0;
        double middle = 0;
        for (int i = 0; i < n; i++) {
            int entry = random.nextInt(3640);
            Lifetime seen = Lifetime.censored(entry, entry + 400 + random.nextInt(1820));
            Lifetime coarse = grid.coarse(seen);
            exposure += (coarse.lower() - coarse.entry()) - (seen.lower() - seen.entry());
            int lower = entry + random.nextInt(3640);
            Lifetime failed = Lifetime.interval(entry, lower, lower + 1 + random.nextInt(400));
            Lifetime wider = grid.coarse(failed);
            middle += (wider.lower() + wider.upper()) / 2.0 - (failed.lower() + failed.upper()) / 2.0;
        }
        assertThat(exposure / n).isCloseTo(0, within(1.0));
        assertThat(middle / n).isCloseTo(0, within(grid == AgeGrid.YEARS ? 2.0 : 1.0));
    }

    @Test
    void aFailureWithinOneStepKeepsAnInterval() {
        assertThat(AgeGrid.FOUR_WEEKS.coarse(Lifetime.exact(3, 25))).isEqualTo(Lifetime.interval(0, 0, 28));
        assertThat(AgeGrid.FOUR_WEEKS.coarse(Lifetime.exact(3, 28))).isEqualTo(Lifetime.interval(0, 0, 28));
        assertThat(AgeGrid.FOUR_WEEKS.coarse(Lifetime.interval(3, 25, 33))).isEqualTo(Lifetime.interval(0, 28, 56));
        // Under observation from the step's own age, it cannot have failed before.
        assertThat(AgeGrid.FOUR_WEEKS.coarse(Lifetime.interval(20, 20, 27))).isEqualTo(Lifetime.interval(28, 28, 56));
        assertThat(AgeGrid.QUARTERS.coarse(Lifetime.censored(0, 30))).isEqualTo(Lifetime.censored(0, 0));
        assertThat(AgeGrid.WEEKS.coarse(new Lifetime(10, 11, Lifetime.NEVER, 3)))
                .isEqualTo(new Lifetime(7, 14, Lifetime.NEVER, 3));
        assertThat(AgeGrid.DAYS.coarse(Lifetime.exact(3, 25))).isEqualTo(Lifetime.exact(3, 25));
    }

    @Test
    void theGridFollowsTheNumberOfDistinctLives() {
        assertThat(AgeGrid.of(AgeGrid.MANY)).isEqualTo(AgeGrid.DAYS);
        assertThat(AgeGrid.of(AgeGrid.MANY + 1)).isEqualTo(AgeGrid.WEEKS);
        assertThat(AgeGrid.of(AgeGrid.VERY_MANY + 1)).isEqualTo(AgeGrid.FOUR_WEEKS);
    }
}
