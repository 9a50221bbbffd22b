package sensorrounds.report;

import java.time.LocalDate;
import java.util.stream.Collectors;
import sensorrounds.backtest.Backtest;

/** What a backtest says on the terminal when it is done. */
public final class BacktestSummary {
    private BacktestSummary() {}

    /**
     * Plain text, each line ended by a line feed.
     *
     * @param currency of the costs, three letters
     * @param reportPath where the report was written, as the user should open it
     */
    public static String text(Backtest b, String id, String currency, String reportPath) {
        StringBuilder text =
                new StringBuilder("Sensor Rounds, backtest " + id + ", by what is known up to " + b.lastVisit()
                        + "\nAsked on "
                        + b.cuts().stream().map(LocalDate::toString).collect(Collectors.joining(", "))
                        + ": " + Format.count(b.judged().size(), "forecast") + "\n\n");
        BacktestVerdict.sentences(b, currency).forEach(s -> text.append(wrapped(s)));
        return RunSummary.typed(text.toString()) + "\nReport: " + RunSummary.plain(reportPath) + "\n";
    }

    private static String wrapped(String sentence) {
        StringBuilder lines = new StringBuilder();
        // Spaces that hold a figure and its unit together are no place to break a line.
        String rest = "- " + sentence;
        while (rest.length() > RunSummary.WIDTH) {
            int space = rest.lastIndexOf(' ', RunSummary.WIDTH);
            lines.append(rest, 0, space).append('\n');
            rest = "  " + rest.substring(space + 1);
        }
        return lines.append(rest).append('\n').toString();
    }
}
