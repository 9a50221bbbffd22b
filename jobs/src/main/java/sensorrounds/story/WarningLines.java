package sensorrounds.story;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sensorrounds.visit.ReadOutcome;

/** Warning episodes, and each repair with whether it held. */
final class WarningLines {
    private WarningLines() {}

    static Page.Part part(VehicleFacts facts) {
        List<Block> blocks = new ArrayList<>();
        List<Block.Item> episodes = facts.rows("warning-episodes").stream()
                .map(e -> episode(facts, e))
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

    /** The newest work on a system warning and what came of it, in a sentence; empty where there was none. */
    static String lastRepair(VehicleFacts facts) {
        return facts.rows("follow-ups").stream()
                .max(Comparator.comparing(r -> r.orEmpty("repaired_on")))
                .map(r -> "Last work on a system warning, on " + r.text("repaired_on") + ": " + outcome(r) + ".")
                .orElse("");
    }

    private static Block.Item episode(VehicleFacts facts, StoredRow e) {
        boolean system = !e.is("warning", "LOW_PRESSURE");
        String first = e.orEmpty("first_seen");
        return Block.Item.of(
                e.is("last_seen", first) ? first : first + " to " + e.orEmpty("last_seen"),
                Say.joined(
                        "; ",
                        kind(e) + (e.whole("visits") > 1 ? " at " + e.whole("visits") + " visits" : ""),
                        off(e),
                        !system && e.flag("explained_by_cold")
                                ? "explained by the cold, the tyres were right once referred to the reference temperature"
                                : null,
                        system ? answers(facts, e) : null,
                        e.flag("lasting_cause") ? "a cause was found and put right" : null,
                        e.is("returns_after_repair", "0")
                                ? null
                                : "back " + Say.count(e.whole("returns_after_repair"), "time") + " after work"));
    }

    private static String off(StoredRow e) {
        if (!e.has("proven_off")) {
            return "not seen off since";
        }
        return e.is("proven_off", e.text("last_seen")) ? "off the same day" : "seen off on " + e.text("proven_off");
    }

    private static String answers(VehicleFacts facts, StoredRow e) {
        if (e.flag("every_sensor_answered")) {
            return "every sensor answered";
        }
        List<String> visits = List.of(e.orEmpty("visit_ids").split(" "));
        List<String> silent = facts.visits().stream()
                .filter(v -> visits.contains(v.header().visitId()))
                .flatMap(v -> v.rows().stream())
                .filter(r -> r.wheel() != null && r.wheel().read() == ReadOutcome.NO_ANSWER)
                .map(r -> r.wheel().position().code())
                .distinct()
                .toList();
        return silent.isEmpty() ? null : Say.and(silent) + " silent";
    }

    private static String kind(StoredRow e) {
        return switch (e.orEmpty("warning")) {
            case "LOW_PRESSURE" -> "low-pressure warning";
            case "SYSTEM_FAULT" -> "system warning";
            default -> e.words("warning");
        };
    }

    private static Block.Item repair(StoredRow f) {
        double driven = f.number("driven_minutes");
        return Block.Item.of(
                f.orEmpty("repaired_on"),
                outcome(f)
                        + (driven > 0
                                ? " (" + Say.plain(driven) + " min driven that day; "
                                        + Say.plain(f.number("required_minutes")) + " prove it)"
                                : " (no drive that day)"));
    }

    private static String outcome(StoredRow f) {
        String held = switch (f.orEmpty("state")) {
            case "OPEN" -> "";
            case "RETURNED" -> "did not hold; ";
            case "LEFT" -> "never proven; ";
            default -> f.has("back_on") ? "held for a time; " : "held so far; ";
        };
        return f.words("repair") + ": " + held + f.orEmpty("standing");
    }
}
