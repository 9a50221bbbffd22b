package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import sensorrounds.visit.WheelPosition;

/** The check on our own work: it must be able to find what is never to be. */
class StaysTest {
    private static final LocalDate DAY = LocalDate.of(2020, 1, 1);
    private static final Place LEFT = new Place(null, WheelPosition.parse("1L").orElseThrow());
    private static final Place RIGHT = new Place(null, WheelPosition.parse("1R").orElseThrow());

    private final Stays stays = new Stays();
    private final FindingLog findings = new FindingLog("V1");

    private static LifeDraft life(String id) {
        return new LifeDraft(LEFT, id, null, Origins.unknown("no matter"), DAY);
    }

    @Test
    void twoSensorsAtOnePlaceAtOnceAreFound() {
        LifeDraft first = life("A1");
        stays.begin(first, LEFT, DAY);
        stays.end(first, DAY.plusDays(100));
        stays.begin(life("A2"), LEFT, DAY.plusDays(99));

        stays.check(DAY.plusDays(200), findings);

        assertThat(findings.inTime()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.IMPOSSIBLE_ORDER);
            assertThat(f.what())
                    .startsWith("the lives built here overlap at axle 1, left: ")
                    .contains("A1", "A2");
            assertThat(f.done()).contains("a fault of the program and not of the logs");
        });
    }

    @Test
    void oneAfterTheOtherMovesAndEmptyPlacesAreNoContradiction() {
        LifeDraft first = life("A1");
        stays.begin(first, LEFT, DAY);
        stays.end(first, DAY.plusDays(100));
        stays.begin(first, RIGHT, DAY.plusDays(100));
        stays.begin(life("A2"), LEFT, DAY.plusDays(100));

        stays.check(DAY.plusDays(200), findings);

        assertThat(findings.inTime()).isEmpty();
    }
}
