package sensorrounds.story;

import java.util.Comparator;
import java.util.List;

/** Which sensors of a vehicle are on their way out, in a sentence. */
final class NextToFail {
    /** Chance of not working within 90 days from which a sensor is on its way out rather than merely ageing. */
    private static final double SOON = 0.1;
    /** From this chance on it is more likely dead than not. */
    private static final double DEAD = 0.5;

    private static final int MOST = 4;

    private NextToFail() {}

    /** Sensors whose place is in doubt are left to what is said of the place. Empty for a vehicle without chances. */
    static String sentence(VehicleFacts facts) {
        List<StoredRow> known = facts.rows("ranked-replacements").stream()
                .filter(r -> r.number("p_fail_90d") >= 0)
                .toList();
        List<StoredRow> rows = known.stream()
                .filter(r -> !r.is("advice", "CHECK_PLACE_FIRST"))
                .sorted(Comparator.comparingDouble((StoredRow r) -> r.number("p_fail_90d"))
                        .reversed())
                .toList();
        if (rows.isEmpty()) {
            return "";
        }
        List<StoredRow> soon =
                rows.stream().filter(r -> r.number("p_fail_90d") >= SOON).toList();
        String apart = known.size() > rows.size() ? ", those at a place in doubt apart" : "";
        if (soon.isEmpty()) {
            return "No sensor looks as if it would fail soon" + apart
                    + ": the highest chance of not working within 90 days is "
                    + Say.chance(rows.get(0).number("p_fail_90d")) + ", at "
                    + rows.get(0).place() + ".";
        }
        String more = soon.size() > MOST ? ", and " + (soon.size() - MOST) + " more" : "";
        return "On " + (soon.size() == 1 ? "its" : "their") + " way out, by the chance of not working within 90 days: "
                + Say.and(soon.stream().limit(MOST).map(NextToFail::one).toList()) + more + ".";
    }

    private static String one(StoredRow r) {
        String chance = r.place() + " at " + Say.sure(r.number("p_fail_90d"));
        return r.number("p_failed_already") >= DEAD ? chance + " (probably dead already)" : chance;
    }
}
