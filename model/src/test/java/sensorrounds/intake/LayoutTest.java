package sensorrounds.intake;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class LayoutTest {
    @Test
    void aMappedWordThatItsFieldDoesNotKnowIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Layouts.withWords(null, Field.READ, Map.of("gut", "good")))
                .withMessageContaining("words.read")
                .withMessageContaining("\"good\"")
                .withMessageContaining("no-answer");
    }

    @Test
    void nearsideWithoutTheSideOfTheRoadIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Layouts.withWords(null, Field.POSITION, Map.of("NSF", "1 nearside")))
                .withMessageContaining("drivingSide");
    }

    @Test
    void aPositionThatIsNoPlaceIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Layouts.withWords(null, Field.POSITION, Map.of("VL", "front left")))
                .withMessageContaining("\"front left\"");
    }

    @Test
    void aFieldGivenTwiceIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> layout(Map.of("Kz", Field.VEHICLE_ID, "Nr", Field.VEHICLE_ID), Map.of()))
                .withMessageContaining("vehicleId");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> layout(Map.of("Unit", Field.PRESSURE_UNIT), Map.of(Field.PRESSURE_UNIT, "bar")))
                .withMessageContaining("constants");
    }

    @Test
    void aDateFormWithoutATimeIsNoDateTimeForm() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Layouts.withDates(null, "dd.MM.yyyy"))
                .withMessageContaining("HH:mm");
    }

    private static Layout layout(Map<String, Field> columns, Map<Field, String> constants) {
        return new Layout(
                "yard", List.of("*.csv"), ';', "UTF-8", '.', null, null, null, columns, Set.of(), constants, Map.of());
    }
}
