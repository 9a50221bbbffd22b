package sensorrounds.story;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The working behind the rank: chance of failing, cost now and later, saving, advice. */
final class RankLines {
    private RankLines() {}

    static Page.Part part(VehicleFacts facts) {
        List<StoredRow> lines = facts.rows("ranked-replacements").stream()
                .sorted(Comparator.comparingInt(r -> r.whole("rank")))
                .toList();
        List<Block> blocks = new ArrayList<>();
        if (!lines.isEmpty()) {
            blocks.add(new Block.Prose(
                    "Chances of not working after so many days; expected cost of doing as advised and of"
                            + " not doing so until the next stop, or the one after, in "
                            + facts.run().currency()
                            + "; their difference is what it saves. When the vehicle stands anyway, replacing pays from the chance"
                            + " in the last column on, to be held against the chance within "
                            + facts.run().horizonDays()
                            + " days. What a stop now saves for the whole vehicle orders the list of the fleet."));
            blocks.add(new Block.Grid(
                    "Working behind the rank",
                    List.of(
                            "place",
                            "sensor",
                            "rank",
                            "advice",
                            "30 d",
                            "90 d",
                            "365 d",
                            "done",
                            "not",
                            "saving",
                            "pays from"),
                    lines.stream().map(RankLines::row).toList()));
            blocks.add(new Block.Items(
                    Block.Order.PLAIN,
                    lines.stream()
                            .map(r -> Block.Item.of(r.place(), sentence(r)))
                            .toList()));
        }
        return new Page.Part("rank", "Why it ranks where it does", blocks);
    }

    private static List<String> row(StoredRow r) {
        return List.of(
                r.place(),
                r.orEmpty("sensor_id"),
                r.orEmpty("rank"),
                r.words("advice"),
                Say.chance(r.number("p_fail_30d")),
                Say.chance(r.number("p_fail_90d")),
                Say.chance(r.number("p_fail_365d")),
                Say.figure(r.number("cost_now"), 2),
                Say.figure(r.number("cost_later"), 2),
                Say.figure(r.number("saving"), 2),
                Say.chance(r.number("break_even_probability")));
    }

    private static String sentence(StoredRow r) {
        double ratio = r.number("failure_ratio");
        return r.orEmpty("reason") + " Law of life: " + r.orEmpty("cohort") + " (" + r.words("rung") + ")"
                + (Double.isNaN(ratio)
                        ? "."
                        : "; after such a last report sensors fail " + Say.figure(ratio, ratio < 10 ? 2 : 0)
                                + " times as often as others of their age.");
    }
}
