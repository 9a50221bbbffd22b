package sensorrounds.plausibility;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.visit.Source;

class SharedIdsTest {
    private static SharedIds.Span span(String vehicle, String first, String last) {
        return new SharedIds.Span(
                "0A1B2C01",
                vehicle,
                new SharedIds.Sighting(LocalDate.parse(first), new Source(vehicle, 2)),
                new SharedIds.Sighting(LocalDate.parse(last), new Source(vehicle, 9)));
    }

    private static List<Doubt> doubts(SharedIds.Span... spans) {
        return SharedIds.of(Doubt.Kind.SENSOR_AT_TWO_VEHICLES, List.of(spans));
    }

    @Test
    void aSensorThatMovesForGoodIsNoDoubt() {
        assertThat(doubts(span("K1", "2025-01-10", "2025-03-10"), span("K2", "2025-03-11", "2025-09-01")))
                .isEmpty();
    }

    @Test
    void aSensorSeenOnBothOnOneDayIsDoubtedForBoth() {
        List<Doubt> doubts = doubts(span("K2", "2025-03-10", "2025-09-01"), span("K1", "2025-01-10", "2025-03-10"));

        assertThat(doubts).extracting(Doubt::vehicleId).containsExactly("K1", "K2");
        assertThat(doubts.get(0).what())
                .isEqualTo("sensor 0A1B2C01 is on vehicle K1 from 2025-01-10 to 2025-03-10 and on vehicle K2 from"
                        + " 2025-03-10 to 2025-09-01");
        assertThat(doubts.get(0).sources()).hasSize(4);
    }

    @Test
    void aGlimpseBetweenTwoSightingsElsewhereIsDoubted() {
        assertThat(doubts(span("K1", "2025-01-10", "2025-09-10"), span("K2", "2025-03-11", "2025-03-11")))
                .hasSize(2);
    }

    @Test
    void anIdOnManyVehiclesIsToldOnce() {
        List<SharedIds.Span> spans = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            spans.add(span("K" + i, "2025-01-10", "2025-03-10"));
        }

        assertThat(SharedIds.of(Doubt.Kind.SENSOR_AT_TWO_VEHICLES, spans))
                .singleElement()
                .satisfies(d -> assertThat(d.what()).contains("on 50 vehicles"));
    }

    @Test
    void aVinIsNotShown() {
        assertThat(SharedIds.of(
                                Doubt.Kind.VIN_AT_TWO_VEHICLES,
                                List.of(span("K1", "2025-01-10", "2025-03-10"), span("K2", "2025-01-10", "2025-03-10")))
                        .toString())
                .contains("one VIN")
                .doesNotContain("0A1B2C01");
    }
}
