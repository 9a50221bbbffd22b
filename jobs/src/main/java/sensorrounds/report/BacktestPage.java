package sensorrounds.report;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import sensorrounds.backtest.Backtest;

/** Writes the page of a backtest: what the lists would have hit, whether the chances came true, how it was asked. */
public final class BacktestPage {
    private BacktestPage() {}

    /**
     * @param id number of the backtest
     * @param currency of the costs, three letters
     */
    public static String html(Backtest backtest, String id, String currency) {
        return new PageFrame(
                        "Sensor Rounds: backtest up to " + backtest.lastVisit(),
                        HtmlReport.resource("report.css"),
                        HtmlReport.resource("report.js"))
                .text(h -> body(h, backtest, id, currency));
    }

    private static void body(Html h, Backtest b, String id, String currency) {
        h.open("body");
        h.element("a", "Skip to the answers", "href", "#start", "class", "skip").line();
        h.open("header");
        h.element("p", "Sensor Rounds", "class", "house");
        h.element("h1", "How good would it have been?");
        h.open("p", "class", "under");
        h.text("Asked on " + b.cuts().stream().map(LocalDate::toString).collect(Collectors.joining(", "))
                + ", by what was known on each day alone, and held against visits up to ");
        Cells.day(h, b.lastVisit());
        h.text(". Backtest ").data(id).text(".").close("p");
        h.close("header").line();
        h.open("main").line();
        part(h, "start", "In short", "Can I go by it?", () -> inShort(h, b, currency));
        if (!b.judged().isEmpty()) {
            judged(h, b, currency);
        }
        part(h, "how", "How it was asked", "What did it know, and how was it judged?", () -> how(h, b));
        h.close("main").line().close("body").line();
    }

    private static void judged(Html h, Backtest b, String currency) {
        part(h, "lists", "The list against simple rules", "Would I have replaced the right sensors?", () -> {
            BacktestLists.write(h, b, currency);
        });
        part(h, "chances", "Chances against what happened", "When it says 20 %, do 20 of 100 fail?", () -> {
            BacktestChances.write(h, b);
        });
        if (!b.stock().isEmpty()) {
            part(h, "stock", "Demand against sensors fitted", "Would the stock have done?", () -> {
                BacktestStock.write(h, b);
            });
        }
    }

    private static void part(Html h, String id, String title, String question, Runnable body) {
        h.open("section", "id", id, "aria-labelledby", id + "-title");
        h.element("h2", title, "id", id + "-title");
        h.element("p", question, "class", "question").line();
        body.run();
        h.close("section").line();
    }

    private static void inShort(Html h, Backtest b, String currency) {
        h.open("ul", "class", "steps");
        BacktestVerdict.sentences(b, currency).forEach(s -> h.element("li", s).line());
        h.close("ul").line();
        h.element(
                        "p",
                        "Past days say how good it was on this fleet, not how good it will be. A low rank was never a verdict on"
                                + " safety, and is none now.",
                        "class",
                        "how")
                .line();
    }

    private static void how(Html h, Backtest b) {
        int days = b.settings().longest().days();
        h.open("ul", "class", "cautions");
        for (String rule : rules(b, days)) {
            h.element("li", rule).line();
        }
        h.close("ul").line();
    }

    private static List<String> rules(Backtest b, int days) {
        String sample = b.sampled() >= 1
                ? "Every vehicle is judged."
                : "Fits rest on the whole fleet; the sensors judged are those of " + Format.share(b.sampled())
                        + " of the vehicles, drawn by their names.";
        String without = b.withoutChance() == 0
                ? ""
                : " " + Format.count(b.withoutChance(), "forecast")
                        + " without any fitted law of life on that day could not be judged.";
        return List.of(
                "The days lie " + Format.count(b.settings().stepDays(), "day") + " apart, the last one "
                        + Format.count((long) days + b.settings().graceDays(), "day")
                        + " before the last visit: the longest horizon, and "
                        + b.settings().graceDays()
                        + " days more, since what fails is found at the next visit. Before the first lie at least "
                        + Format.count(b.settings().historyDays(), "day") + " of visits. " + sample + without,
                "Known on a day: visits up to it, each in its first form, since logs do not say when a correction was"
                        + " written. Of the register, dates that lay ahead and booked stops are left out; class, depot and"
                        + " original part are today's, and so are prices and settings.",
                "A failure is known to lie between two visits. Where the end of the horizon lies between them too, it counts in"
                        + " part, as if equally likely on each day; one that a warning brought to light lies in the last 30"
                        + " days. What crews took for dead counts as failed, though some of it was only weak. Warnings bring"
                        + " failures to light sooner than sound sensors are confirmed; the days of grace are there to even"
                        + " that out.",
                "A sensor lost from sight before the end of the horizon is stood for by those still in sight (weights by the"
                        + " inverse chance of being kept). A sensor that crews replaced while it answered is lost in this"
                        + " sense, though it may have been about to fail: its number stands in the tables.",
                "A sensor is asked about on every day it was in service, and sensors of one vehicle share their fate: the limits"
                        + " take all forecasts of a vehicle as one draw.",
                "Saving: what the failures of listed sensors within the longest horizon would have cost, had they been replaced on"
                        + " the day asked, less the worth of the days they were used still, at the prices of the settings. Set-ups"
                        + " of stops are not counted: those of the engine's own stops stand beside it, and the other rules are"
                        + " spared theirs. A listed sensor that waits for a stop counts as if that stop were the same day, as"
                        + " those of every rule do.",
                "Concordance: of two sensors of which one is known to have failed first, equal chances count one half, and two"
                        + " failures on one day are no pair.");
    }
}
