package sensorrounds.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a user gets to hear: one message with what, where, value, expected and the way out, and the designed exit code. */
class BadInputTest {
    private static final String VISIT = "{\"visitId\":\"%s\",\"visitedAt\":\"2026-03-0%d\",\"technicianId\":\"T1\","
            + "\"vehicleId\":\"V1\",\"wheels\":[{\"position\":\"1L\",\"read\":\"ok\",\"sensorId\":\"0A1B2C3D\"}]}\n";

    @TempDir
    private Path dir;

    private Path data;
    private Path out;
    private String said;

    @BeforeEach
    void aDataFolder() throws IOException {
        data = Files.createDirectories(dir.resolve("data"));
        out = dir.resolve("out");
        Files.createDirectories(data.resolve("visit-logs"));
        log("a.jsonl", String.format(VISIT, "a", 1) + String.format(VISIT, "b", 2));
    }

    @Test
    void noCommandAndUnknownOptionsAreUsage() {
        assertThat(run()).isEqualTo(1);
        assertThat(said).contains("no command given").contains("sensor-rounds --help");
        assertThat(run("run", "--data", data.toString(), "--out", out.toString(), "--asof", "2026-01-01"))
                .isEqualTo(1);
        assertThat(said).contains("--asof").contains("--as-of").contains("sensor-rounds run --help");
        assertThat(out).doesNotExist();
    }

    @Test
    void aDateThatIsNoneIsUsage() {
        assertThat(run("run", "--data", data.toString(), "--out", out.toString(), "--as-of", "31.12.2026"))
                .isEqualTo(1);
        assertThat(said).contains("--as-of").contains("31.12.2026");
    }

    @Test
    void minutesOfADepotThatNobodyIsAtAreUsage() throws IOException {
        Files.writeString(data.resolve("fleet.csv"), "vehicleId,depot\nV1,Quayside\n");
        Files.writeString(data.resolve("settings.json"), "{\"rounds\": {\"depotMinutes\": {\"Quay\": 300}}}");
        assertThat(run("run", "--data", data.toString(), "--out", out.toString()))
                .isEqualTo(1);
        assertThat(said).contains("rounds.depotMinutes").contains("Quay").contains("Quayside");
        assertThat(out).doesNotExist();
    }

    @Test
    void aMissingFolderIsRefused() {
        assertThat(run("run", "--data", dir.resolve("nowhere").toString(), "--out", out.toString()))
                .isEqualTo(2);
        assertThat(said).contains("no such data folder").contains("nowhere").contains("way out");
        assertThat(out).doesNotExist();
    }

    @Test
    void anEmptyFolderIsRefused() throws IOException {
        Files.delete(data.resolve("visit-logs/a.jsonl"));
        assertThat(runData()).isEqualTo(2);
        assertThat(said).contains("a folder without logs").contains(".jsonl").contains("way out");
    }

    @Test
    void aFileThatIsNoVisitLogIsRefused() throws IOException {
        log("letter.csv", "Dear technician,\nplease find enclosed\n");
        assertThat(runData()).isEqualTo(2);
        assertThat(said).contains("visit-logs/letter.csv").contains("way out");
        assertThat(out).doesNotExist();
    }

    @Test
    void aFileThatIsNoGzipIsRefused() throws IOException {
        log("b.jsonl.gz", "not packed at all");
        assertThat(runData()).isEqualTo(2);
        assertThat(said).contains("visit-logs/b.jsonl.gz").contains("way out");
    }

    @Test
    void aCutOffGzipIsRefusedAndEarlierResultsStay() throws IOException {
        assertThat(runData()).isEqualTo(0);
        String pointer = Files.readString(out.resolve("latest.json"));
        byte[] whole = gzip(String.format(VISIT, "c", 3).repeat(20_000));
        Files.write(data.resolve("visit-logs/c.jsonl.gz"), Arrays.copyOf(whole, whole.length - 40));
        assertThat(runData()).isEqualTo(2);
        assertThat(said).contains("visit-logs/c.jsonl.gz").contains("line").contains("way out");
        assertThat(Files.readString(out.resolve("latest.json"))).isEqualTo(pointer);
        assertThat(Files.readString(out.resolve("runs/000002/run-status.json")))
                .contains("FAILED")
                .contains("c.jsonl.gz");
        assertThat(out.resolve("runs/000001/report.html")).isNotEmptyFile();
    }

    @Test
    void settingsThatCannotBeAreUsage() throws IOException {
        Files.writeString(data.resolve("settings.json"), "{\"costs\": {\"downtime\": -1}}");
        assertThat(runData()).isEqualTo(1);
        assertThat(said).contains("costs.downtime").contains("settings.json:1").contains("-1");
        Files.writeString(data.resolve("settings.json"), "{\"colour\": 1}");
        assertThat(runData()).isEqualTo(1);
        assertThat(said).contains("unknown key").contains("colour");
        assertThat(out).doesNotExist();
    }

    @Test
    void aBadLineOfTheRegisterIsRefusedWithItsLine() throws IOException {
        Files.writeString(data.resolve("fleet.csv"), "vehicleId,firstUsed\nV1,2020-02-30\n");
        assertThat(runData()).isEqualTo(2);
        assertThat(said).contains("fleet.csv").contains("2020-02-30").contains("way out");
    }

    @Test
    void moreQuarantineThanAllowedIsDoneWithItsOwnCode() throws IOException {
        log("d.jsonl", String.format(VISIT, "d", 4).replace("2026-03-04", "yesterday"));
        assertThat(runData()).isEqualTo(4);
        assertThat(said).contains("quarantine.csv");
        assertThat(out.resolve("latest.json")).exists();
        assertThat(Files.readString(out.resolve("runs/000001/run-status.json"))).contains("DONE_OVER_QUARANTINE_LIMIT");
        assertThat(Files.readString(out.resolve("runs/000001/csv/quarantine.csv")))
                .contains("visit-logs/d.jsonl,1,d,,visitedAt,yesterday");
    }

    @Test
    void checkSaysTheSameAndWritesNothing() throws IOException {
        assertThat(run("check", "--data", data.toString())).isEqualTo(0);
        log("d.jsonl", String.format(VISIT, "d", 4).replace("2026-03-04", "yesterday"));
        assertThat(run("check", "--data", data.toString())).isEqualTo(4);
        assertThat(said)
                .contains("3 rows in = 2 accepted + 1 quarantined + 0 duplicates")
                .contains("yesterday");
        assertThat(dir.toFile().list()).containsExactly("data");
    }

    @Test
    void logsWithoutOneGoodRowAreRefused() throws IOException {
        log("a.jsonl", String.format(VISIT, "d", 4).replace("2026-03-04", "yesterday"));
        assertThat(runData()).isEqualTo(2);
        assertThat(said).contains("not one row was accepted").contains("sensor-rounds check");
    }

    @Test
    void aYearMistypedInOneVisitDoesNotAgeTheFleet() throws IOException {
        StringBuilder ordinary = new StringBuilder();
        for (int i = 0; i < 200; i++) {
            ordinary.append(String.format(VISIT, "n" + i, 2));
        }
        log("n.jsonl", ordinary.toString());
        log("e.jsonl", String.format(VISIT, "e", 5).replace("2026-03-05", "2062-03-05"));
        assertThat(runData()).isEqualTo(2);
        assertThat(said)
                .contains("the latest visits lie far beyond all others")
                .contains("visit-logs/e.jsonl:1")
                .contains("2062-03-05")
                .contains("--as-of 2026-03-02");
        assertThat(Files.readString(out.resolve("runs/000001/run-status.json"))).contains("FAILED");
        assertThat(run("run", "--data", data.toString(), "--out", out.toString(), "--as-of", "2026-03-02", "--quiet"))
                .isEqualTo(0);
    }

    @Test
    void aDayBeforeAllVisitsIsRefused() {
        assertThat(run("run", "--data", data.toString(), "--out", out.toString(), "--as-of", "2020-01-01", "--quiet"))
                .isEqualTo(2);
        assertThat(said).contains("no visit by that day").contains("2026-03-01");
    }

    @Test
    void everyCommandHasAManualPage() {
        for (String command : new String[] {"run", "check", "layout", "simulate", "explain"}) {
            assertThat(run(command, "--help")).isEqualTo(0);
            assertThat(said)
                    .contains("Example")
                    .contains("sensor-rounds " + command)
                    .contains("Default");
        }
    }

    private int runData() {
        return run("run", "--data", data.toString(), "--out", out.toString(), "--quiet");
    }

    private int run(String... args) {
        StringWriter text = new StringWriter();
        PrintWriter writer = new PrintWriter(text, true);
        int code = Main.execute(args, writer, writer);
        said = text.toString();
        return code;
    }

    private void log(String name, String text) throws IOException {
        Files.writeString(data.resolve("visit-logs").resolve(name), text);
    }

    private static byte[] gzip(String text) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream packed = new GZIPOutputStream(bytes)) {
            packed.write(text.getBytes(StandardCharsets.UTF_8));
        }
        return bytes.toByteArray();
    }
}
