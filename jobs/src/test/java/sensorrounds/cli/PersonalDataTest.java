package sensorrounds.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.ingest.LogTable;
import sensorrounds.run.SparkSessions;

/** Planted plates, VINs, notes and names of technicians, looked for in everything that a run leaves behind. */
class PersonalDataTest {
    private static final List<String> PLANTED = List.of(
            "QX41ZTP",
            "QX41 ZTP",
            "QX55 ZZZ",
            "1M8GDM9AXKP042788",
            "1M8GDM9AXKP04278Q",
            "Quentin",
            "Zebedee",
            "555-0199");

    @TempDir
    private Path dir;

    private Path data;
    private Path out;
    private String said = "";

    @BeforeEach
    void logsWithPeopleInThem() throws IOException {
        data = Files.createDirectories(dir.resolve("data"));
        out = dir.resolve("out");
        Path logs = Files.createDirectories(data.resolve("visit-logs"));
        String header =
                "visitId,visitedAt,technicianId,vehicleId,vin,registration,warning,notes,position,sensorId,read,work\n";
        Files.writeString(
                logs.resolve("a.csv"),
                header
                        + "a,2025-03-04,Quentin,K1,1M8GDM9AXKP042788,QX41 ZTP,low-pressure,ask Zebedee 555-0199,1L,0A1B2C3D,ok,none\n"
                        + "a,2025-03-04,Quentin,K1,1M8GDM9AXKP042788,QX41 ZTP,low-pressure,ask Zebedee 555-0199,1R,0A1B2C3E,no-answer,sensor-replaced\n"
                        + "b,2025-09-04,Quentin,K1,1M8GDM9AXKP04278Q,QX55 ZZZ,none,Zebedee again,1L,0A1B2C3D,no-answer,none\n"
                        + "b,2025-09-04,Quentin,K1,1M8GDM9AXKP04278Q,QX55 ZZZ,none,Zebedee again,9X,0A1B2C3D,ok,none\n"
                        + "c,2025-09-05,Quentin,K2,,QX41\uFFFDZTP,none,,1L,0A1B2C4D,ok,none\n"
                        + "d,2025-09-06,Quentin,K2,,QX41ZTP,none,,1L,0A1B2C4D,ok,none,Zebedee\n");
        Files.writeString(
                logs.resolve("b.jsonl"),
                "{\"visitId\":\"e\",\"visitedAt\":\"2025-10-01\",\"vehicleId\":\"K3\",\"technicianId\":\"Quentin\","
                        + "\"registration\":\"QX55 ZZZ\",\"notes\":\"Zebedee\"}\n"
                        + "{\"visitId\":\"f\",\"notes\":Zebedee}\n"
                        + "{\"visitId\":\"g\",\"visitedAt\":\"2025-10-02\",\"vehicleId\":\"K3\",\"notes\":\"Zebedee\",\"notes\":\"Quentin\"}\n"
                        + "{\"visitId\":\"h\",\"visitedAt\":\"2025-10-02\",\"vehicleId\":\"K3\",\"vin\":[\"1M8GDM9AXKP042788\"]}\n");
    }

    private int run(String... more) {
        StringWriter text = new StringWriter();
        PrintWriter screen = new PrintWriter(text);
        String[] args = Stream.concat(
                        Stream.of(more[0], "--data", data.toString()),
                        Stream.of(more).skip(1))
                .toArray(String[]::new);
        int code = Main.execute(args, screen, screen);
        screen.flush();
        said += text;
        return code;
    }

    /** @param stored whether the stored log rows are looked at too */
    private void nothingPersonal(boolean stored) throws IOException {
        assertThat(said).doesNotContain(PLANTED.toArray(String[]::new));
        int files = 0;
        try (Stream<Path> all = Files.walk(out)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                if (stored || !file.toString().contains("log_rows")) {
                    assertThat(Files.readString(file, StandardCharsets.ISO_8859_1))
                            .as(file.toString())
                            .doesNotContain(PLANTED.toArray(String[]::new));
                    files++;
                }
            }
        }
        assertThat(files).isGreaterThan(20);
    }

    private String logRows() {
        try (SparkSessions.Session session = SparkSessions.open("test", 0)) {
            return LogTable.read(
                            session.spark(),
                            out.resolve("runs/000001/tables/log_rows").toString())
                    .collectAsList()
                    .toString();
        }
    }

    @Test
    void nothingPersonalLeavesTheStore() throws IOException {
        assertThat(run("check")).isEqualTo(4);
        assertThat(said).contains("\"AA99");
        run("run", "--out", out.toString());

        nothingPersonal(false);
        // The rows themselves keep what was written: that is the store.
        assertThat(logRows()).contains("QX41 ZTP", "Zebedee", "Quentin");
    }

    @Test
    void withAKeyNothingPersonalIsStored() throws IOException {
        Path key = Files.writeString(dir.resolve("key"), "kJ8x2mQp7Lw3Zr5Tn9Vb1Yc6Hd4Fs0Ga\n");
        run("run", "--out", out.toString(), "--pseudonymise", key.toString(), "--pseudonymise-technicians");

        nothingPersonal(true);
        assertThat(logRows()).doesNotContain(PLANTED.toArray(String[]::new)).contains("K1");
    }

    @Test
    void technicianKeysNeedTheKeyFileBesideThem() {
        assertThat(run("run", "--out", out.toString(), "--pseudonymise-technicians"))
                .isEqualTo(1);
        assertThat(said).contains("--pseudonymise KEYFILE");
    }
}
