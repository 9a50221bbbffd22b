package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.intake.ContractVersion;
import sensorrounds.intake.Field;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.RejectionRule;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.WheelPosition;

/** Logs of other versions of the contract, and the template for technicians. */
class ContractVersionTest {
    @TempDir
    private Path folder;

    private List<LogRow> read(String name, String text) throws IOException {
        return Fixtures.read(Files.writeString(folder.resolve(name), text));
    }

    private static String json(String version, String more) {
        return "{" + (version == null ? "" : "\"contractVersion\":" + version + ",") + "\"visitId\":\"V1\","
                + "\"visitedAt\":\"2025-03-04\",\"vehicleId\":\"K\"," + more
                + "\"wheels\":[{\"position\":\"1L\",\"read\":\"ok\",\"rimType\":\"steel\"},"
                + "{\"position\":\"1R\",\"read\":\"ok\"}]}\n";
    }

    private static Long left(List<LogRow> rows) {
        return rows.get(rows.size() - 1).file().notes().get(Note.LATER_NAMES_LEFT_OUT);
    }

    @Test
    void namesOfALaterMinorVersionAreLeftOutAndCounted() throws IOException {
        List<LogRow> rows = read("a.jsonl", json("\"1.7\"", "\"weather\":\"rain\",\"tools\":{\"jack\":[1]},"));

        assertThat(Fixtures.accepted(rows)).hasSize(2);
        assertThat(left(rows)).isEqualTo(2);
    }

    @Test
    void aLaterVersionAtTheEndOfTheLineCountsAsWell() throws IOException {
        String line = json(null, "\"weather\":\"rain\",").strip();
        List<LogRow> rows = read("a.jsonl", line.substring(0, line.length() - 1) + ",\"contractVersion\":\"1.2\"}\n");

        assertThat(Fixtures.accepted(rows)).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"\"1.0\"", "\"1.1\"", "null"})
    void anUnknownNameInAKnownVersionIsASlip(String version) throws IOException {
        List<LogRow> rows = read("a.jsonl", json(version, ""));

        assertThat(Fixtures.accepted(rows)).hasSize(1);
        assertThat(Fixtures.rejected(rows)).extracting(Rejection::field).containsExactly("rimType");
        assertThat(left(rows)).isNull();
    }

    @ParameterizedTest
    @ValueSource(strings = {"\"2.0\"", "\"0.9\"", "\"one\"", "1"})
    void anotherMajorVersionIsRefusedWithTheWayOut(String version) throws IOException {
        List<LogRow> rows = read("a.jsonl", json(version, ""));

        assertThat(Fixtures.accepted(rows)).isEmpty();
        assertThat(Fixtures.rejected(rows)).hasSize(2);
        assertThat(Fixtures.rejected(rows).get(1).rule()).isEqualTo(RejectionRule.OTHER_CONTRACT);
        assertThat(Fixtures.rejected(rows).get(1).remedy()).contains("version 1");
    }

    @Test
    void columnsOfALaterMinorVersionAreLeftOutRowByRow() throws IOException {
        List<LogRow> rows = read(
                "a.csv",
                "contractVersion,visitId,visitedAt,vehicleId,position,read,rimType\n"
                        + "1.2,V1,2025-03-04,K,1L,ok,steel\n"
                        + "1.2,V1,2025-03-04,K,1R,ok,\n"
                        + "1.1,V2,2025-03-04,K,1L,ok,steel\n"
                        + ",V3,2025-03-04,K,1L,ok,\n");

        assertThat(Fixtures.accepted(rows)).hasSize(3);
        assertThat(left(rows)).isEqualTo(1);
        assertThat(Fixtures.rejected(rows)).extracting(Rejection::rule).containsExactly(RejectionRule.UNKNOWN_KEY);
        assertThat(Fixtures.rejected(rows)).extracting(Rejection::field).containsExactly("rimType");
    }

    @Test
    void withoutAVersionAnUnknownColumnRefusesTheFile() {
        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> read(
                        "a.csv", "visitId,visitedAt,vehicleId,position,read,rimType\nV1,2025-03-04,K,1L,ok,steel\n"))
                .withMessageContaining("rimType");
    }

    @Test
    void theSchemaIsOfThisVersion() {
        assertThat(Fixtures.text(Fixtures.repositoryRoot().resolve("docs/visit-log.schema.json")))
                .contains("urn:sensor-rounds:visit-log:" + ContractVersion.text());
        assertThat(Fixtures.text(Fixtures.repositoryRoot().resolve("docs/visit-log.md")))
                .startsWith("# The visit log, version " + ContractVersion.text());
    }

    @Test
    void theTemplateHasEveryColumnAndLoadsOnceARowIsFilledIn() throws IOException {
        String header = Fixtures.text(Fixtures.repositoryRoot().resolve("docs/visit-log-template.csv"))
                .strip();
        List<String> names = Arrays.asList(header.split(","));
        assertThat(names)
                .isEqualTo(Arrays.stream(Field.values())
                        .filter(f -> f.ordinal() < Field.placardPressure(4).ordinal()
                                || f.ordinal()
                                        > Field.placardPressure(WheelPosition.MAX_AXLE)
                                                .ordinal())
                        .map(Field::key)
                        .toList());

        String row = names.stream()
                .map(n -> switch (n) {
                    case "contractVersion" -> "1.1";
                    case "visitId" -> "V1";
                    case "vehicleId" -> "K";
                    case "visitedAt" -> "2025-03-04";
                    case "position" -> "1L";
                    case "read" -> "ok";
                    default -> "";
                })
                .collect(Collectors.joining(","));
        List<LogRow> rows = read("filled.csv", header + "\n" + row + "\n");

        assertThat(Fixtures.accepted(rows)).hasSize(1);
        assertThat(Fixtures.rejected(rows)).isEmpty();
    }
}
