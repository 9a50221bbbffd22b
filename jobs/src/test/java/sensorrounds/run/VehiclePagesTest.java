package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.recurrence.RecurringVehicle.Pattern;
import sensorrounds.report.VehiclePage;
import sensorrounds.story.Block;
import sensorrounds.story.Page;

class VehiclePagesTest {
    @ParameterizedTest
    @ValueSource(
            strings = {"../../etc/passwd", "a/b\\c", ".hidden", "CON", "lpt1", "", "…", "<script>", "a b:c?*|\"", "-rf"
            })
    void anIdFromALogIsNoWayOutOfTheFolder(String id) {
        String name = VehiclePages.names(List.of(vehicle(id, Pattern.RECURRING_INTERMITTENT)))
                .get(id);
        assertThat(name).matches("vehicles/[A-Za-z0-9][A-Za-z0-9_-]*\\.html");
        assertThat(name.toUpperCase()).isNotIn("VEHICLES/CON.HTML", "VEHICLES/LPT1.HTML");
    }

    @Test
    void noTwoVehiclesShareAPage() {
        Map<String, String> names = VehiclePages.names(List.of(
                vehicle("V/1", Pattern.RECURRING_INTERMITTENT),
                vehicle("V?1", Pattern.RECURRING_INTERMITTENT),
                vehicle("v_1", Pattern.RECURRING_INTERMITTENT),
                vehicle("x".repeat(300) + "1", Pattern.RECURRING_INTERMITTENT),
                vehicle("x".repeat(300) + "2", Pattern.RECURRING_INTERMITTENT)));
        assertThat(names.values().stream().map(String::toLowerCase).distinct()).hasSize(5);
        assertThat(names.values()).allMatch(n -> n.length() < 90);
    }

    @Test
    void onlyVehiclesWhoseWarningRecursHaveOneAndNotMoreThanTheStatedNumber() {
        assertThat(VehiclePages.names(List.of(vehicle("V1", Pattern.NOT_RECURRING))))
                .isEmpty();
        assertThat(VehiclePages.names(IntStream.range(0, 3 * VehiclePages.MOST)
                        .mapToObj(i -> vehicle("V" + i, Pattern.RECURRING_AT_ONE_PLACE))
                        .toList()))
                .hasSize(VehiclePages.MOST);
    }

    @Test
    void textFromLogsStaysTextOnThePage() {
        String hostile = "</style><script>alert(1)</script>\u202e<b>&";
        String page = VehiclePage.html(
                new Page(
                        hostile,
                        hostile,
                        List.of(new Page.Part(
                                "p",
                                hostile,
                                List.of(
                                        new Block.Prose(hostile),
                                        new Block.Items(
                                                Block.Order.PLAIN,
                                                List.of(new Block.Item(hostile, hostile, List.of(hostile)))),
                                        new Block.Grid(hostile, List.of(hostile), List.of(List.of(hostile))))))),
                null);
        assertThat(page).doesNotContain("<script", "<b>", "\u202e").contains("&lt;script&gt;alert(1)");
    }

    @Test
    void theNearestNamesComeFirst() {
        NearNames near = new NearNames("V12");
        List.of("W99", "V21", "V123", "v12x", "V1", "X", "V13").forEach(near::offer);
        assertThat(near.names()).hasSize(5).startsWith("V1", "V123", "V13", "v12x");
        // Levenshtein (1966); the worked example of textbooks, from memory.
        assertThat(NearNames.edits("KITTEN", "SITTING")).isEqualTo(3);
    }

    private static RecurringVehicle vehicle(String id, Pattern pattern) {
        return new RecurringVehicle(
                id,
                null,
                null,
                3,
                0,
                1,
                null,
                3,
                2,
                0.9,
                pattern,
                LocalDate.of(2026, 1, 1),
                false,
                null,
                List.of(),
                "");
    }
}
