package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sensor that goes from one vehicle to another, in a whole run; the rules alone are tested in the model. */
class MovesRunTest {
    @Test
    void aSensorThatMovedIsOneLifeInTwoPartsAndSaysSo(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("fleet.csv"), """
                vehicleId,vehicleClass,modelGroup,firstUsed,depot,drivingSide,system,axles,originalPart,annualKm,nextPlannedVisit,leftFleet
                VAN-1,van,N-1,2018-01-01,North,left,direct,SS,S1,20000,,
                VAN-2,van,N-1,2018-01-01,North,left,direct,SS,S1,20000,,
                """);
        Files.createDirectory(folder.resolve("visit-logs"));
        Files.writeString(folder.resolve("visit-logs/log.csv"), """
                visitId,visitedAt,vehicleId,position,read,sensorId
                1,2020-01-01,VAN-1,1L,ok,0A1B2C01
                1,2020-01-01,VAN-1,1R,ok,0A1B2C02
                2,2021-01-01,VAN-1,1L,no answer,
                2,2021-01-01,VAN-1,1R,ok,0A1B2C02
                3,2021-06-01,VAN-1,1L,no answer,
                3,2021-06-01,VAN-1,1R,ok,0A1B2C02
                4,2020-03-01,VAN-2,1R,ok,0A1B2C03
                5,2022-01-01,VAN-2,1L,ok,0A1B2C01
                5,2022-01-01,VAN-2,1R,ok,0A1B2C03
                6,2023-01-01,VAN-2,1L,ok,0A1B2C01
                6,2023-01-01,VAN-2,1R,ok,0A1B2C03
                """);
        RunOptions options = new RunOptions(
                folder.toString(), null, null, folder.resolve("out").toString(), null);

        Path csv =
                Path.of(new Pipeline(options, Progress.SILENT).run().folder()).resolve("csv");

        List<Map<String, String>> parts = SampleRun.csv(csv.resolve("sensor-lives.csv")).stream()
                .filter(l -> l.get("sensor_id").equals("0A1B2C01"))
                .toList();
        assertThat(parts).hasSize(2);
        assertThat(parts.get(0))
                .containsEntry("vehicle_id", "VAN-1")
                .containsEntry("life_end", "MOVED")
                .containsEntry("ended_on", "2022-01-01")
                .containsEntry("continues", "");
        assertThat(parts.get(1))
                .containsEntry("vehicle_id", "VAN-2")
                .containsEntry("basis", "EARLIER_VEHICLE")
                .containsEntry("fitted_on", "2018-01-01")
                .containsEntry("continues", "VAN-1/0A1B2C01/1")
                .containsEntry("age_at_entry", "1461")
                .containsEntry("age_last_known_good", "1826");
        List<Map<String, String>> findings = SampleRun.csv(csv.resolve("findings.csv"));
        assertThat(findings)
                .extracting(f -> f.get("kind"))
                .containsOnly("MOVED")
                .hasSize(2);
        assertThat(findings).extracting(f -> f.get("sources")).allMatch(s -> s.startsWith("visit-logs/log.csv:"));
        assertThat(Files.readString(csv.resolveSibling("report.html")))
                .contains("Sensor moved to another wheel or vehicle (2)", "answers on vehicle VAN-2 since 2022-01-01");
    }
}
