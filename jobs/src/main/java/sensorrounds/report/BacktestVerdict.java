package sensorrounds.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sensorrounds.backtest.Backtest;
import sensorrounds.backtest.Horizon;
import sensorrounds.backtest.ListKind;
import sensorrounds.backtest.ListRow;
import sensorrounds.backtest.ListRule;
import sensorrounds.backtest.ScoreRow;
import sensorrounds.backtest.StockRow;

/** What a backtest says in a few sentences. */
final class BacktestVerdict {
    /** Sensors from which a list can be spoken of in hundreds. */
    private static final long HUNDRED = 100;

    private BacktestVerdict() {}

    /** One thing to know to a sentence, the list first; a warning before it where too little failed. */
    static List<String> sentences(Backtest b, String currency) {
        List<String> said = new ArrayList<>();
        if (b.judged().isEmpty()) {
            return List.of(
                    "On these days too few sensors had failed for any law of life: nothing was forecast, so there is"
                            + " nothing to judge. Try again when more visits are logged, or with --horizon 90.");
        }
        if (b.tooFew()) {
            said.add("Too few sensors failed to judge by: "
                    + Format.count(Math.round(b.score(b.settings().longest()).failures()), "failure") + " within "
                    + words(b.settings().longest()) + " over all days asked on. Take what follows as a hint.");
        }
        said.add(list(b));
        money(b, currency).ifPresent(said::add);
        said.add(twentieth(b));
        said.add(chances(b));
        said.add(age(b));
        if (!b.stock().isEmpty()) {
            said.add(stock(b));
        }
        return said;
    }

    private static String list(Backtest b) {
        Horizon horizon = b.settings().longest();
        ListRow engine = b.list(ListKind.REPLACE, ListRule.ENGINE, horizon);
        long sensors = Math.round(engine.sensors());
        if (sensors == 0) {
            return "It would have had you replace no sensor on any of these days.";
        }
        if (sensors < HUNDRED) {
            return "Of the " + Format.count(sensors, "sensor") + " it would have had you replace, "
                    + Format.whole(engine.failures()) + " failed within " + words(horizon)
                    + "; of as many of the oldest, "
                    + Format.whole(b.list(ListKind.REPLACE, ListRule.OLDEST_FIRST, horizon)
                            .failures()) + "; of any, "
                    + Format.whole(b.list(ListKind.REPLACE, ListRule.AT_RANDOM, horizon)
                            .failures()) + ".";
        }
        return "Of 100 sensors it would have had you replace, " + hundred(engine) + " failed within " + words(horizon)
                + limits(engine) + "; of as many of the oldest, "
                + hundred(b.list(ListKind.REPLACE, ListRule.OLDEST_FIRST, horizon)) + "; of any, "
                + hundred(b.list(ListKind.REPLACE, ListRule.AT_RANDOM, horizon)) + ".";
    }

    private static Optional<String> money(Backtest b, String currency) {
        Horizon horizon = b.settings().longest();
        ListRow engine = b.list(ListKind.REPLACE, ListRule.ENGINE, horizon);
        if (!Double.isFinite(engine.saving().value())) {
            return Optional.empty();
        }
        return Optional.of("Replaced on the days asked, these sensors would have saved "
                + Format.money(currency, engine.saved()) + " within " + words(horizon) + " ("
                + Format.money(currency, engine.saving().lower() * engine.sensors()) + " to "
                + Format.whole(engine.saving().upper() * engine.sensors())
                + "), breakdowns less the use given up, before " + Format.whole(engine.stops())
                + " for stops of their own; as many of the likeliest to fail "
                + saved(b, ListRule.HIGHEST_CHANCE, horizon) + ", of the oldest "
                + saved(b, ListRule.OLDEST_FIRST, horizon) + ", those whose last report was weak "
                + saved(b, ListRule.LAST_REPORT_WEAK, horizon) + ".");
    }

    private static String saved(Backtest b, ListRule rule, Horizon horizon) {
        ListRow row = b.list(ListKind.REPLACE, rule, horizon);
        return Format.whole(row.saved())
                + (row.sensors()
                                < 0.95
                                        * b.list(ListKind.REPLACE, ListRule.ENGINE, horizon)
                                                .sensors()
                        ? " (" + Format.whole(row.sensors()) + " found)"
                        : "");
    }

    private static String twentieth(Backtest b) {
        Horizon horizon = b.settings().longest();
        ListRow highest = b.list(ListKind.ONE_IN_TWENTY, ListRule.HIGHEST_CHANCE, horizon);
        if (!Double.isFinite(highest.precision().value())) {
            return "What became of the sensors it thought likeliest to fail is not known.";
        }
        return "Of 100 sensors among the twentieth it thought likeliest to fail within " + words(horizon) + ", "
                + hundred(highest) + " did" + limits(highest) + "; of the oldest twentieth, "
                + hundred(b.list(ListKind.ONE_IN_TWENTY, ListRule.OLDEST_FIRST, horizon)) + "; of any, "
                + hundred(b.list(ListKind.ONE_IN_TWENTY, ListRule.AT_RANDOM, horizon)) + ".";
    }

    private static String hundred(ListRow row) {
        return Format.whole(100 * row.precision().value());
    }

    private static String limits(ListRow row) {
        return " (95\u00a0% limits " + Format.whole(100 * row.precision().lower()) + " to "
                + Format.whole(100 * row.precision().upper()) + ")";
    }

    private static String chances(Backtest b) {
        Horizon horizon = b.settings().longest();
        ScoreRow score = b.score(horizon);
        if (!Double.isFinite(score.ratio().value())) {
            return "How many failed within " + words(horizon) + " cannot be told: nobody was seen past it.";
        }
        String off = score.ratio().lower() > 1
                ? "; the chances were too low"
                : score.ratio().upper() < 1 ? "; the chances were too high" : "; the difference may be chance";
        boolean explained = (score.ratio().lower() > 1 || score.ratio().upper() < 1) && score.withinFit();
        String limits = off + (explained ? ", no more than the fits of those days leave open" : "");
        return "For every 100 failures it expected within " + words(horizon) + ", "
                + Format.whole(100 * score.ratio().value()) + " came ("
                + Format.whole(100 * score.ratio().lower()) + " to "
                + Format.whole(100 * score.ratio().upper())
                + limits + ").";
    }

    private static String age(Backtest b) {
        Horizon horizon = b.settings().longest();
        ScoreRow score = b.score(horizon);
        if (!Double.isFinite(score.skill())) {
            return "It cannot be compared with going by age alone.";
        }
        String than = Math.abs(score.skill()) < 0.0005
                ? "neither better nor worse than"
                : Format.share(Math.abs(score.skill())) + (score.skill() > 0 ? " better than" : " worse than");
        boolean sure = score.gain().lower() > 0 || score.gain().upper() < 0;
        return "By squared error its chances within " + words(horizon) + " were " + than
                + " those by age and law of life alone" + (sure ? "." : ", which may be chance.");
    }

    private static String stock(Backtest b) {
        long inside = b.stock().stream().filter(StockRow::inside).count();
        return "Of " + Format.count(b.stock().size(), "month") + " of demand for a part at a depot, "
                + Format.share(inside, b.stock().size())
                + " held what crews then fitted within their 90\u00a0% interval.";
    }

    static String words(Horizon horizon) {
        return switch (horizon) {
            case MONTH -> "30 days";
            case QUARTER -> "90 days";
            case HALF_YEAR -> "half a year";
            case YEAR -> "a year";
        };
    }
}
