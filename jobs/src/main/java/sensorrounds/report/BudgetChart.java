package sensorrounds.report;

import java.util.List;
import sensorrounds.stock.BudgetMonth;

/** Cost of one depot by month: a broad stroke for what is planned, a dot for what is expected, a bar for its interval. */
final class BudgetChart {
    private final List<BudgetMonth> months;
    private final String currency;
    private final SlotFrame frame;

    /** @param months of one depot in order, at least one */
    BudgetChart(List<BudgetMonth> months, String currency) {
        this.months = months;
        this.currency = currency;
        double most = months.stream().mapToDouble(BudgetMonth::upper).max().orElse(1);
        this.frame = new SlotFrame(
                52,
                30,
                180,
                Math.ceil(Math.max(1, most)),
                months.stream().map(m -> m.month().toString()).toList());
    }

    void write(Html h, String title) {
        frame.write(
                h,
                title,
                "Expected cost by month, " + title,
                currency + " by month",
                svg -> frame.key(svg, 190),
                (svg, i) -> month(svg, i, months.get(i)));
    }

    private void month(Svg svg, int i, BudgetMonth m) {
        double planned = m.plannedCost() + m.comingIn();
        frame.planned(svg, i, planned);
        frame.expected(svg, i, m.expected(), m.lower(), m.upper());
        frame.tip(
                svg,
                i,
                m.month() + ": " + Format.money(currency, m.expected()) + " expected, "
                        + Format.money(currency, planned) + " of it planned; " + Format.money(currency, m.lower())
                        + " to " + Format.money(currency, m.upper()) + " with 90 %");
    }
}
