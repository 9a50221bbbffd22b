package sensorrounds.story;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Warning episodes, and each repair with whether it held. */
final class WarningLines {
    private WarningLines() {}

    static Page.Part part(VehicleFacts facts) {
        List<Block> blocks = new ArrayList<>();
        List<Block.Item> episodes = facts.rows("warning-episodes").stream()
                .map(WarningLines::episode)
                .toList();
        if (!episodes.isEmpty()) {
            blocks.add(new Block.Items(Block.Order.PLAIN, episodes));
        }
        List<Block.Item> repairs = facts.rows("follow-ups").stream()
                .sorted(Comparator.comparing(r -> r.orEmpty("repaired_on")))
                .map(WarningLines::repair)
                .toList();
        if (!repairs.isEmpty()) {
            blocks.add(new Block.Prose("Work on a system warning, and whether it held:"));
            blocks.add(new Block.Items(Block.Order.PLAIN, repairs));
        }
        return new Page.Part("warnings", "Warnings and repairs", blocks);
    }

    private static Block.Item episode(StoredRow e) {
        boolean system = !e.is("warning", "LOW_PRESSURE");
        return Block.Item.of(
                e.orEmpty("first_seen") + " to " + (e.has("proven_off") ? e.text("proven_off") : "now"),
                Say.joined(
                        "; ",
                        kind(e),
                        e.has("proven_off") ? null : "last seen on " + e.text("last_seen") + ", not seen off since",
                        !system && e.flag("explained_by_cold")
                                ? "explained by the cold, the tyres were right once referred to the reference temperature"
                                : null,
                        system && e.flag("every_sensor_answered") ? "every sensor answered" : null,
                        e.flag("lasting_cause") ? "a lasting cause was found and put right" : null,
                        e.is("returns_after_repair", "0")
                                ? null
                                : "back " + Say.count(e.whole("returns_after_repair"), "time") + " after work"));
    }

    private static String kind(StoredRow e) {
        return switch (e.orEmpty("warning")) {
            case "LOW_PRESSURE" -> "low-pressure warning";
            case "SYSTEM_FAULT" -> "system warning";
            default -> e.words("warning");
        };
    }

    private static Block.Item repair(StoredRow f) {
        String held = switch (f.orEmpty("state")) {
            case "OPEN" -> "";
            case "RETURNED" -> "did not hold; ";
            case "LEFT" -> "never proven; ";
            default -> f.has("back_on") ? "held for a time; " : "held so far; ";
        };
        double driven = f.number("driven_minutes");
        return Block.Item.of(
                f.orEmpty("repaired_on"),
                f.words("repair") + ": " + held + f.orEmpty("standing")
                        + (driven > 0
                                ? " (" + Say.plain(driven) + " min driven that day; "
                                        + Say.plain(f.number("required_minutes")) + " prove it)"
                                : " (no drive that day)"));
    }
}
