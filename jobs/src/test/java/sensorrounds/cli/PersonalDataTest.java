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
import sensorrounds.ingest.OtherForms;
import sensorrounds.intake.Layout;
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
            "Zeb'dee",
            "555-0199",
            "555 0199");

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
                        + "d,2025-09-06,Quentin,K2,,QX41ZTP,none,,1L,0A1B2C4D,ok,none,Zebedee\n"
                        + "k,2025-09-07,Quentin,K2,1M8GDM9AXKP042788,QX41ZTP,none,,1R,0A1B2C4E,ok,none\n"
                        + "l,2025-09-08,Quentin,K2,,QX41ZTP,none,\"Zebedee, 555 0199\",1R,0A1B2C4E,ok,none");
        Files.writeString(Files.createDirectories(data.resolve("layouts")).resolve("shop.json"), """
                {"name": "shop", "appliesTo": ["visit-logs/shop*.csv"], "delimiter": ";",
                 "columns": {"Job": "visitId", "Day": "visitedAt", "Car": "vehicleId", "Who": "technicianId",
                             "Plate": "registration", "Remarks": "notes", "Wheel": "position", "Answer": "read"},
                 "ignore": ["Customer", "Phone"]}
                """);
        Files.writeString(
                logs.resolve("shop1.csv"),
                "Job;Day;Car;Who;Plate;Remarks;Wheel;Answer;Customer;Phone\n"
                        + "1;2025-03-04;K4;Quentin;QX41 ZTP;Zebedee;1L;ok;Zebedee;555-0199\n"
                        + "2;2025-03-04;K4;Quentin;QX41 ZTP;Zebedee;;ok;Zebedee;555-0199\n");
        Path sheet = Files.writeString(
                dir.resolve("sheet.csv"),
                header
                        + "a,2025-03-04,Quentin,K5,1M8GDM9AXKP042788,QX41 ZTP,low-pressure,ask Zebedee 555-0199,1L,0A1B2D3D,ok,none\n"
                        + "a,2025-03-04,Quentin,K5,1M8GDM9AXKP042788,QX41 ZTP,low-pressure,Zebedee,9X,0A1B2D3E,ok,none\n");
        OtherForms.of(sheet, Layout.CANONICAL).workbook(logs.resolve("people.xlsx"));
        Files.writeString(
                logs.resolve("b.jsonl"),
                "{\"visitId\":\"e\",\"visitedAt\":\"2025-10-01\",\"vehicleId\":\"K3\",\"technicianId\":\"Quentin\","
                        + "\"registration\":\"QX55 ZZZ\",\"notes\":\"Zebedee\"}\n"
                        + "{\"visitId\":\"f\",\"notes\":Zebedee}\n"
                        + "{\"visitId\":\"g\",\"visitedAt\":\"2025-10-02\",\"vehicleId\":\"K3\",\"notes\":\"Zebedee\",\"notes\":\"Quentin\"}\n"
                        + "{\"visitId\":\"i\",\"visitedAt\":\"2025-10-02\",\"vehicleId\":\"K3\",\"wheels\":\"Zebedee\"}\n"
                        + "{\"visitId\":\"j\",\"visitedAt\":\"2025-10-02\",\"vehicleId\":\"K3\",\"customer\":\"Zebedee\"}\n"
                        + "{\"visitId\":\"k\",\"visitedAt\":\"2025-10-02\",\"vehicleId\":\"K3\",\"testDrive\":\"Zebedee\"}\n"
                        + "{\"visitId\":\"l\",\"notes\":Zeb'dee}\n"
                        + "{\"visitId\":\"m\",\"notes\":\"Zebedee\n"
                        + "{\"visitId\":\"h\",\"visitedAt\":\"2025-10-02\",\"vehicleId\":\"K3\",\"vin\":[\"1M8GDM9AXKP042788\"]}\n");
    }

    private int run(String... more) {
        return execute(Stream.concat(
                        Stream.of(more[0], "--data", data.toString()),
                        Stream.of(more).skip(1))
                .toArray(String[]::new));
    }

    /** Everything printed, and everything that any library logs. */
    private int execute(String... args) {
        StringWriter text = new StringWriter();
        PrintWriter screen = new PrintWriter(text);
        try (LoggedLines lines = LoggedLines.listen()) {
            int code = Main.execute(args, screen, screen);
            screen.flush();
            said += text;
            said += lines.text();
            return code;
        }
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
        // Logged for all to see that the lines were listened to.
        assertThat(said).contains("SparkContext");

        for (String asked : List.of("K1", "K4", "K9")) {
            execute("explain", asked, "--out", out.toString());
        }
        execute(
                "explain",
                "K1",
                "--out",
                out.toString(),
                "--html",
                out.resolve("K1.html").toString());
        execute("layout", data.resolve("visit-logs/shop1.csv").toString());
        assertThat(out.resolve("K1.html")).exists();

        nothingPersonal(false);
        // The rows themselves keep what was written: that is the store.
        assertThat(logRows()).contains("QX41 ZTP", "Zebedee", "Quentin");
        assertThat(Files.readString(out.resolve("runs/000001/run.json")))
                .contains("\"vin\" : \"AS_WRITTEN\"", "\"notes\" : \"AS_WRITTEN\"");
    }

    @Test
    void anIngestSaysNothingPersonal() throws IOException {
        run("ingest", "--store", dir.resolve("store").toString());

        assertThat(said).contains("in the store:").doesNotContain(PLANTED.toArray(String[]::new));
    }

    @Test
    void aFileThatIsNoLogIsRefusedWithoutItsText() throws IOException {
        Files.writeString(data.resolve("visit-logs/c.csv"), "9,2025-03-04,Quentin,K1,QX41 ZTP,Zebedee\n");
        assertThat(run("check")).isEqualTo(2);
        Files.delete(data.resolve("visit-logs/c.csv"));
        Files.writeString(data.resolve("visit-logs/c.jsonl"), "{\"driver\":\"Quentin\",\"remark\":\"Zebedee\"}\n");
        assertThat(run("check")).isEqualTo(2);

        assertThat(said)
                .contains("a first line of 6 fields", "an object with the keys driver, remark")
                .doesNotContain(PLANTED.toArray(String[]::new));
    }

    /** Columns that have slipped put a plate where no plate belongs: with a key not even that is kept. */
    @Test
    void withAKeyNothingPersonalIsStored() throws IOException {
        Files.writeString(
                data.resolve("visit-logs/slipped.csv"),
                "visitId,visitedAt,vehicleId,registration,position,read\n"
                        + "s,2025-09-06,K2,,QX41 ZTP,ok\n"
                        + "s,2025-09-06,K2,,1L,Zebedee\n");
        Path key = Files.writeString(dir.resolve("key"), "kJ8x2mQp7Lw3Zr5Tn9Vb1Yc6Hd4Fs0Ga\n");
        String[] keyed = {"--pseudonymise", key.toString(), "--pseudonymise-technicians"};
        String store = dir.resolve("store").toString();
        run("ingest", "--store", store, keyed[0], keyed[1], keyed[2]);
        run("run", "--out", out.toString(), "--store", store, keyed[0], keyed[1], keyed[2]);
        execute("explain", "K1", "--out", out.toString());
        // Half a year of logs is too short for a backtest, which it says once it has read the keyed store.
        assertThat(run("backtest", "--out", out.toString(), "--store", store, keyed[0], keyed[1], keyed[2]))
                .isEqualTo(2);
        assertThat(said).contains("the logs are too short for a backtest");
        assertThat(run("backtest", "--out", out.toString(), "--store", store))
                .as("the store's key is asked for")
                .isEqualTo(2);

        nothingPersonal(true);
        assertThat(logRows()).doesNotContain(PLANTED.toArray(String[]::new)).contains("K1");
        assertThat(Files.readString(out.resolve("runs/000001/csv/quarantine.csv")))
                .contains("AA99 AAA");
        assertThat(Files.readString(out.resolve("runs/000001/run.json")))
                .contains("\"vin\" : \"PSEUDONYM\"", "\"notes\" : \"LEFT_OUT\"", "\"technicianId\" : \"PSEUDONYM\"")
                .doesNotContain("kJ8x2mQp7Lw3");
        assertThat(Files.readString(out.resolve("runs/000001/report.html")))
                .contains("number plates and VINs as keyed hashes");

        assertThat(run("run", "--out", out.toString(), "--store", store)).isEqualTo(2);
        assertThat(said).contains("the store was filled otherwise");
    }

    @Test
    void technicianKeysNeedTheKeyFileBesideThem() {
        assertThat(run("run", "--out", out.toString(), "--pseudonymise-technicians"))
                .isEqualTo(1);
        assertThat(said).contains("--pseudonymise KEYFILE");
    }
}
