package sensorrounds.story;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The working behind the suspects: each sign with its weight, their product, and the probability it gives. */
final class SuspectLines {
    private static final Pattern WEIGHT = Pattern.compile("\\(×([0-9.]+)\\)$");

    /** Chance from which it is said what would settle a suspect. */
    private static final double WORTH_ASKING = 0.1;

    private SuspectLines() {}

    static Page.Part part(VehicleFacts facts) {
        List<StoredRow> suspects = facts.rows("suspects");
        List<Block> blocks = new ArrayList<>();
        if (!suspects.isEmpty()) {
            blocks.add(new Block.Prose("One cause is taken to be behind the warnings. Each candidate's weights are"
                    + " multiplied and divided by the sum over all candidates; a cause outside the sensors is the measure,"
                    + " with 1 before other evidence. The chances say where to look first, not what to fit. Tries are held against what a"
                    + " sound sensor needs with that reader, that technician as far as the two can be told apart, on such a wheel and in"
                    + " such weather."));
            blocks.add(new Block.Items(
                    Block.Order.NUMBERED,
                    suspects.stream().map(SuspectLines::item).toList()));
        }
        return new Page.Part("suspects", "What may be behind it", blocks);
    }

    static String name(StoredRow suspect) {
        if (suspect.has("sensor_id")) {
            return suspect.text("position") + ", sensor " + suspect.text("sensor_id");
        }
        return suspect.has("position")
                ? "not a sensor, but the place " + suspect.text("position")
                : "not a sensor: receiver, wiring, interference or an ID not learned";
    }

    /** What to look at for this suspect. */
    static String look(StoredRow suspect) {
        if (suspect.has("sensor_id")) {
            return name(suspect);
        }
        return suspect.has("position")
                ? "the place " + suspect.text("position") + ", not a sensor"
                : "causes outside the sensors";
    }

    private static String chance(double p) {
        return p < 0.005 ? "<\u00a01\u00a0%" : p > 0.99 ? Say.sure(p) : Say.figure(100 * p, 0) + "\u00a0%";
    }

    private static Block.Item item(StoredRow suspect) {
        List<String> details = new ArrayList<>();
        List<String> weights = new ArrayList<>();
        double product = 1;
        for (String reason : Arrays.asList(suspect.orEmpty("reasons").split("; "))) {
            details.add(reason);
            Matcher m = WEIGHT.matcher(reason);
            if (m.find()) {
                weights.add(m.group(1));
                product *= Double.parseDouble(m.group(1));
            }
        }
        if (weights.size() > 1) {
            details.add("together " + String.join(" × ", weights) + " = "
                    + String.format(Locale.ROOT, product < 0.01 ? "%.4f" : product < 10 ? "%.2f" : "%.0f", product));
        }
        if (suspect.has("next_step") && suspect.number("probability") >= WORTH_ASKING) {
            details.add("would be settled by: " + suspect.text("next_step"));
        }
        return new Block.Item(chance(suspect.number("probability")), name(suspect), details);
    }
}
