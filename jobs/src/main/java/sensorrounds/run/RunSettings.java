package sensorrounds.run;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sensorrounds.condition.ConditionSettings;
import sensorrounds.condition.HiddenChoices;
import sensorrounds.history.HistorySettings;
import sensorrounds.outlook.OutlookSettings;
import sensorrounds.recurrence.RecurrenceSettings;
import sensorrounds.replacement.Costs;
import sensorrounds.replacement.ReplacementSettings;
import sensorrounds.review.CohortBy;
import sensorrounds.review.ReviewSettings;
import sensorrounds.rounds.RoundSettings;
import sensorrounds.season.Hemisphere;
import sensorrounds.season.SeasonSettings;
import sensorrounds.stock.StockSettings;
import sensorrounds.survival.CohortLadder;
import sensorrounds.survival.TwoHazardPrior;
import sensorrounds.survival.WeakPrior;

/**
 * The settings of a run: what the review needs, and the limits of the run itself.
 *
 * @param quarantineLimit share of rows quarantined above which a run ends with exit code 4
 * @param reportRows lines of the long lists shown in the report
 * @param tree the same as a tree, to be printed and kept with the run
 */
public record RunSettings(ReviewSettings review, double quarantineLimit, int reportRows, ObjectNode tree) {
    // A record that gains a component must gain its key in settings.json too, and the other way round.
    private static final JsonMapper STRICT = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    /** The documented defaults. */
    public static RunSettings defaults() {
        return of(SettingsFile.defaults(), "defaults");
    }

    /** @param text content of a settings file; its values stand over the defaults */
    public static RunSettings parse(String fileName, String text) {
        return of(SettingsFile.overlay(fileName, text), fileName);
    }

    private static RunSettings of(ObjectNode tree, String fileName) {
        try {
            JsonNode battery = tree.get("battery");
            JsonNode proof = tree.get("proofDriveMinutes");
            ObjectNode history = tree.get("history").deepCopy();
            history.set("battery", battery);
            history.set("proofDriveMinutes", proof);
            ObjectNode condition = tree.get("condition").deepCopy();
            condition.set("battery", battery);
            ObjectNode recurrence = tree.get("recurrence").deepCopy();
            recurrence.set("condition", condition);
            recurrence.set("proofDriveMinutes", proof);
            ObjectNode ladder = tree.get("survival").deepCopy();
            String cohortBy = ladder.remove("cohortBy").asText();
            double preventiveWarningShare =
                    ladder.remove("preventiveWarningShare").asDouble();
            WeakPrior weakPrior = read(ladder.remove("weakPrior"), WeakPrior.class);
            TwoHazardPrior twoHazardPrior = read(ladder.remove("twoHazardPrior"), TwoHazardPrior.class);
            SeasonSettings season = season((ObjectNode) ladder.remove("season"), fileName);
            ReviewSettings review = new ReviewSettings(
                    read(history, HistorySettings.class),
                    cohortBy(cohortBy, fileName),
                    read(ladder, CohortLadder.Settings.class),
                    weakPrior,
                    twoHazardPrior,
                    preventiveWarningShare,
                    season,
                    read(condition, ConditionSettings.class),
                    read(tree.get("hiddenCondition"), HiddenChoices.class),
                    read(tree.get("outlook"), OutlookSettings.class),
                    read(recurrence, RecurrenceSettings.class),
                    costs(tree.get("costs")),
                    read(tree.get("replacement"), ReplacementSettings.class),
                    read(tree.get("stock"), StockSettings.class),
                    read(tree.get("rounds"), RoundSettings.class));
            return new RunSettings(
                    review,
                    tree.get("quarantineLimit").asDouble(),
                    tree.get("reportRows").asInt(),
                    tree);
        } catch (JsonProcessingException e) {
            // Ranges are checked key by key before; what is left are keys that contradict each other.
            Throwable cause = e.getCause() == null ? e : e.getCause();
            throw new UsageError(
                    "settings that do not go together",
                    fileName,
                    cause.getMessage(),
                    "values that agree with each other",
                    "correct them; docs/settings.md says what each means");
        }
    }

    private static <T> T read(JsonNode node, Class<T> type) throws JsonProcessingException {
        return STRICT.treeToValue(node, type);
    }

    private static Costs costs(JsonNode c) {
        return new Costs(
                c.get("currency").asText(),
                LocalDate.parse(c.get("asOf").asText()),
                c.get("plannedVisit").asDouble(),
                c.get("reading").asDouble(),
                c.get("perWheel").asDouble(),
                c.get("defaultSensorPrice").asDouble(),
                c.get("unplannedVisit").asDouble(),
                c.get("downtime").asDouble());
    }

    private static CohortBy cohortBy(String word, String fileName) {
        return switch (word) {
            case "vehicle-class" -> CohortBy.VEHICLE_CLASS;
            case "part" -> CohortBy.PART;
            default ->
                throw new UsageError(
                        "no such cohort",
                        fileName + ", survival.cohortBy",
                        word,
                        "vehicle-class or part",
                        "take one of them");
        };
    }

    private static SeasonSettings season(ObjectNode s, String fileName) {
        String word = s.get("hemisphere").asText();
        Hemisphere hemisphere = switch (word) {
            case "north" -> Hemisphere.NORTH;
            case "south" -> Hemisphere.SOUTH;
            default ->
                throw new UsageError(
                        "no such hemisphere",
                        fileName + ", survival.season.hemisphere",
                        word,
                        "north or south",
                        "take the one most depots lie in");
        };
        return new SeasonSettings(
                s.get("coldMonthCelsius").asDouble(), s.get("leastVisits").asInt(), hemisphere);
    }

    /** Every setting with its value, by dotted key, in the order of the file. */
    public List<Map.Entry<String, String>> flat() {
        List<Map.Entry<String, String>> all = new ArrayList<>();
        flatten(tree, "", all);
        return all;
    }

    private static void flatten(JsonNode node, String path, List<Map.Entry<String, String>> all) {
        if (!node.isObject()) {
            all.add(Map.entry(path, node.asText()));
            return;
        }
        node.properties()
                .forEach(e -> flatten(e.getValue(), path.isEmpty() ? e.getKey() : path + "." + e.getKey(), all));
    }
}
