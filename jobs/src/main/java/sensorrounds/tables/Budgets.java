package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;

import java.util.List;
import sensorrounds.stock.BudgetMonth;

/** Stored table of the budget outlook. */
public final class Budgets {
    public static final Table<BudgetMonth> TABLE = new Table<>(
            "budget",
            "Expected cost per depot and month: what is planned, and failures that nothing forestalls. Planned pieces are those of"
                    + " stock_outlook, stops those of the list.",
            List.of(
                    text("depot", "Depot; null when not known.", BudgetMonth::depot),
                    text("month", "Month, YYYY-MM.", b -> b.month().toString()),
                    day("from", "First day that counts.", BudgetMonth::from),
                    day("to", "Last day.", BudgetMonth::to),
                    whole("planned_pieces", "Pieces planned in the month.", BudgetMonth::plannedPieces),
                    number("planned_cost", "Cost of them with their work.", BudgetMonth::plannedCost),
                    number(
                            "coming_in",
                            "Set-up of stops made for them, and reading; in the first month.",
                            BudgetMonth::comingIn),
                    number(
                            "failures",
                            "Expected failures beside those planned for; the first month holds what has failed already.",
                            BudgetMonth::failures),
                    number(
                            "failure_cost",
                            "Cost of them: piece, work, and a breakdown where a call-out comes before the next stop.",
                            BudgetMonth::failureCost),
                    number("expected", "Expected cost in all.", BudgetMonth::expected),
                    number("lower", "Lower limit of the 90 % prediction interval.", BudgetMonth::lower),
                    number("upper", "Upper limit of it.", BudgetMonth::upper)));

    private Budgets() {}
}
