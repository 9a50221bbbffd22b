package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the replacement list of the sample run asks for is in the stock outlook, and what is due now in the orders. */
class OrdersAgreeTest {
    private static final List<String> SAME_STOP = List.of("REPLACE_NOW", "READ_FIRST");

    private final SampleRun run = SampleRun.get();
    private final List<Map<String, String>> list = run.csv("ranked-replacements");
    private final List<Map<String, String>> stock = run.csv("stock-outlook");

    @Test
    void everyPlannedPieceIsInTheStockOutlookOfItsDepot() {
        String last =
                stock.stream().map(r -> r.get("to")).max(String::compareTo).orElseThrow();
        Map<String, Long> asked = list.stream()
                .filter(r -> r.get("advice").equals("REPLACE_NOW")
                        || r.get("advice").equals("AT_NEXT_STOP")
                                && !r.get("next_stop").isEmpty()
                                && r.get("next_stop").compareTo(last) <= 0)
                .collect(Collectors.groupingBy(r -> r.get("depot"), Collectors.counting()));
        run.csv("unmonitored-wheels").stream()
                .filter(w ->
                        w.get("certainty").equals("KNOWN") && !w.get("position").isEmpty())
                .forEach(w -> asked.merge(w.get("depot"), 1L, Long::sum));
        Map<String, Long> planned = stock.stream()
                .filter(r -> !r.get("planned").equals("0"))
                .collect(Collectors.groupingBy(
                        r -> r.get("depot"), Collectors.summingLong(r -> Long.parseLong(r.get("planned")))));
        assertThat(planned).isNotEmpty().isEqualTo(asked);
    }

    @Test
    void whatIsToBeReplacedNowIsOnTheShelfOrInTheOrder() {
        Map<List<String>, Long> now = list.stream()
                .filter(r ->
                        r.get("advice").equals("REPLACE_NOW") && !r.get("part").isEmpty())
                .collect(Collectors.groupingBy(r -> List.of(r.get("part"), r.get("depot")), Collectors.counting()));
        assertThat(now).isNotEmpty();
        now.forEach((place, pieces) -> assertThat(stock)
                .filteredOn(r -> !r.get("proposed_order").isEmpty()
                        && List.of(r.get("part"), r.get("depot")).equals(place))
                .allMatch(r -> Long.parseLong(r.get("on_hand")) + Long.parseLong(r.get("proposed_order")) >= pieces));
    }

    @Test
    void theFirstRowOfAPartAndDepotHoldsWhatIsNotFoundAndTheMonthsFollowOnIt() {
        stock.stream()
                .collect(Collectors.groupingBy(r -> List.of(r.get("part"), r.get("depot"))))
                .forEach((place, rows) -> {
                    assertThat(rows.get(0).get("month")).isEmpty();
                    for (int i = 1; i < rows.size(); i++) {
                        assertThat(LocalDate.parse(rows.get(i).get("from")))
                                .isEqualTo(LocalDate.parse(rows.get(i - 1).get("to"))
                                        .plusDays(1));
                    }
                });
    }

    @Test
    void linesOfAVehicleAddUpToItsStop() {
        Map<String, List<Map<String, String>>> stops = list.stream()
                .filter(r -> SAME_STOP.contains(r.get("advice")))
                .collect(Collectors.groupingBy(r -> r.get("vehicle_id")));
        assertThat(stops).isNotEmpty();
        stops.forEach((vehicle, lines) -> assertThat(lines.stream()
                        .mapToDouble(r -> Double.parseDouble(r.get("saving")))
                        .sum())
                .as(vehicle)
                .isCloseTo(Double.parseDouble(lines.get(0).get("stop_saving")), within(1e-3)));
    }
}
