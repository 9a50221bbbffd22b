package sensorrounds.story;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sensorrounds.history.Finding;
import sensorrounds.visit.Visit;

/** What to do at the next stop, in the order of a stop: warn, look, settle, replace. */
final class NextSteps {
    /** From this chance on the second suspect's question is worth asking at the same stop. */
    private static final double WORTH_ASKING = 0.2;
    /** Contradictions that another reading at the next stop can settle. */
    private static final Set<Finding.Kind> READ_AGAIN = EnumSet.of(
            Finding.Kind.ALIVE_AGAIN,
            Finding.Kind.UNRECORDED_CHANGE,
            Finding.Kind.TWO_PLACES_AT_ONCE,
            Finding.Kind.TWO_VEHICLES_AT_ONCE,
            Finding.Kind.MISTYPED_ID);

    private final VehicleFacts facts;
    private final List<Block.Item> steps = new ArrayList<>();

    private NextSteps(VehicleFacts facts) {
        this.facts = facts;
    }

    static Page.Part part(VehicleFacts facts) {
        NextSteps next = new NextSteps(facts);
        next.unmonitored();
        next.suspects();
        next.dead();
        next.followUp();
        next.watch();
        next.contradictions();
        next.replace();
        next.cold();
        if (next.steps.isEmpty()) {
            next.step("Nothing is due", "read every sensor at the next visit as usual");
        }
        return new Page.Part("next", "What to do next", List.of(new Block.Items(Block.Order.NUMBERED, next.steps)));
    }

    private void step(String lead, String text) {
        steps.add(Block.Item.of(lead, text));
    }

    private void unmonitored() {
        List<StoredRow> rows = facts.rows("unmonitored-wheels");
        if (rows.isEmpty()) {
            return;
        }
        List<String> wheels = rows.stream()
                .filter(u -> u.has("position"))
                .map(StoredRow::place)
                .toList();
        boolean system = wheels.size() < rows.size();
        String from = wheels.isEmpty()
                ? "while the system warning is on"
                : "from " + Say.and(wheels) + (system ? ", nor from any wheel while the system warning is on" : "");
        step(
                "Tell the driver",
                "no low-pressure warning may come " + from + ": gauge by hand until it is cured. "
                        + rows.stream().map(u -> u.orEmpty("reason")).collect(Collectors.joining(" ")));
    }

    private void suspects() {
        List<StoredRow> suspects = facts.rows("suspects");
        if (suspects.isEmpty()) {
            return;
        }
        step(
                "Look first at " + SuspectLines.look(suspects.get(0)),
                suspects.get(0).orEmpty("next_step"));
        if (suspects.size() > 1 && suspects.get(1).number("probability") >= WORTH_ASKING) {
            step(
                    "If that clears it, at " + SuspectLines.look(suspects.get(1)),
                    suspects.get(1).orEmpty("next_step"));
        }
    }

    /** Wheels with a dead sensor or none, but for the one the first suspect's step is about; a suspected place is told elsewhere. */
    private void dead() {
        String asked = facts.rows("suspects").stream()
                .findFirst()
                .map(s -> s.orEmpty("position"))
                .orElse("");
        for (StoredRow u : facts.rows("unmonitored-wheels")) {
            if (!u.is("certainty", "KNOWN") || !u.has("position") || u.is("position", asked)) {
                continue;
            }
            Optional<StoredRow> dead = facts.rows("sensor-lives").stream()
                    .filter(l -> l.is("life_end", "FAILED") && l.is("sensor_id", u.orEmpty("sensor_id")))
                    .filter(l -> !l.has("ended_on"))
                    .findFirst();
            String proof = ", teach the vehicle its ID and prove it by a drive of "
                    + Say.plain(facts.run().proofMinutes()) + " minutes";
            if (!u.has("sensor_id")) {
                step("No sensor at " + u.place(), "look whether there is one; if not, fit one" + proof);
            } else if (dead.isPresent() && !dead.get().has("first_answered")) {
                step(
                        "Read " + u.place() + " with another reader",
                        "it has never answered since it was fitted on "
                                + dead.get().text("fitted_on")
                                + ": make sure that it is of the right type and programmed before another is fitted");
            } else if (dead.isPresent()) {
                step("Replace the dead sensor at " + u.place(), "fit one" + proof);
            }
        }
    }

    private void followUp() {
        Optional<StoredRow> open = facts.rows("follow-ups").stream()
                .filter(f -> f.is("state", "OPEN"))
                .max(Comparator.comparing(f -> f.orEmpty("repaired_on")));
        open.ifPresent(f -> step(
                "Prove the work of " + f.text("repaired_on"),
                f.words("repair") + ": " + f.orEmpty("standing")
                        + ". Write down the minutes driven and whether the warning came back"));
    }

    /** Sensors to watch, but for those the first suspect's step settles: the sensor itself, or its place. */
    private void watch() {
        Optional<StoredRow> first = facts.rows("suspects").stream().findFirst();
        for (StoredRow w : facts.rows("watch-list")) {
            boolean asked = first.isPresent()
                    && w.is("position", first.get().orEmpty("position"))
                    && (!first.get().has("sensor_id")
                            || w.is("sensor_id", first.get().text("sensor_id")));
            if (!asked) {
                step("Watch " + w.place(), w.orEmpty("reason") + ". Settled by: " + w.orEmpty("settled_by"));
            }
        }
    }

    /** What the newest visit says against the ones before, where reading again can tell which is right. */
    private void contradictions() {
        Optional<LocalDate> last = facts.visits().stream().map(Visit::day).max(Comparator.naturalOrder());
        for (StoredRow f : facts.rows("findings")) {
            if (f.has("day")
                    && last.equals(Optional.of(f.day("day")))
                    && READ_AGAIN.contains(Finding.Kind.valueOf(f.text("kind")))) {
                step(
                        "Settle what the logs contradict" + (f.has("position") ? " at " + f.place() : ""),
                        f.orEmpty("what") + ". Settled by: " + f.orEmpty("settle"));
            }
        }
    }

    private void replace() {
        List<String> read = advised("READ_FIRST");
        if (!read.isEmpty()) {
            step(
                    "Read first",
                    "read " + Say.and(read) + " before anything is fitted there; replace what does not answer");
        }
        List<String> now = advised("REPLACE_NOW");
        if (!now.isEmpty()) {
            step("Replace now", Say.and(now) + (now.size() > 1 ? ", at one stop" : "") + stopSaving() + unless());
        }
        advised("CHECK_PLACE_FIRST")
                .forEach(place -> step(
                        "Fit no other sensor at " + place + " yet",
                        "look at receiver, wiring and place first, where sensors keep failing"));
        later("AT_NEXT_STOP", "When the vehicle stands anyway" + booked(), "; not worth a stop of its own");
        later("AT_SEASONAL_CHANGE", "When that set is fitted again", "");
        later("WHEN_OFF", "When the wheel is off anyway", "");
    }

    /** What is to be looked at first is not to be replaced whatever the look says. */
    private String unless() {
        Optional<StoredRow> first = facts.rows("suspects").stream().findFirst().filter(s -> s.has("sensor_id"));
        return first.flatMap(s -> facts.rows("ranked-replacements").stream()
                        .filter(r -> r.is("advice", "REPLACE_NOW") && r.is("sensor_id", s.text("sensor_id")))
                        .findFirst())
                .map(r -> ". Leave " + r.place() + " if the look above clears it")
                .orElse("");
    }

    private void later(String advice, String when, String remark) {
        List<String> places = advised(advice);
        if (!places.isEmpty()) {
            step(when, "replace " + Say.and(places) + remark);
        }
    }

    private List<String> advised(String advice) {
        return facts.rows("ranked-replacements").stream()
                .filter(r -> r.is("advice", advice))
                .map(StoredRow::place)
                .toList();
    }

    private String stopSaving() {
        return facts.rows("ranked-replacements").stream()
                .filter(r -> r.has("stop_saving"))
                .findFirst()
                .map(r -> "; that stop is expected to save " + facts.run().currency() + " "
                        + Say.figure(r.number("stop_saving"), 2))
                .orElse("");
    }

    private String booked() {
        return facts.rows("ranked-replacements").stream()
                .filter(r -> r.has("next_stop"))
                .findFirst()
                .map(r -> ", booked for " + r.text("next_stop"))
                .orElse("");
    }

    private void cold() {
        boolean cold = facts.rows("warning-episodes").stream().anyMatch(e -> e.flag("explained_by_cold"));
        if (cold) {
            step("Before the next cold", "gauge the tyres cold and set them to the placard; leave the sensors alone");
        }
    }
}
