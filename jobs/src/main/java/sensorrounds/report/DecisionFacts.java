package sensorrounds.report;

import java.util.List;
import sensorrounds.rounds.RoundStop;
import sensorrounds.rounds.RoundWeek;
import sensorrounds.stock.BudgetMonth;

/**
 * Rounds and budget.
 *
 * @param rounds by depot and week
 * @param firstWeek stops of the first week, by depot and order; of the depots whose sheets the report holds
 * @param budget by depot and month
 */
public record DecisionFacts(List<RoundWeek> rounds, List<RoundStop> firstWeek, List<BudgetMonth> budget) {
    public DecisionFacts {
        rounds = List.copyOf(rounds);
        firstWeek = List.copyOf(firstWeek);
        budget = List.copyOf(budget);
    }

    /** Nothing planned. */
    public static DecisionFacts none() {
        return new DecisionFacts(List.of(), List.of(), List.of());
    }
}
