package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.SparkTest;
import sensorrounds.ingest.Pseudonyms.Technicians;

/** A store filled with pseudonyms: with one key and no other, and without the key in it. */
class PseudonymStoreTest {
    private static final SparkSession SPARK = SparkTest.spark();
    private static final String KEY = "0123456789abcdef0123456789abcdef";
    private static final String HEAD =
            "visitId,visitedAt,technicianId,vehicleId,vin,registration,notes,position,read\n";

    @TempDir
    private Path dir;

    @BeforeEach
    void someLogs() throws IOException {
        Files.createDirectories(dir.resolve("data/visit-logs"));
        log("a.csv", "V1,2025-03-04,Tess,K1,1M8GDM9AXKP042788,QX41 ZTP,call Mo,1L,ok\n");
        log("b.csv", "V2,2025-03-05,Tess,K2,,QX55 ZZZ,,1L,QX41 ZTP\n");
    }

    private void log(String name, String rows) throws IOException {
        Files.writeString(dir.resolve("data/visit-logs").resolve(name), HEAD + rows);
    }

    private List<LogFile> logs() {
        return Fixtures.find(dir.resolve("data"), dir.resolve("data/visit-logs"));
    }

    private static Pseudonyms key(String key, Technicians technicians) {
        return Pseudonyms.of(key.getBytes(StandardCharsets.US_ASCII), technicians);
    }

    private LogStore open(Pseudonyms pseudonyms) {
        return LogStore.open(dir.resolve("store").toString(), pseudonyms, Fixtures.HADOOP);
    }

    private StoreUpdate.Outcome update(LogStore store) {
        return new StoreUpdate(() -> SPARK, store).run(logs(), StoreUpdate.Scrutiny.CONTENT);
    }

    private void fill(Pseudonyms pseudonyms) {
        try (LogStore store = open(pseudonyms)) {
            update(store);
        }
    }

    private void refused(Pseudonyms pseudonyms, String found, String expected) {
        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> open(pseudonyms))
                .withMessageContaining("the store was filled otherwise")
                .withMessageContaining(found)
                .withMessageContaining(expected)
                .withMessageNotContaining(KEY);
    }

    private List<String> rows(String table) {
        return LogTable.read(SPARK, dir.resolve(table).toString()).collectAsList().stream()
                .map(Row::mkString)
                .toList();
    }

    @Test
    void fromTheStoreComesWhatComesWithoutOne() throws IOException {
        Pseudonyms pseudonyms = key(KEY, Technicians.REPLACED);
        fill(pseudonyms);
        log("c.csv", "V3,2025-03-06,Tess,K1,1M8GDM9AXKP042788,QX41 ZTP,,1L,ok\n");

        try (LogStore store = open(pseudonyms)) {
            StoreUpdate.Outcome done = update(store);
            assertThat(done.unchanged()).isEqualTo(2);
            new IngestJob(SPARK, 1).run(done.logs(), dir.resolve("stored").toString());
        }
        new IngestJob(SPARK, 1)
                .replacing(pseudonyms)
                .run(logs(), dir.resolve("direct").toString());

        assertThat(rows("stored")).hasSize(6).isEqualTo(rows("direct"));
        assertThat(rows("stored").toString()).doesNotContain("Tess", "1M8GDM9AXKP042788", "QX41 ZTP", "QX55 ZZZ", "Mo");
    }

    @Test
    void itTakesOneKeyAndNoOther() {
        fill(key(KEY, Technicians.KEPT));

        refused(key("other" + KEY, Technicians.KEPT), "pseudonyms made with another key", "the key it was filled with");
        refused(null, "pseudonyms for number plates and VINs, technicians as written", "--pseudonymise with the key");
        refused(key(KEY, Technicians.REPLACED), "technicians as written", "--pseudonymise-technicians as then");
    }

    @Test
    void aStoreOfPlainRowsTakesNoKey() {
        fill(null);

        refused(key(KEY, Technicians.KEPT), "number plates and VINs as written", "filled with --pseudonymise");
    }

    /** What another version has read is read again, but not otherwise than before. */
    @Test
    void anotherVersionOfTheProgramIsNoWayAroundTheKey() throws IOException {
        fill(key(KEY, Technicians.KEPT));
        Path state = dir.resolve("store/states/000001.json");
        Files.deleteIfExists(dir.resolve("store/states/.000001.json.crc"));
        Files.writeString(state, Files.readString(state).replace(ReaderVersion.get(), "00000000-1"));

        refused(null, "pseudonyms for number plates and VINs", "--pseudonymise with the key");
    }

    @Test
    void theStoreHoldsAFingerprintAndNotTheKey() throws IOException {
        fill(key(KEY, Technicians.KEPT));

        String state = Files.readString(dir.resolve("store/states/000001.json"));
        assertThat(state)
                .contains("\"pseudonyms\":{\"key\":\"H")
                .contains("\"technicians\":\"KEPT\"")
                .doesNotContain(KEY);
    }

    @Test
    void aStoreWithoutLogsTakesAnyKey() {
        open(null).close();
        open(key(KEY, Technicians.KEPT)).close();
        fill(key("other" + KEY, Technicians.KEPT));
    }
}
