package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import sensorrounds.condition.ConditionSettings;
import sensorrounds.condition.HiddenChoices;
import sensorrounds.history.HistorySettings;
import sensorrounds.outlook.OutlookSettings;
import sensorrounds.recurrence.RecurrenceSettings;
import sensorrounds.replacement.ReplacementSettings;
import sensorrounds.season.SeasonSettings;
import sensorrounds.stock.StockSettings;
import sensorrounds.survival.TwoHazardPrior;
import sensorrounds.survival.WeakPrior;

class SettingsTest {
    @Test
    void theFileHoldsTheDefaultsOfTheModel() {
        var review = RunSettings.defaults().review();
        assertThat(review.history()).isEqualTo(HistorySettings.defaults());
        assertThat(review.condition()).isEqualTo(ConditionSettings.defaults());
        assertThat(review.hidden()).isEqualTo(HiddenChoices.defaults());
        assertThat(review.outlook()).isEqualTo(OutlookSettings.defaults());
        assertThat(review.recurrence()).isEqualTo(RecurrenceSettings.defaults());
        assertThat(review.replacement()).isEqualTo(ReplacementSettings.defaults());
        assertThat(review.stock()).isEqualTo(StockSettings.defaults());
        assertThat(review.season()).isEqualTo(SeasonSettings.defaults());
        assertThat(review.weakPrior()).isEqualTo(WeakPrior.declared());
        assertThat(review.twoHazardPrior()).isEqualTo(TwoHazardPrior.declared());
    }

    @TestFactory
    Stream<DynamicTest> everyKeyReachesItsRecord() {
        RunSettings defaults = RunSettings.defaults();
        return defaults.flat().stream()
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
                    ObjectNode changed = change(e.getKey(), e.getValue());
                    RunSettings other = RunSettings.parse("test", changed.toString());
                    // Everything but the tree it was read from.
                    assertThat(List.of(other.review(), other.quarantineLimit(), other.reportRows()))
                            .as("a change of " + e.getKey() + " must show in the settings that the engine uses")
                            .isNotEqualTo(
                                    List.of(defaults.review(), defaults.quarantineLimit(), defaults.reportRows()));
                }));
    }

    private static ObjectNode change(String path, String value) {
        ObjectNode root = new JsonMapper().createObjectNode();
        ObjectNode at = root;
        String[] keys = path.split("\\.");
        for (int i = 0; i < keys.length - 1; i++) {
            at = at.putObject(keys[i]);
        }
        String key = keys[keys.length - 1];
        switch (path) {
            case "costs.currency" -> at.put(key, "GBP");
            case "costs.asOf" -> at.put(key, "2026-02-01");
            case "survival.cohortBy" -> at.put(key, "part");
            case "survival.season.hemisphere" -> at.put(key, "south");
            default -> {
                double v = Double.parseDouble(value);
                boolean whole = value.matches("-?\\d+")
                        && SettingsFile.defaults()
                                .at("/" + path.replace('.', '/'))
                                .isInt();
                if (whole) {
                    at.put(key, (int) v + 1);
                } else {
                    at.put(key, v == 0 ? 0.5 : v * 0.99);
                }
            }
        }
        // A weight of at least 1 cannot shrink.
        if (path.matches("recurrence\\.weights\\.(lowBattery|codeCurrent|codeStored|placeForNotASensor|knownFailed)")) {
            at.put(key, Double.parseDouble(value) * 1.3);
        }
        return root;
    }

    @Test
    void everyRangeNamesAKeyThatIsThere() throws IOException {
        try (InputStream in = SettingsTest.class.getResourceAsStream("/sensorrounds/settings-ranges.json")) {
            JsonNode ranges = new JsonMapper().readTree(in);
            List<String> known = RunSettings.defaults().flat().stream()
                    .map(Map.Entry::getKey)
                    .collect(Collectors.toCollection(ArrayList::new));
            // An object of names that the user gives; by default there are none.
            known.add("rounds.depotMinutes");
            ranges.fieldNames().forEachRemaining(name -> assertThat(known).contains(name));
        }
    }

    @Test
    void anUnknownKeyIsRefusedWithItsLineAndTheKeysThatAre() {
        assertThatThrownBy(() -> RunSettings.parse("s.json", "{\n  \"outlook\": {\n    \"horizon\": 30\n  }\n}"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("unknown key")
                .hasMessageContaining("s.json:3")
                .hasMessageContaining("outlook.horizon")
                .hasMessageContaining("horizonDays");
    }

    @Test
    void aDepotsMinutesAreItsOwnAndTheOthersKeepTheCommonOnes() {
        var rounds = RunSettings.parse("s.json", "{ \"rounds\": { \"depotMinutes\": { \"Mill. Lane\": 120 } } }")
                .review()
                .rounds();
        assertThat(rounds.minutesOf("Mill. Lane")).isEqualTo(120);
        assertThat(rounds.minutesOf("Quayside")).isEqualTo(960);
        assertThat(rounds.minutesOf(null)).isEqualTo(960);
        assertThatThrownBy(() ->
                        RunSettings.parse("s.json", "{ \"rounds\": { \"depotMinutes\": {\n\"Quayside\": -5 } } }"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("s.json:2")
                .hasMessageContaining("rounds.depotMinutes.Quayside")
                .hasMessageContaining("from 0 to 1000000");
        assertThatThrownBy(() ->
                        RunSettings.parse("s.json", "{ \"rounds\": { \"depotMinutes\": { \"Quayside\": \"much\" } } }"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("a number");
    }

    @Test
    void aNegativeCostIsRefusedWithItsLineAndRange() {
        assertThatThrownBy(() -> RunSettings.parse("s.json", "{\n  \"costs\": { \"downtime\": -5 }\n}"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("costs.downtime is out of range")
                .hasMessageContaining("s.json:2")
                .hasMessageContaining("-5")
                .hasMessageContaining("from 0 upwards");
    }

    @Test
    void aWrongTypeIsRefused() {
        assertThatThrownBy(() -> RunSettings.parse("s.json", "{\"proofDriveMinutes\": \"ten\"}"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("wrong type for proofDriveMinutes")
                .hasMessageContaining("a number");
    }

    @Test
    void aFractionWhereDaysAreCountedIsRefused() {
        assertThatThrownBy(() -> RunSettings.parse("s.json", "{\"outlook\": {\"horizonDays\": 30.5}}"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("a whole number from 1 to 3650");
    }

    @Test
    void brokenJsonIsRefusedWithItsLine() {
        assertThatThrownBy(() -> RunSettings.parse("s.json", "{\n  \"costs\": {,}\n}"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("not JSON")
                .hasMessageContaining("s.json:2");
    }

    @Test
    void valuesThatContradictEachOtherAreRefused() {
        assertThatThrownBy(() ->
                        RunSettings.parse("s.json", "{\"condition\": {\"leastChance\": 0.5, \"mostChance\": 0.4}}"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("leastChance");
    }

    @Test
    void limitsOfThePriorOfTwoHazardsMustRiseAndStayInRange() {
        assertThatThrownBy(() -> RunSettings.parse(
                        "s.json", "{\"survival\": {\"twoHazardPrior\": {\n\"wearShapeLow\": 0.9 } } }"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("survival.twoHazardPrior.wearShapeLow is out of range")
                .hasMessageContaining("s.json:2")
                .hasMessageContaining("from 1 to 50");
        assertThatThrownBy(() -> RunSettings.parse(
                        "s.json", "{\"survival\": {\"twoHazardPrior\": {\"earlyPerYearLow\": 0.2 } } }"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("0.2 to 0.05")
                .hasMessageContaining("do not go together");
    }

    @Test
    void aDateThatIsNoneIsRefused() {
        assertThatThrownBy(() -> RunSettings.parse("s.json", "{\"costs\": {\"asOf\": \"01.02.2026\"}}"))
                .isInstanceOf(UsageError.class)
                .hasMessageContaining("YYYY-MM-DD");
    }
}
