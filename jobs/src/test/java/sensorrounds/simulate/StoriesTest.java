package sensorrounds.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Side;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** The five vehicles with a known story have the features that define it, in their data alone. */
class StoriesTest {
    private static final WheelPosition REAR_RIGHT = new WheelPosition(2, Side.RIGHT, Mount.SINGLE);
    private static final SimulationSettings SAMPLE = SimulationSettings.sample();
    private static final FleetSimulator FLEET = new FleetSimulator(SAMPLE);

    @Test
    void intermittentWarningComesAndGoesWhileEveryWheelAnswers() {
        List<SimulatedVisit> visits = visits(Story.INTERMITTENT);
        List<SimulatedVisit> warned = only(visits, v -> v.header().warning() == Warning.SYSTEM_FAULT);
        assertThat(warned).hasSizeBetween(4, 5);
        long span = warned.get(warned.size() - 1).header().day().toEpochDay()
                - warned.get(0).header().day().toEpochDay();
        assertThat(span).isBetween(480L, 600L);
        assertThat(only(visits, v -> between(v, warned) && v.header().warning() == Warning.NONE))
                .isNotEmpty();
        for (SimulatedVisit v : warned) {
            assertThat(v.header().faultCodes()).singleElement().satisfies(c -> {
                assertThat(c.position()).isNull();
                assertThat(c.code()).matches("C1[0-9A-F]{3}");
            });
            assertThat(v.header().codesCleared()).isTrue();
            assertThat(v.header().relearn()).isNotNull();
            assertThat(at(v, REAR_RIGHT).wakeAttempts()).isBetween(3, 4);
        }
        assertThat(visits).extracting(v -> v.header().readerId()).containsOnly("RD-1101");
        for (SimulatedVisit v : visits) {
            assertThat(v.wheels()).allSatisfy(w -> {
                assertThat(w.read()).isEqualTo(ReadOutcome.OK);
                assertThat(w.battery()).isEqualTo(BatteryReport.OK);
                assertThat(w.pressureKpa())
                        .isGreaterThan(
                                0.85 * v.header().placardKpa().get(w.position().axle()));
                assertThat(w.wakeAttempts() == 1 || w.position().equals(REAR_RIGHT))
                        .isTrue();
            });
        }
        // Shorter than the 10 minutes of UN R141 and the 20 of 49 CFR 571.138: nothing is proven.
        assertThat(warned.get(warned.size() - 1).header().testDrive().minutes()).isLessThan(10);
        assertThat(warned.get(0).header().testDrive().minutes()).isGreaterThanOrEqualTo(20);
    }

    @Test
    void onePlaceSilencesThreeSuccessiveNewSensorsBeforeTheyAreAYearOld() {
        List<SimulatedVisit> visits = visits(Story.SILENT_PLACE);
        List<SimulatedVisit> replaced = only(visits, v -> at(v, REAR_RIGHT).work() == WheelWork.SENSOR_REPLACED);
        assertThat(replaced).hasSizeGreaterThanOrEqualTo(4);
        for (int i = 1; i < replaced.size(); i++) {
            WheelReading w = at(replaced.get(i), REAR_RIGHT);
            assertThat(w.read()).isEqualTo(ReadOutcome.NO_ANSWER);
            assertThat(w.workReason()).isEqualTo(WorkReason.NO_ANSWER);
            assertThat(w.sensorId())
                    .isEqualTo(at(replaced.get(i - 1), REAR_RIGHT).newSensorId());
            assertThat(replaced.get(i).header().day())
                    .isBefore(replaced.get(i - 1).header().day().plusYears(1));
        }
        assertThat(visits)
                .allSatisfy(v -> assertThat(v.wheels())
                        .filteredOn(w -> !w.position().equals(REAR_RIGHT))
                        .allMatch(w -> w.read() == ReadOutcome.OK && w.work() == WheelWork.NONE));
        assertThat(FLEET.vehicle(Story.SILENT_PLACE.vehicle).sensors()).noneMatch(StoriesTest::failedInTheLogs);
    }

    @Test
    void twoOfTheOriginalSetDieWithinMonthsAndAThirdIsLow() {
        List<SimulatedVisit> visits = visits(Story.AGEING_SET);
        List<SimulatedVisit> replaced =
                only(visits, v -> v.wheels().stream().anyMatch(w -> w.work() == WheelWork.SENSOR_REPLACED));
        assertThat(replaced).hasSize(2);
        assertThat(replaced.get(1).header().day())
                .isBefore(replaced.get(0).header().day().plusMonths(6));
        List<WheelReading> last = visits.get(visits.size() - 1).wheels();
        assertThat(last)
                .filteredOn(w -> w.battery().isLow(new BatteryReport.LowLimits(20, 2.5, 6)))
                .extracting(w -> w.position().code())
                .containsExactly("1L");
        // The vehicle is first seen early enough for its sensors to count as original ones.
        SimulatedVehicle v = FLEET.vehicle(Story.AGEING_SET.vehicle);
        assertThat(visits.get(0).header().day())
                .isBefore(v.register().firstUsed().plusYears(4));
        assertThat(v.sensors().stream().filter(StoriesTest::failedInTheLogs)).hasSize(2);
    }

    @Test
    void coldMorningsWarnOfPressuresThatAreRightAtTwentyDegrees() {
        List<SimulatedVisit> warned =
                only(visits(Story.COLD_MORNINGS), v -> v.header().warning() != Warning.NONE);
        assertThat(warned).hasSize(4).allMatch(v -> v.header().warning() == Warning.LOW_PRESSURE);
        assertThat(warned.stream()
                        .map(v -> v.header().day().getYear() * 12
                                + v.header().day().getMonthValue()))
                .allMatch(m -> m % 12 <= 2);
        for (SimulatedVisit v : warned) {
            assertThat(v.header().ambientCelsius()).isLessThanOrEqualTo(-8);
            boolean someBelow = false;
            for (WheelReading w : v.wheels()) {
                double placard = v.header().placardKpa().get(w.position().axle());
                double kelvin = w.temperatureCelsius() + 273.15;
                double at20 = (w.pressureKpa() + 101.325) * 293.15 / kelvin - 101.325;
                someBelow |= w.pressureKpa() < 0.8 * placard;
                assertThat(at20).isGreaterThan(0.9 * placard);
            }
            assertThat(someBelow).isTrue();
        }
        assertThat(FLEET.vehicle(Story.COLD_MORNINGS.vehicle).sensors())
                .allMatch(f -> !failedInTheLogs(f) && !f.sensor().weakOn(SAMPLE.endDay()));
    }

    @Test
    void theSlowReaderIsSlowOnASoundVehicleAndElsewhere() {
        List<SimulatedVisit> visits = visits(Story.SLOW_READER);
        assertThat(visits).extracting(v -> v.header().readerId()).containsOnly(InventedOperator.SLOW_READER);
        assertThat(only(visits, v -> v.header().warning() != Warning.NONE)).hasSize(2);
        assertThat(meanTries(visits)).isGreaterThan(1.7);
        List<SimulatedVisit> all = FLEET.all().stream()
                .filter(v -> v.story() == null)
                .flatMap(v -> v.visits().stream())
                .toList();
        assertThat(meanTries(only(all, v -> slow(v)))).isGreaterThan(2);
        assertThat(meanTries(only(all, v -> !slow(v)))).isLessThan(1.4);
        assertThat(only(all, StoriesTest::slow)).hasSizeGreaterThan(60);
    }

    private static boolean failedInTheLogs(SimulatedVehicle.FittedSensor f) {
        return f.sensor().cause() != null && f.sensor().failedBy(SAMPLE.endDay());
    }

    private static boolean slow(SimulatedVisit v) {
        return v.header().readerId().equals(InventedOperator.SLOW_READER);
    }

    private static double meanTries(List<SimulatedVisit> visits) {
        return visits.stream()
                .flatMap(v -> v.wheels().stream())
                .filter(w -> w.read() == ReadOutcome.OK)
                .mapToInt(WheelReading::wakeAttempts)
                .average()
                .orElseThrow();
    }

    private static boolean between(SimulatedVisit v, List<SimulatedVisit> warned) {
        return v.header().day().isAfter(warned.get(0).header().day())
                && v.header()
                        .day()
                        .isBefore(warned.get(warned.size() - 1).header().day());
    }

    private static List<SimulatedVisit> visits(Story story) {
        return FLEET.vehicle(story.vehicle).visits();
    }

    private static List<SimulatedVisit> only(List<SimulatedVisit> visits, Predicate<SimulatedVisit> what) {
        return visits.stream().filter(what).toList();
    }

    private static WheelReading at(SimulatedVisit v, WheelPosition place) {
        return v.wheels().stream()
                .filter(w -> w.position().equals(place))
                .findFirst()
                .orElseThrow();
    }
}
