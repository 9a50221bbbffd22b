package sensorrounds.story;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;

/** A wheel that was written down here and is counted as another vehicle's says so in the grid, and no other wheel does. */
class WheelGridTest {
    private static final RunContext RUN = new RunContext(
            "run",
            LocalDate.of(2026, 1, 1),
            20,
            20,
            20,
            0.2,
            new BatteryReport.LowLimits(15, 2.7, 6),
            90,
            "EUR",
            List.of());

    private static Visit visit() {
        VisitHeader header = new VisitHeader(
                "v1",
                1,
                LocalDateTime.of(2025, 3, 1, 9, 0),
                null,
                "R1",
                "TRACTOR",
                null,
                null,
                null,
                null,
                new TreeMap<>(),
                null,
                null,
                null,
                null,
                null,
                List.of(),
                null,
                null,
                null,
                null,
                null,
                null);
        List<LoggedWheel> rows = new ArrayList<>();
        // Lines 2 and 21: the one's name begins like the other's.
        rows.add(new LoggedWheel(header, wheel("1L", 1), new Source("my log.csv", 2)));
        rows.add(new LoggedWheel(header, wheel("3L", 4), new Source("my log.csv", 21)));
        return new Visit(header, rows);
    }

    private static WheelReading wheel(String place, int tries) {
        return new WheelReading(
                WheelPosition.parse(place).orElseThrow(),
                place,
                "A" + place,
                ReadOutcome.OK,
                tries,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    private static List<Block> told(String kind) {
        StoredRow finding = new StoredRow(Map.of("kind", kind, "sources", "my log.csv:21 my log.csv:30"));
        Map<String, List<StoredRow>> tables = Map.of("findings", List.of(finding), "ranked-replacements", List.of());
        return WheelGrid.part(new VehicleFacts("TRACTOR", RUN, tables, List.of(visit())))
                .blocks();
    }

    @Test
    void aWheelOfAnotherVehicleIsMarkedAndTheMarkExplained() {
        List<Block> blocks = told("WHEEL_OF_ANOTHER_VEHICLE");
        assertThat(((Block.Prose) blocks.get(0)).text())
                .contains("“another's” stands where the answer, or the whole wheel, is taken to be another vehicle's");
        assertThat(((Block.Grid) blocks.get(1)).rows()).containsExactly(List.of("2025-03-01", "1", "4 another's"));
    }

    @Test
    void otherContradictionsMarkNoWheel() {
        List<Block> blocks = told("CONTRADICTORY_ENTRY");
        assertThat(((Block.Prose) blocks.get(0)).text()).doesNotContain("another's");
        assertThat(((Block.Grid) blocks.get(1)).rows()).containsExactly(List.of("2025-03-01", "1", "4"));
    }
}
