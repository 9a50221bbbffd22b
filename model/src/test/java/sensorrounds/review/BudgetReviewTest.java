package sensorrounds.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.Part;
import sensorrounds.fleet.StockOnHand;
import sensorrounds.replacement.Costs;
import sensorrounds.replacement.ReplacementSettings;
import sensorrounds.rounds.RoundPlan;
import sensorrounds.stock.BudgetMonth;
import sensorrounds.stock.DemandKey;
import sensorrounds.stock.DemandKey.Stretch;
import sensorrounds.stock.DemandState;
import sensorrounds.stock.DemandUnit;
import sensorrounds.stock.StockForecast;
import sensorrounds.stock.StockOutlook;
import sensorrounds.stock.StockSettings;

class BudgetReviewTest {
    private static final LocalDate DAY = LocalDate.of(2026, 9, 30);
    private static final YearMonth OCTOBER = YearMonth.of(2026, 10);
    /** Work on a wheel 25, breakdown 250, set-up 45. */
    private static final Costs COSTS = new Costs("EUR", DAY, 45, 15, 25, 40, 130, 120);
    /** A call-out comes at once, so every failure is a breakdown. */
    private static final ReplacementSettings STOPS = new ReplacementSettings(20, 0.1, 1e-6, 365, 0.5, 240, 2, 30);

    private static final Map<String, Part> PARTS = Map.of(
            "A", new Part("A", "", Part.Kind.SENSOR, 60, 7, 4, 433.92, List.of("B", "C")),
            "B", new Part("B", "", Part.Kind.SENSOR, 50, 7, 1, 433.92, List.of()),
            "C", new Part("C", "", Part.Kind.SENSOR, 50, 7, 1, 433.92, List.of()));
    private static final StockForecast FORECAST =
            new StockForecast(PARTS, new StockSettings(2, 0.95, 30, 7, 1), 90, DAY);

    private final Map<DemandKey, DemandState> demand = new HashMap<>();

    private void add(DemandKey key, double probability, DemandUnit.Kind kind, int times) {
        for (int i = 0; i < times; i++) {
            demand.computeIfAbsent(key, k -> new DemandState()).add(new DemandUnit(key, probability, 0, kind));
        }
    }

    private List<BudgetMonth> budget(List<StockOutlook> stock) {
        return new BudgetReview(PARTS, COSTS, STOPS)
                .months(demand, stock, List.of(new RoundPlan("North", List.of(), List.of(), 90)), 2, DAY);
    }

    /**
     * On paper: 3 pieces of A planned, 3 (60 + 25) = 255, and 90 to bring vehicles in; 100 sensors of A fail with chance 0.1, 10 (85 +
     * 250) = 3,350. The 5 and 95 % quantiles of the binomial (100, 0.1) are 5 and 15 (R 4.2.2, qbinom; from memory).
     */
    @Test
    void oneDepotOnPaper() {
        DemandKey october = new DemandKey("A", "North", Stretch.MONTH, OCTOBER);
        add(october, 1, DemandUnit.Kind.PLANNED, 3);
        add(october, 0.1, DemandUnit.Kind.FAILURE, 100);
        List<BudgetMonth> rows = budget(StockReview.of(demand, List.of(), PARTS, FORECAST));
        BudgetMonth month = rows.get(0);
        assertThat(rows).hasSize(2);
        assertThat(month.plannedPieces()).isEqualTo(3);
        assertThat(month.plannedCost()).isEqualTo(255);
        assertThat(month.comingIn()).isEqualTo(90);
        assertThat(month.failures()).isCloseTo(10, within(1e-2));
        assertThat(month.expected()).isCloseTo(255 + 90 + 3350, within(3.5));
        assertThat(month.lower()).isCloseTo(345 + 5 * 335, within(1e-3));
        assertThat(month.upper()).isCloseTo(345 + 15 * 335, within(1e-3));
        assertThat(rows.get(1).expected()).isZero();
    }

    @Test
    void whatHasFailedAlreadyCountsInTheFirstMonth() {
        add(new DemandKey("A", "North", Stretch.ALREADY_FAILED, null), 0.5, DemandUnit.Kind.FAILURE, 10);
        add(new DemandKey("A", "North", Stretch.COVER, null), 0.9, DemandUnit.Kind.FAILURE, 10);
        List<BudgetMonth> rows = budget(StockReview.of(demand, List.of(), PARTS, FORECAST));
        assertThat(rows.get(0).failures()).isCloseTo(5, within(1e-2));
        assertThat(rows.get(0).from()).isEqualTo("2026-10-01");
    }

    /** A needs 10 and has 2, so 8 are missing: B spares 3 of its 5, C has 4; one is left to order, in a pack of 4. */
    @Test
    void substitutesStandInBeforeAnythingIsOrderedAndOnlyOnce() {
        add(new DemandKey("A", "North", Stretch.COVER, null), 1, DemandUnit.Kind.PLANNED, 10);
        add(new DemandKey("B", "North", Stretch.COVER, null), 1, DemandUnit.Kind.PLANNED, 2);
        List<StockOutlook> rows = StockReview.of(
                demand,
                List.of(
                        new StockOnHand("A", "North", 2),
                        new StockOnHand("B", "North", 5),
                        new StockOnHand("C", "North", 4),
                        new StockOnHand("C", "South", 9)),
                PARTS,
                FORECAST);
        StockOutlook a =
                rows.stream().filter(r -> r.partId().equals("A")).findFirst().orElseThrow();
        assertThat(a.standIns()).isEqualTo(7);
        assertThat(a.proposedOrder()).isEqualTo(4);
        StockOutlook b =
                rows.stream().filter(r -> r.partId().equals("B")).findFirst().orElseThrow();
        assertThat(b.standIns()).isZero();
        assertThat(b.proposedOrder()).isZero();
    }
}
