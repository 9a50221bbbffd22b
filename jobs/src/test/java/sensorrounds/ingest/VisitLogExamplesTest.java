package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.intake.Field;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;

/** docs/visit-log.md, its schema, its examples and the reader must say the same. */
class VisitLogExamplesTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final JsonSchema SCHEMA = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Fixtures.text(Fixtures.repositoryRoot().resolve("docs/visit-log.schema.json")));

    @Test
    void everyExampleIsValidAndReadWithoutARejection() throws IOException {
        for (String line : Fixtures.text(Fixtures.EXAMPLES.resolve("visit-logs/visits.jsonl"))
                .lines()
                .toList()) {
            assertThat(SCHEMA.validate(JSON.readTree(line))).as(line).isEmpty();
        }
        List<LogRow> rows = Fixtures.read(Fixtures.EXAMPLES, Fixtures.EXAMPLES.resolve("visit-logs"));
        assertThat(Fixtures.rejected(rows)).isEmpty();
        assertThat(Fixtures.accepted(rows)).hasSize(9 + 9 + 4);
    }

    @Test
    void jsonAndCsvOfTheSameVisitsAreTheSameReadings() {
        assertThat(readings("visits.jsonl")).hasSize(9).isEqualTo(readings("visits.csv"));
    }

    private static List<LoggedWheel> readings(String file) {
        return Fixtures.accepted(Fixtures.read(Fixtures.EXAMPLES, Fixtures.EXAMPLES.resolve("visit-logs/" + file)))
                .stream()
                .map(r -> new LoggedWheel(r.visit(), r.wheel(), new Source("", 1)))
                .toList();
    }

    /** What the schema refuses, the reader puts into quarantine: two descriptions of one contract. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"visitId\":\"V\",\"vehicleId\":\"K\"}",
                "{\"visitId\":\" \",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\"}",
                "{\"visitId\":\"V\",\"visitedAt\":\"4 March\",\"vehicleId\":\"K\"}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"colour\":\"red\"}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"placardPressure\":{\"0\":240}}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"placardPressure\":240}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"faultCodes\":[{\"code\":\"Z1\"}]}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"faultCodes\":[{\"state\":\"stored\"}]}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"testDrive\":{\"km\":3}}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"warning\":\"lamp\"}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"wheels\":{}}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"wheels\":[7]}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"wheels\":[{\"position\":\"1L\"}]}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"wheels\":[{\"position\":\"FL\",\"read\":\"ok\"}]}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"wheels\":[{\"position\":\"1L\",\"read\":\"ok\",\"sensorId\":12345678}]}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"wheels\":[{\"position\":\"1L\",\"read\":\"ok\",\"wakeAttempts\":0}]}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"wheels\":[{\"position\":\"1L\",\"read\":\"ok\",\"battery\":\"35\"}]}",
                "{\"visitId\":\"V\",\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\",\"wheels\":[{\"position\":\"1L\",\"read\":\"ok\",\"tyreDate\":\"5419\"}]}",
            })
    void theSchemaAndTheReaderRefuseTheSame(String line) throws IOException {
        assertThat(SCHEMA.validate(JSON.readTree(line))).isNotEmpty();
        JsonVisit visit = JsonVisit.read(line, new Source("a.jsonl", 1));
        assertThat(new sensorrounds.intake.VisitParser(sensorrounds.intake.Layout.CANONICAL)
                        .visit(visit.visit(), visit.wheels()))
                .singleElement()
                .isInstanceOf(sensorrounds.intake.Rejection.class);
    }

    @Test
    void everyFieldIsExplainedInTheDocumentAndStandsInTheCsvExample() {
        String document = Fixtures.text(Fixtures.repositoryRoot().resolve("docs/visit-log.md"));
        List<String> header = Arrays.asList(Fixtures.text(Fixtures.EXAMPLES.resolve("visit-logs/visits.csv"))
                .lines()
                .findFirst()
                .orElseThrow()
                .split(","));
        for (Field field : Field.values()) {
            String name = field.name().startsWith("PLACARD_PRESSURE") ? "placardPressure1" : field.key();
            assertThat(document).contains("`" + name + "`");
            assertThat(header).contains(name);
        }
    }

    @Test
    void everyRuleOfQuarantineIsListedInTheDocument() {
        String document = Fixtures.text(Fixtures.repositoryRoot().resolve("docs/visit-log.md"));
        assertThat(Stream.of(sensorrounds.intake.RejectionRule.values())
                        .map(Enum::name)
                        .filter(rule -> !document.contains("`" + rule + "`"))
                        .collect(Collectors.toList()))
                .isEmpty();
    }

    @Test
    void everyExampleLineOfTheDocumentIsReadAndFitsTheSchema() throws IOException {
        String document = Fixtures.text(Fixtures.repositoryRoot().resolve("docs/visit-log.md"));
        String block = document.substring(document.indexOf("```json") + 7);
        List<String> lines =
                block.substring(0, block.indexOf("```")).strip().lines().toList();
        assertThat(lines).hasSize(6);
        for (String line : lines) {
            assertThat(SCHEMA.validate(JSON.readTree(line))).as(line).isEmpty();
            JsonVisit visit = JsonVisit.read(line, new Source("a.jsonl", 1));
            assertThat(new sensorrounds.intake.VisitParser(sensorrounds.intake.Layout.CANONICAL)
                            .visit(visit.visit(), visit.wheels()))
                    .as(line)
                    .allMatch(r -> r instanceof sensorrounds.intake.ParsedRow.Accepted);
        }
    }

    @Test
    void theRegistersOfTheExamplesAreRead() {
        RegisterReader registers = new RegisterReader(Fixtures.HADOOP, Fixtures.EXAMPLES.toString());

        assertThat(registers.fleet()).containsOnlyKeys("TRL-004", "VAN-017", "VAN-021", "VAN-030");
        assertThat(registers.fleet().get("TRL-004").axles().code()).isEqualTo("D+spare");
        assertThat(registers.parts()).hasSize(4);
        assertThat(registers.stock()).hasSize(3);
    }
}
