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
                        || (r.get("advice").equals("AT_NEXT_STOP") || readFirstButReplacedInAnyCase(r))
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

    private static boolean readFirstButReplacedInAnyCase(Map<String, String> r) {
        return r.get("advice").equals("READ_FIRST") && r.get("reason").contains("If this one answers");
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
                .allMatch(r -> Long.parseLong(r.get("on_hand"))
                                + Long.parseLong(r.get("stand_ins"))
                                + Long.parseLong(r.get("proposed_order"))
                        >= pieces));
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
    void budgetHoldsThePiecesOfTheStockOutlookAndTheMoneyOfTheList() {
        List<Map<String, String>> budget = run.csv("budget");
        for (String column : List.of("planned", "expected")) {
            Map<String, Double> pieces = stock.stream()
                    .collect(Collectors.groupingBy(
                            r -> r.get("depot"), Collectors.summingDouble(r -> Double.parseDouble(r.get(column)))));
            Map<String, Double> there = budget.stream()
                    .collect(Collectors.groupingBy(
                            r -> r.get("depot"),
                            Collectors.summingDouble(r -> Double.parseDouble(r.get("planned_pieces"))
                                    + (column.equals("planned") ? 0 : Double.parseDouble(r.get("failures"))))));
            pieces.forEach((depot, n) -> assertThat(there.get(depot)).as(depot).isCloseTo(n, within(1e-6)));
        }
        String first = budget.get(0).get("month");
        double planned = budget.stream()
                .filter(r -> r.get("month").equals(first))
                .mapToDouble(r -> Double.parseDouble(r.get("planned_cost")) + Double.parseDouble(r.get("coming_in")))
                .sum();
        double asked = list.stream()
                .filter(r -> SAME_STOP.contains(r.get("advice"))
                        || r.get("advice").equals("AT_NEXT_STOP")
                                && r.get("next_stop").startsWith(first))
                .mapToDouble(r -> Double.parseDouble(r.get("cost_now")))
                .sum();
        // Beside it stand the sensors known dead, each with its piece and work and one set-up, and looks at places.
        long dead = run.csv("unmonitored-wheels").stream()
                .filter(w ->
                        w.get("certainty").equals("KNOWN") && !w.get("position").isEmpty())
                .count();
        long looks = list.stream()
                .filter(r -> r.get("advice").equals("CHECK_PLACE_FIRST"))
                .count();
        assertThat(planned - asked).isBetween(dead * (25 + 40.0), dead * (25 + 88 + 45.0) + looks * 15);
        budget.forEach(r -> {
            assertThat(Double.parseDouble(r.get("lower"))).isLessThanOrEqualTo(Double.parseDouble(r.get("expected")));
            assertThat(Double.parseDouble(r.get("upper")))
                    .isGreaterThanOrEqualTo(Double.parseDouble(r.get("planned_cost")));
        });
    }

    @Test
    void everyVehicleToComeInIsOnARoundOrCountedAsLeft() {
        Map<String, Long> asked = list.stream()
                .filter(r ->
                        SAME_STOP.contains(r.get("advice")) || r.get("advice").equals("CHECK_PLACE_FIRST"))
                .collect(Collectors.groupingBy(
                        r -> r.get("depot"),
                        Collectors.mapping(
                                r -> r.get("vehicle_id"),
                                Collectors.collectingAndThen(Collectors.toSet(), v -> (long) v.size()))));
        List<Map<String, String>> stops = run.csv("round-stops");
        List<Map<String, String>> weeks = run.csv("rounds");
        asked.forEach((depot, vehicles) -> {
            long onRounds = stops.stream()
                    .filter(r -> r.get("depot").equals(depot) && !r.get("kind").equals("BOOKED"))
                    .count();
            long left = weeks.stream()
                    .filter(r -> r.get("depot").equals(depot))
                    .mapToLong(r -> Long.parseLong(r.get("left")))
                    .min()
                    .orElseThrow();
            assertThat(onRounds + left).as(depot).isGreaterThanOrEqualTo(vehicles);
        });
        weeks.forEach(r -> assertThat(Double.parseDouble(r.get("minutes")))
                .isLessThanOrEqualTo(Double.parseDouble(r.get("capacity"))));
        assertThat(stops.stream().map(r -> r.get("vehicle_id")).distinct().count())
                .isEqualTo(stops.size());
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
