package sensorrounds.assemble;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sensorrounds.fleet.AxleLayout;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;

class RegisterTest {
    private static final Vehicle FULL = new Vehicle(
            "V2",
            "van",
            "M1",
            LocalDate.of(2018, 3, 1),
            "Harbour",
            "left",
            MonitoringSystem.DIRECT,
            AxleLayout.parse("SD+spare").orElseThrow(),
            "S433-M",
            24000.5,
            LocalDate.of(2026, 11, 2),
            LocalDate.of(1969, 12, 31));

    private static SortedMap<String, Vehicle> vehicles() {
        SortedMap<String, Vehicle> vehicles = new TreeMap<>();
        vehicles.put("V1", Vehicle.unregistered("V1"));
        vehicles.put("V2", FULL);
        vehicles.put("V3", Vehicle.unregistered("V3"));
        return vehicles;
    }

    @Test
    void arrivesAsItWasSentWithWhatIsNotKnown() throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(Register.of(vehicles()));
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            Register arrived = (Register) in.readObject();
            assertThat((Map<String, Vehicle>) arrived).isEqualTo(vehicles());
            assertThat(arrived.get("V2")).isEqualTo(FULL);
            assertThat(arrived.get("V9")).isNull();
        }
    }

    @Test
    void refusesAnOrderInWhichItCouldNotSearch() {
        SortedMap<String, Vehicle> backwards = new TreeMap<>(Comparator.reverseOrder());
        assertThatIllegalArgumentException().isThrownBy(() -> Register.of(backwards));
    }
}
