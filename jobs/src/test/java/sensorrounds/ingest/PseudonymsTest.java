package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sensorrounds.ingest.Pseudonyms.Technicians;
import sensorrounds.intake.Field;
import sensorrounds.intake.Note;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.VisitHeader;

class PseudonymsTest {
    private static final byte[] KEY = "0123456789abcdef0123456789abcdef".getBytes(StandardCharsets.US_ASCII);

    @TempDir
    private Path folder;

    private static List<LogRow> read(Path file, Pseudonyms pseudonyms) {
        List<LogRow> rows = new ArrayList<>();
        for (LogFile log : Fixtures.find(file.getParent(), file)) {
            LogReader.open(LogSlice.whole(log), Fixtures.HADOOP, pseudonyms).forEachRemaining(rows::add);
        }
        return rows;
    }

    /** The first eight bytes that the JDK's HMAC-SHA-256 gives, whose own test vectors are RFC 4231. */
    @Test
    void aPseudonymIsTheBeginningOfTheKeyedHash() throws Exception {
        javax.crypto.Mac mac = javax.crypto.Mac.getInstance("HmacSHA256");
        mac.init(new javax.crypto.spec.SecretKeySpec(KEY, "HmacSHA256"));
        String expected = "H"
                + HexFormat.of()
                        .withUpperCase()
                        .formatHex(mac.doFinal("registration:SR17AB".getBytes(StandardCharsets.UTF_8)), 0, 8);

        assertThat(Pseudonyms.of(KEY, Technicians.KEPT).of(Field.REGISTRATION, "sr 17-ab"))
                .isEqualTo(expected)
                .hasSize(17);
    }

    @Test
    void oneKeyGivesOnePseudonymAndAnotherKeyAnother() {
        byte[] other = KEY.clone();
        other[0]++;
        Pseudonyms pseudonyms = Pseudonyms.of(KEY, Technicians.KEPT);

        assertThat(pseudonyms.of(Field.VIN, "1M8GDM9AXKP042788"))
                .isEqualTo(Pseudonyms.of(KEY, Technicians.REPLACED).of(Field.VIN, "1m8gdm9axkp042788"))
                .isNotEqualTo(Pseudonyms.of(other, Technicians.KEPT).of(Field.VIN, "1M8GDM9AXKP042788"))
                .isNotEqualTo(pseudonyms.of(Field.REGISTRATION, "1M8GDM9AXKP042788"));
        assertThat(pseudonyms.of(Field.VIN, null)).isNull();
    }

    @Test
    void nothingPersonalIsLeftInAnyRow() throws IOException {
        Path file = Files.writeString(
                folder.resolve("a.csv"),
                "visitId,visitedAt,technicianId,vehicleId,vin,registration,notes,position,read\n"
                        + "V1,2025-03-04,Tess,K,1M8GDM9AXKP042789,SR 17 AB,call Mo on 555-0100,1L,ok\n"
                        + "V1,2025-03-04,Tess,K,1M8GDM9AXKP042789,SR 17 AB,call Mo on 555-0100,9X,ok\n");
        List<LogRow> rows = read(file, Pseudonyms.of(KEY, Technicians.REPLACED));

        VisitHeader visit = Fixtures.accepted(rows).get(0).visit();
        assertThat(rows.toString()).doesNotContain("Tess", "1M8GDM9AXKP042789", "SR 17 AB", "Mo on");
        assertThat(visit.registration()).startsWith("H");
        assertThat(visit.technicianId()).startsWith("H");
        assertThat(Fixtures.rejected(rows).get(0).rawText()).isNull();
        // The check digit was looked at before the VIN was replaced.
        assertThat(rows.get(rows.size() - 1).file().notes()).containsEntry(Note.VIN_CHECK_DIGIT, 1L);
        assertThat(Fixtures.accepted(read(file, Pseudonyms.of(KEY, Technicians.KEPT)))
                        .get(0)
                        .visit()
                        .technicianId())
                .isEqualTo("Tess");
    }

    @Test
    void aShortKeyIsRefusedWithTheWayOut() throws IOException {
        Path key = Files.writeString(folder.resolve("key"), "secret\n");

        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> Pseudonyms.ofKeyFile(key.toString(), Technicians.KEPT, Fixtures.HADOOP))
                .withMessageContaining("a key of 6 bytes")
                .withMessageContaining("/dev/urandom");
    }
}
