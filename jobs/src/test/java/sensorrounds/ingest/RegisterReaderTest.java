package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Part;

class RegisterReaderTest {
    @TempDir
    private Path folder;

    private RegisterReader registers() {
        return new RegisterReader(Fixtures.HADOOP, folder.toString());
    }

    @Test
    void aRegisterThatIsNotThereIsEmpty() {
        assertThat(registers().fleet()).isEmpty();
        assertThat(registers().parts()).isEmpty();
        assertThat(registers().stock()).isEmpty();
    }

    @Test
    void blankFieldsAreNotKnown() throws IOException {
        Files.writeString(folder.resolve("fleet.csv"), "vehicleId,system,axles\nK1,,\nK2,Indirect,SD+spare\n");
        Files.writeString(folder.resolve("parts.csv"), "partId,price,kind\nP1,4.5,\nP2,1,service-kit\n");

        assertThat(registers().fleet().get("K1").system()).isEqualTo(MonitoringSystem.UNKNOWN);
        assertThat(registers().fleet().get("K1").axles()).isNull();
        assertThat(registers().fleet().get("K2").system()).isEqualTo(MonitoringSystem.INDIRECT);
        assertThat(registers().parts().get(0).packSize()).isEqualTo(1);
        assertThat(registers().parts()).extracting(Part::kind).containsExactly(Part.Kind.SENSOR, Part.Kind.SERVICE_KIT);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "fleet.csv | vehicleId,firstUsed | K1,1.3.2020 | line 2, column firstUsed | 1.3.2020",
                "fleet.csv | vehicleId,system | K1,maybe | line 2, column system | direct, indirect",
                "fleet.csv | vehicleId,axles | K1,4x2 | line 2, column axles | SS",
                "fleet.csv | vehicleId,annualKm | K1,-5 | line 2, column annualKm | -5",
                "fleet.csv | vehicleId,annualKm | K1,NaN | line 2, column annualKm | NaN",
                "fleet.csv | vehicleId,depot | ,North | line 2, column vehicleId | nothing",
                "fleet.csv | vehicleId,home | K1,North | line 1 | home",
                "fleet.csv | depot | North | a column is missing | vehicleId",
                "fleet.csv | vehicleId,depot | K1 | line 2 | 1 fields",
                "parts.csv | partId,price | P1, | column price | nothing",
                "parts.csv | partId,price,packSize | P1,2,0 | column packSize | 1 or more",
                "stock.csv | partId,depot,pieces | P1,North,1.5 | column pieces | whole number",
            })
    void aBadLineIsRefusedWithFileLineAndValue(String file, String header, String line, String where, String named)
            throws IOException {
        Files.writeString(folder.resolve(file), header + "\n" + (line == null ? "" : line) + "\n");

        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> {
                    registers().fleet();
                    registers().parts();
                    registers().stock();
                })
                .withMessageContaining(file)
                .withMessageContaining(where)
                .withMessageContaining(named)
                .withMessageContaining("way out:");
    }

    @Test
    void aKeyThatStandsTwiceIsRefusedWithBothLines() throws IOException {
        Files.writeString(folder.resolve("fleet.csv"), "vehicleId\nK1\nK2\nK1\n");
        Files.writeString(folder.resolve("stock.csv"), "partId,depot,pieces\nP1,North,1\nP1,South,1\nP1,North,2\n");

        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> registers().fleet())
                .withMessageContaining("line 4")
                .withMessageContaining("line 2");
        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> registers().stock())
                .withMessageContaining("P1 at North");
    }
}
