package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.SparkTest;
import sensorrounds.ingest.IngestSummary.FileResult;
import sensorrounds.intake.Duplicate;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.ResolvedVisits;
import sensorrounds.intake.VisitResolver;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;
import sensorrounds.visit.LoggedWheel;

class IngestJobTest {
    private static final SparkSession SPARK = SparkTest.spark();

    @TempDir
    private Path out;

    private String table(String name) {
        return out.resolve(name).toString();
    }

    private static IngestJob job() {
        return new IngestJob(SPARK, 3);
    }

    @Test
    void everyRowOfEveryTrapIsAcceptedQuarantinedOrADuplicate() {
        List<LogFile> files = Fixtures.find(Fixtures.TRAPS, Fixtures.TRAPS.resolve("*.*"));

        IngestSummary summary = job().run(files, table("t"));

        assertThat(summary.files())
                .hasSameSizeAs(files)
                .allSatisfy(f -> assertThat(f.rowsOut()).isEqualTo(f.count().rows()));
        assertThat(summary.rowsIn())
                .isEqualTo(summary.accepted() + summary.quarantined() + summary.duplicateRows())
                .isEqualTo(LogTable.read(SPARK, table("t")).count() - files.size());
        assertThat(summary.quarantine())
                .extracting(r -> r.rule().name())
                .contains("TWO_WHEELS_ONE_PLACE", "BAD_DATE", "UNKNOWN_KEY", "NOT_JSON");
        assertThat(CheckReport.text(summary))
                .contains(summary.rowsIn() + " rows in")
                .contains("bad-date.csv:3: \"04.03.2025\", expected a time as 2025-03-04T09:05")
                .contains("way out: write ISO 8601");
    }

    @Test
    void checkingCountsTheSameAndWritesNothing() {
        List<LogFile> files = Fixtures.find(Fixtures.TRAPS, Fixtures.TRAPS.resolve("*.*"));

        assertThat(job().check(files).summary()).isEqualTo(job().run(files, table("t")));
        assertThat(out.toFile().list()).containsExactly("t");
    }

    /** One small log with a slip of most kinds: all rows are used, and each slip is told with its row. */
    @Test
    void whatIsUsedButHardlyRightIsToldWithItsRow() {
        List<LogFile> files = Fixtures.find(Fixtures.TRAPS, Fixtures.TRAPS.resolve("doubtful.csv"));

        Examination seen = job().check(files);

        assertThat(seen.summary().accepted()).isEqualTo(7);
        assertThat(seen.doubts().groups())
                .extracting(g -> g.kind().name() + " " + g.count())
                .containsExactly(
                        "SENSOR_ID_NEAR 1",
                        "SENSOR_AT_TWO_PLACES 1",
                        "SENSOR_AT_TWO_VEHICLES 2",
                        "PRESSURE_UNIT 1",
                        "PRESSURE_ABSOLUTE 1",
                        "TEMPERATURE_UNLIKELY 1",
                        "ODOMETER_BACK 1",
                        "ODOMETER_JUMP 1",
                        "PLATE_CHANGED 1");
        assertThat(CheckReport.text(seen))
                .contains("Used as written, but to be doubted:")
                .contains("doubtful.csv:4: vehicle K7, 1L: sensor 0A182C01 is seen at this visit only, 0A1B2C01 at 2"
                        + " others: 8 written for B, which look alike")
                .contains("sensor 7F3D9B22 is on vehicle K7 from 2025-03-04 to 2025-06-04 and on vehicle K8 on"
                        + " 2025-06-04")
                .doesNotContain("BBB");
    }

    @Test
    void aLogSentTwiceCountsOnce() {
        List<LogFile> files = Fixtures.find(Fixtures.TRAPS, Fixtures.TRAPS.resolve("resend"));

        IngestSummary summary = job().run(files, table("t"));

        assertThat(summary.duplicates()).isEqualTo(Map.of(Duplicate.Rule.EXACT, 2L));
        assertThat(summary.files()).extracting(FileResult::accepted).containsExactly(2L, 0L);
        assertThat(LogTable.accepted(SPARK, table("t")).collect())
                .allSatisfy(r -> assertThat(r.source().file()).isEqualTo("resend/a.csv"));
    }

    @Test
    void aRevisedVisitReplacesItsFormerForm() {
        job().run(Fixtures.find(Fixtures.TRAPS, Fixtures.TRAPS.resolve("revised")), table("t"));

        assertThat(LogTable.accepted(SPARK, table("t")).collect())
                .extracting(r -> r.wheel().position().code())
                .containsExactly("1L", "2R");
    }

    /** Spark must give what plain Java gives on the same rows. */
    @Test
    void theJobGivesWhatTheResolverGivesVehicleByVehicle() throws IOException {
        Path data = manyVehicles(40);
        List<LogFile> files = Fixtures.find(data, data.resolve("visit-logs"));

        job().run(files, table("t"));

        List<List<LoggedWheel>> byVehicle =
                new ArrayList<>(LogTable.byVehicle(SPARK, table("t")).collect());
        byVehicle.sort(Comparator.comparing(run -> run.get(0).visit().vehicleId()));
        List<LoggedWheel> rows = Fixtures.accepted(Fixtures.read(data, data.resolve("visit-logs")));
        List<List<LoggedWheel>> expected = new ArrayList<>();
        for (int v = 10; v < 50; v++) {
            String vehicle = "K" + v;
            ResolvedVisits resolved = VisitResolver.resolve(rows.stream()
                    .filter(r -> r.visit().vehicleId().equals(vehicle))
                    .toList());
            expected.add(resolved.accepted());
        }
        assertThat(byVehicle).isEqualTo(expected);
    }

    @Test
    void equalInputGivesEqualRowsInEqualOrder() throws IOException {
        Path data = manyVehicles(20);
        List<LogFile> files = Fixtures.find(data, data.resolve("visit-logs"));

        job().run(files, table("one"));
        job().run(files, table("two"));

        assertThat(rows("one")).hasSizeGreaterThan(100).isEqualTo(rows("two"));
    }

    private List<String> rows(String table) {
        return LogTable.read(SPARK, table(table)).collectAsList().stream()
                .map(Row::mkString)
                .toList();
    }

    /** Files of visits in which every third row is bad and every fifth stands twice. */
    private Path manyVehicles(int vehicles) throws IOException {
        Path data = Files.createDirectories(out.resolve("data" + vehicles + "/visit-logs"))
                .getParent();
        for (int file = 0; file < 4; file++) {
            StringBuilder csv = new StringBuilder("visitId,visitedAt,vehicleId,position,read,sensorId\n");
            for (int i = 0; i < vehicles * 3; i++) {
                int vehicle = 10 + i % vehicles;
                String line = "V" + file + "-" + i + ",2025-03-" + (10 + i % 7) + ",K" + vehicle + ",%s,"
                        + (i % 3 == 1 ? "maybe" : "ok") + ",0A1B2C" + vehicle + "\n";
                csv.append(line.formatted("1L")).append(line.formatted("1R"));
                csv.append(i % 5 == 0 ? line.formatted("1L") : "");
            }
            Files.writeString(data.resolve("visit-logs/f" + file + ".csv"), csv);
        }
        return data;
    }

    @Test
    void aFileThatBreaksOffInsideTheJobIsTheUsersErrorAndNotOurs() throws IOException {
        Path data = manyVehicles(10);
        List<LogFile> files = Fixtures.find(data, data.resolve("visit-logs"));
        Files.writeString(data.resolve("visit-logs/f3.csv"), "visitId,visitedAt,vehicleId\nV1,2025-03-04,\"K1\n");

        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> job().run(files, table("t")))
                .withMessageContaining("f3.csv")
                .withMessageContaining("a log changed while it was read");
    }

    @Test
    void rowsThatDoNotAddUpAreOurBugAndNameTheFile() {
        FileCount count = new FileCount("a.csv", 3, 4, 100, "csv", null, Map.of(), Map.of());
        IngestSummary lost = new IngestSummary(List.of(new FileResult("a.csv", count, 1, 1, 0)), List.of(), Map.of());

        assertThatIllegalStateException()
                .isThrownBy(() -> IngestReconciliation.check(lost, List.of()))
                .withMessageContaining("a.csv has 3 rows in")
                .withMessageContaining("= 2");
    }

    @Test
    void theTableIsPartitionedByOutcome() {
        job().run(Fixtures.find(Fixtures.TRAPS, Fixtures.TRAPS.resolve("*.*")), table("t"));

        assertThat(LogTable.read(SPARK, table("t")).schema().fieldNames())
                .isEqualTo(LogRows.TABLE.schema().fieldNames());
        for (LogRow.Outcome outcome : LogRow.Outcome.values()) {
            boolean any = LogTable.read(SPARK, table("t"), outcome).count() > 0;
            assertThat(Files.exists(out.resolve("t/outcome=" + outcome.word()))).isEqualTo(any);
        }
    }
}
