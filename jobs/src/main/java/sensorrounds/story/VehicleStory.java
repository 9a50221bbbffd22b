package sensorrounds.story;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Builds the page of one vehicle from what a run holds of it. Registration, VIN, technician and notes are not on it. */
public final class VehicleStory {
    /** The caution every page ends with. */
    static final String SAFETY = "A rank says inspect or offer; it is never a verdict on safety, and a low rank is no"
            + " guarantee. A monitor does not replace a gauge on cold tyres; placard and vehicle handbook decide. A tyre"
            + " that was run flat or clearly low is inspected off the wheel before it is inflated again.";

    private VehicleStory() {}

    /** The page; parts with nothing to tell are left out. */
    public static Page of(VehicleFacts facts) {
        List<Page.Part> parts = new ArrayList<>();
        parts.add(new InShort(facts).part());
        parts.add(NextSteps.part(facts));
        parts.add(SuspectLines.part(facts));
        parts.add(WarningLines.part(facts));
        parts.add(WheelGrid.part(facts));
        parts.add(new VisitLines(facts.run()).part(facts.visits()));
        parts.add(LifeLines.part(facts));
        parts.add(RankLines.part(facts));
        parts.add(findings(facts));
        parts.add(new Page.Part("cautions", "Cautions", List.of(new Block.Prose(SAFETY))));
        parts.removeIf(p -> p.blocks().isEmpty());
        return new Page(facts.vehicleId(), under(facts), parts);
    }

    private static Page.Part findings(VehicleFacts facts) {
        List<Block.Item> items = facts.rows("findings").stream()
                .map(f -> Block.Item.of(
                        f.has("day") ? f.text("day") : "no day",
                        f.orEmpty("what") + "; " + f.orEmpty("done") + ". To settle it: " + f.orEmpty("settle")))
                .toList();
        return new Page.Part(
                "findings",
                "Contradictions in its logs",
                items.isEmpty() ? List.of() : List.of(new Block.Items(Block.Order.PLAIN, items)));
    }

    private static String under(VehicleFacts facts) {
        Optional<StoredRow> line = facts.rows("ranked-replacements").stream().findFirst();
        String visits = facts.visits().isEmpty()
                ? "no visit that counts"
                : Say.count(facts.visits().size(), "visit") + " from "
                        + facts.visits().get(0).day() + " to "
                        + facts.visits().get(facts.visits().size() - 1).day();
        return Say.joined(
                        ", ",
                        line.map(r -> r.text("vehicle_class")).orElse(null),
                        line.map(r -> r.text("depot")).map(d -> "depot " + d).orElse(null),
                        visits)
                + "; as of " + facts.run().asOf() + ", run " + facts.run().runId();
    }
}
