package sensorrounds.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sensorrounds.simulate.SimulationSettings.Output;
import sensorrounds.simulate.SimulationSettings.Stories;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Side;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

class FleetSimulatorTest {
    private static final SimulationSettings SAMPLE = SimulationSettings.sample();
    private static final List<SimulatedVehicle> FLEET = new FleetSimulator(SAMPLE).all();

    @Test
    void aVehicleIsTheSameInASmallFleetAndALargeOneAndInAnyOrder() {
        FleetSimulator small = new FleetSimulator(SAMPLE.withVehicles(135));
        FleetSimulator large = new FleetSimulator(SAMPLE.withVehicles(9000));
        large.vehicle(8999);
        for (int n : new int[] {134, 0, 60, 23}) {
            assertThat(lines(large.vehicle(n))).isEqualTo(lines(small.vehicle(n)));
        }
        assertThat(lines(small.vehicle(1))).isNotEqualTo(lines(small.vehicle(2)));
    }

    @Test
    void anotherSeedGivesAnotherFleet() {
        FleetSimulator other = new FleetSimulator(SAMPLE.withSeed(1));
        assertThat(lines(other.vehicle(3))).isNotEqualTo(lines(FLEET.get(3)));
    }

    @Test
    void theSampleFleetHasTheSizeItIsMeantToHave() {
        long sensors = FLEET.stream()
                .flatMap(v -> v.sensors().stream())
                .filter(f -> f.sensor().removal() == SimulatedSensor.Removal.IN_SERVICE)
                .count();
        long visits = FLEET.stream().mapToLong(v -> v.visits().size()).sum();
        int start = SAMPLE.startDay();
        long failures = FLEET.stream()
                .flatMap(v -> v.sensors().stream())
                .map(SimulatedVehicle.FittedSensor::sensor)
                .filter(s -> s.cause() != null && s.removedDay() >= start && s.removedDay() <= SAMPLE.endDay())
                .count();
        assertThat(sensors).isBetween(600L, 800L);
        assertThat(visits).isBetween(1200L, 1600L);
        assertThat(failures).isBetween(90L, 160L);
    }

    @Test
    void visitsStayInsideTheLogsAndNeverTwoOnOneDay() {
        for (SimulatedVehicle v : FLEET) {
            LocalDate before = SAMPLE.startDate().minusDays(1);
            for (SimulatedVisit visit : v.visits()) {
                assertThat(visit.header().day()).isAfter(before).isBeforeOrEqualTo(SAMPLE.endDate());
                before = visit.header().day();
            }
        }
    }

    @Test
    void originalSensorsAreAsOldAsTheirVehicleAndSomeAreOlderThanTheLogs() {
        long olderThanLogs = FLEET.stream()
                .filter(v -> v.register().firstUsed().isBefore(SAMPLE.startDate()))
                .count();
        assertThat(olderThanLogs).isBetween(110L, 145L);
        for (SimulatedVehicle v : FLEET) {
            v.sensors().stream()
                    .map(SimulatedVehicle.FittedSensor::sensor)
                    .filter(s -> s.origin == SimulatedSensor.Origin.ORIGINAL)
                    .forEach(s -> assertThat(LocalDate.ofEpochDay(s.bornDay))
                            .isEqualTo(v.register().firstUsed()));
        }
    }

    @Test
    void namesAreUnique() {
        Set<String> sensors = new HashSet<>();
        Set<String> vehicles = new HashSet<>();
        for (int i = 0; i < 20_000; i++) {
            assertThat(vehicles.add(VehicleIds.vehicle(i))).isTrue();
            for (int s = 0; s < 10; s++) {
                assertThat(sensors.add(VehicleIds.sensor(i, s))).isTrue();
            }
        }
    }

    @Test
    void vehicleNumbersHaveTheCheckDigitOfTheRule() {
        // 49 CFR 565.15 (c): values of letters by Table III, weights by Table IV, remainder by 11, 10 is X.
        String letters = "ABCDEFGHJKLMNPRSTUVWXYZ";
        String values = "12345678123457923456789";
        int[] weights = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};
        for (int i = 0; i < 200; i++) {
            String vin = VehicleIds.vin(i, 2015 + i % 10);
            assertThat(vin).hasSize(17).doesNotContain("I", "O", "Q").startsWith("0");
            int sum = 0;
            for (int p = 0; p < 17; p++) {
                int at = letters.indexOf(vin.charAt(p));
                sum += weights[p] * ((at < 0 ? vin.charAt(p) : values.charAt(at)) - '0');
            }
            assertThat(vin.charAt(8)).isEqualTo(sum % 11 == 10 ? 'X' : (char) ('0' + sum % 11));
        }
    }

    @Test
    void airFollowsTheGasLawOnAbsolutePressure() {
        // Worked by hand: (p + 101.325) * 10 / 293.15 for a fall of 10 °C from 20 °C gives 11.6, 18.8 and 30.7 kPa.
        double[][] cases = {{240, 11.64}, {450, 18.81}, {800, 30.75}};
        for (double[] c : cases) {
            Wheel w = new Wheel(new WheelPosition(1, Side.LEFT, Mount.SINGLE), 0, c[0], 0, 0);
            w.inflate(100, c[0], 20);
            assertThat(w.kpa(100, 20) - w.kpa(100, 10)).isCloseTo(c[1], within(0.01));
            assertThat(w.kpa(500, 20)).isCloseTo(c[0], within(1e-9));
        }
    }

    @Test
    void unitsFollowTheirDefinitions() {
        // NIST SP 811: 1 psi = 6.894757 kPa, so 35 psi = 241.3165 kPa; 1 mile = 1.609344 km; 68 °F = 20 °C.
        assertThat(Units.PSI_MILES_F.pressure(241.3165)).isEqualTo("35");
        assertThat(Units.PSI_MILES_F.distance(1609.344)).isEqualTo("1000");
        assertThat(Units.PSI_MILES_F.temperature(20)).isEqualTo("68");
        assertThat(Units.BAR_KM_C.pressure(237.4)).isEqualTo("2.37");
        assertThat(Decimals.text(-0.05, 2)).isEqualTo("-0.05");
        assertThat(Decimals.text(12.30, 2)).isEqualTo("12.3");
    }

    @Test
    void aSilentWheelSaysNothingButItsTries() {
        FLEET.stream()
                .flatMap(v -> v.visits().stream())
                .flatMap(v -> v.wheels().stream())
                .forEach(w -> {
                    if (w.read() == ReadOutcome.OK) {
                        assertThat(w.pressureKpa()).isNotNull();
                    } else {
                        assertThat(w.pressureKpa()).isNull();
                        assertThat(w.battery()).isNull();
                    }
                    boolean tried = w.read() == ReadOutcome.OK || w.read() == ReadOutcome.NO_ANSWER;
                    assertThat(w.wakeAttempts() != null).isEqualTo(tried);
                });
    }

    @Test
    void vehiclesWithoutWheelSensorsNeverAnswerAndNeverWarn() {
        List<SimulatedVisit> indirect = FLEET.stream()
                .filter(v -> v.register().modelGroup().equals("N-4"))
                .flatMap(v -> v.visits().stream())
                .toList();
        assertThat(indirect).isNotEmpty();
        for (SimulatedVisit v : indirect) {
            assertThat(v.header().warning()).isIn(Warning.NONE, null);
            assertThat(v.wheels()).allMatch(w -> w.read() == ReadOutcome.NOT_PRESENT);
        }
    }

    @Test
    void settingsThatCannotWorkAreRefusedWithTheWayOut() {
        assertThatThrownBy(() -> SAMPLE.withVehicles(20))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("five stories need 132 vehicles")
                .hasMessageContaining("leave them out or give more");
        assertThat(SAMPLE.withStories(Stories.NONE).withVehicles(20).vehicles()).isEqualTo(20);
        assertThatThrownBy(() -> SimulationSettings.large(1, 0, Output.LARGE_CSV))
                .hasMessageContaining("0 vehicles")
                .hasMessageContaining("1 to 8999993");
        assertThatThrownBy(() -> new LifeLaw(Double.NaN, 3)).hasMessageContaining("both must be above 0");
    }

    private static String lines(SimulatedVehicle v) {
        StringBuilder s = new StringBuilder(v.register().toString());
        JsonLines json = new JsonLines(Units.KPA_KM_C, "");
        v.visits().forEach(x -> json.append(s, x, Slips.NONE));
        Truth.appendSensors(s, v);
        return s.toString();
    }
}
