package sensorrounds.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;

class VisitResolverTest {
    private static LoggedWheel row(String file, long line, int revision, String position, String sensor, String notes) {
        FlatRecord record = FlatRecord.good()
                .at(file, line)
                .with(Field.REVISION, Integer.toString(revision))
                .with(Field.POSITION, position)
                .with(Field.SENSOR_ID, sensor)
                .with(Field.NOTES, notes);
        return (position == null ? record.with(Field.READ, null) : record).accepted();
    }

    private static ResolvedVisits resolve(LoggedWheel... rows) {
        return VisitResolver.resolve(List.of(rows));
    }

    @Test
    void aLogSentTwiceCountsOnceAndTheFirstSourceIsKept() {
        LoggedWheel first = row("a", 2, 0, "1L", "0A1B2C3D", null);
        LoggedWheel again = row("b", 9, 0, "1L", "0A1B2C3D", null);

        ResolvedVisits resolved = resolve(again, first);

        assertThat(resolved.accepted()).containsExactly(first);
        assertThat(resolved.duplicates())
                .containsExactly(new Duplicate(again, Duplicate.Rule.EXACT, new Source("a", 2)));
    }

    @Test
    void theHighestRevisionCountsAsAWhole() {
        LoggedWheel before = row("a", 2, 0, "1L", "0A1B2C3D", null);
        LoggedWheel wrongPlace = row("a", 3, 0, "2L", "0A1B2C3E", null);
        LoggedWheel corrected = row("b", 7, 1, "1L", "0A1B2C3F", null);

        ResolvedVisits resolved = resolve(before, wrongPlace, corrected);

        assertThat(resolved.accepted()).containsExactly(corrected);
        assertThat(resolved.duplicates())
                .extracting(Duplicate::rule)
                .containsExactly(Duplicate.Rule.REVISED, Duplicate.Rule.REVISED);
        assertThat(resolved.visits())
                .singleElement()
                .extracting(v -> v.header().revision())
                .isEqualTo(1);
    }

    @Test
    void atTheSameRevisionTheLaterSourceCounts() {
        LoggedWheel earlier = row("a", 2, 0, "1L", "0A1B2C3D", "as found");
        LoggedWheel later = row("b", 2, 0, "1L", "0A1B2C3F", "as left");

        ResolvedVisits resolved = resolve(later, earlier);

        assertThat(resolved.accepted()).containsExactly(later);
        assertThat(resolved.duplicates())
                .containsExactly(new Duplicate(earlier, Duplicate.Rule.SUPERSEDED, later.source()));
        assertThat(resolved.visits().get(0).header().notes()).isEqualTo("as left");
    }

    @Test
    void twoSensorsInOnePlaceOfOneFileAreBothPutAside() {
        LoggedWheel one = row("a", 2, 0, "1L", "0A1B2C3D", null);
        LoggedWheel two = row("a", 3, 0, "1L", "0A1B2C3E", null);
        LoggedWheel other = row("a", 4, 0, "1R", "0A1B2C3F", null);

        ResolvedVisits resolved = resolve(one, two, other);

        assertThat(resolved.accepted()).containsExactly(other);
        assertThat(resolved.duplicates()).isEmpty();
        assertThat(resolved.rejections())
                .extracting(Rejection::rule, r -> r.source().line(), Rejection::position)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(RejectionRule.TWO_WHEELS_ONE_PLACE, 2L, "1L"),
                        org.assertj.core.groups.Tuple.tuple(RejectionRule.TWO_WHEELS_ONE_PLACE, 3L, "1L"));
        assertThat(resolved.rejections().get(0).rawText()).contains("0A1B2C3D");
    }

    @Test
    void twoWheelsOfOneNestedVisitInOnePlaceAreBothPutAsideEvenWithoutASensor() {
        LoggedWheel one = row("a", 2, 0, "1L", null, null);
        LoggedWheel two = row("a", 2, 0, "1L", "0A1B2C3E", null);

        assertThat(resolve(one, two).rejections()).hasSize(2);
        assertThat(resolve(one, two).visits()).isEmpty();
    }

    @Test
    void aVisitWithoutWheelsIsAVisit() {
        LoggedWheel bare = row("a", 2, 0, null, null, "no key");

        Visit visit = resolve(bare).visits().get(0);

        assertThat(visit.wheels()).isEmpty();
        assertThat(visit.rows()).containsExactly(bare);
    }

    /** Every order of the same rows must give the same answer; seed 7. */
    @Test
    void theOrderOfTheRowsDoesNotMatterAndNoneIsLost() {
        List<LoggedWheel> rows = new ArrayList<>();
        Random random = new Random(7);
        String[] places = {"1L", "1R", "2LI", "spare", null};
        for (int i = 0; i < 60; i++) {
            // A line has one revision and one header, as in a file; wheels of a nested visit share it.
            int line = 1 + random.nextInt(40);
            String place = places[random.nextInt(places.length)];
            rows.add(row(
                    "f" + random.nextInt(3),
                    line,
                    line % 2,
                    place,
                    place == null ? null : "0A1B2C3" + random.nextInt(2),
                    line % 3 == 0 ? "x" : null));
        }
        ResolvedVisits expected = VisitResolver.resolve(rows);
        assertThat(expected.accepted().size()
                        + expected.duplicates().size()
                        + expected.rejections().size())
                .isEqualTo(60);
        for (int k = 0; k < 50; k++) {
            Collections.shuffle(rows, random);
            assertThat(VisitResolver.resolve(rows).equals(expected))
                    .as("order %d", k)
                    .isTrue();
        }
    }

    @Test
    void rowsOfTwoVehiclesAreRefused() {
        LoggedWheel other = FlatRecord.good().with(Field.VEHICLE_ID, "K8").accepted();

        assertThatIllegalArgumentException()
                .isThrownBy(() -> resolve(row("a", 2, 0, "1L", null, null), other))
                .withMessageContaining("K7")
                .withMessageContaining("K8");
    }
}
