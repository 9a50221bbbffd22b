package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Wheel.heard;
import static sensorrounds.history.Wheel.silent;
import static sensorrounds.history.Wheel.untried;
import static sensorrounds.visit.Warning.LOW_PRESSURE;

import org.junit.jupiter.api.Test;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** One visit boiled down: reads, work, cold. */
class VisitSummaryTest {
    private final Logbook log = new Logbook();

    private VisitSummary last() {
        VehicleHistory history = log.history();
        return history.visits().get(history.visits().size() - 1);
    }

    @Test
    void theSlowestWheelStandsOutAloneOrIsNone() {
        log.on("2020-01-01")
                .wheels(
                        heard("1L", "A1").attempts(1),
                        heard("1R", "A2").attempts(4),
                        heard("2L", "A3").attempts(3));
        assertThat(last().slowest()).isEqualTo(WheelPosition.parse("1R").orElseThrow());
        assertThat(last().slowestAttempts()).isEqualTo(4);

        log.on("2020-02-01")
                .wheels(heard("1L", "A1").attempts(4), heard("1R", "A2").attempts(4));
        assertThat(last().slowest()).isNull();

        log.on("2020-03-01").wheels(heard("1L", "A1").attempts(1), silent("1R").attempts(9));
        assertThat(last().slowest())
                .as("a silent wheel needed no number of tries")
                .isNull();
    }

    @Test
    void everySensorAnsweredOnlyWhenNoneWasLeftOutOrSilent() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        assertThat(last().everySensorAnswered()).isTrue();

        log.on("2020-01-02").heard("A1", "A2", "A3").wheels(untried("2R"));
        assertThat(last().everySensorAnswered()).as("one not tried").isFalse();

        log.on("2020-01-03").heard("A1", "A2", "A3");
        assertThat(last().everySensorAnswered())
                .as("one of the register's not named")
                .isFalse();

        log.axles("SS+spare").on("2020-01-04").heard("A1", "A2", "A3", "A4");
        assertThat(last().everySensorAnswered())
                .as("the spare has a sensor too")
                .isFalse();
        log.axles("SS");

        log.on("2020-02-01").wheels(heard("1L", "A1"), silent("1R"));
        assertThat(last().everySensorAnswered()).isFalse();
        assertThat(last().silent()).extracting(WheelPosition::code).containsExactly("1R");

        log.on("2020-03-01").wheels(untried("1L"));
        assertThat(last().everySensorAnswered()).isFalse();
    }

    @Test
    void theStrongestRepairNamesTheVisit() {
        log.on("2020-01-01")
                .wheels(
                        silent("1L").replaced(WorkReason.NO_ANSWER, "B1"),
                        silent("1R").replaced(WorkReason.NO_ANSWER, "B2"),
                        silent("2L").replaced(WorkReason.NO_ANSWER, "B3"),
                        silent("2R").replaced(WorkReason.NO_ANSWER, "B4"));
        assertThat(last().repair()).isEqualTo(Repair.SET_REPLACED);

        log.on("2020-02-01")
                .relearned(RelearnResult.DONE)
                .wheels(heard("1L", "B1").replaced(WorkReason.PREVENTIVE, "C1"));
        assertThat(last().repair()).isEqualTo(Repair.SENSOR_REPLACED);
        assertThat(last().relearned()).isTrue();

        log.on("2020-03-01")
                .relearned(RelearnResult.DONE)
                .wheels(heard("1L", "C1").work(WheelWork.KIT_RENEWED));
        assertThat(last().repair()).isEqualTo(Repair.OTHER_WHEEL_WORK);

        log.on("2020-04-01").relearned(RelearnResult.ATTEMPTED).codesCleared();
        assertThat(last().repair()).isEqualTo(Repair.RELEARN);

        log.on("2020-05-01").relearned(RelearnResult.FAILED).codesCleared();
        assertThat(last().repair()).isEqualTo(Repair.CODES_CLEARED);

        log.on("2020-06-01").pressuresStored().wheels(heard("1L", "C1").work(WheelWork.NONE));
        assertThat(last().repair()).isEqualTo(Repair.PRESSURES_CORRECTED);

        log.on("2020-07-01").wheels(heard("1L", "C1"));
        assertThat(last().repair()).isEqualTo(Repair.NONE);
    }

    private Logbook.Entry cold(double ambient, double kpa) {
        return log.on("2020-01-01")
                .warning(LOW_PRESSURE)
                .ambient(ambient)
                .placard(240)
                .wheels(heard("1L", "A1").gauge(kpa), heard("1R", "A2").gauge(225));
    }

    /**
     * Limit 192 kPa. At -10 °C 195 kPa is 228 kPa at 20 °C by the gas law: enough air. Common practice, no source: a lamp
     * on cold mornings is told from a leak by the pressure at that temperature.
     */
    @Test
    void theColdExplainsAWarningWhenTheAirIsAllThere() {
        cold(-10, 195);

        assertThat(last().pressuresExplainedByCold()).isTrue();
        assertThat(log.history().episodes().get(0).explainedByCold()).isTrue();
    }

    /** 150 kPa at -10 °C is 178 kPa at 20 °C: air is missing in any weather. */
    @Test
    void theColdDoesNotExplainALeak() {
        cold(-10, 150);

        assertThat(last().pressuresExplainedByCold()).isFalse();
    }

    @Test
    void theColdDoesNotExplainAWarningWithFullTyresOrInSummer() {
        cold(-10, 220);
        assertThat(last().pressuresExplainedByCold()).isFalse();

        cold(28, 201);
        assertThat(last().pressuresExplainedByCold()).isFalse();
    }

    @Test
    void theGasLawGoesByAbsolutePressure() {
        cold(-10, 166);

        assertThat(last().pressuresExplainedByCold())
                .as("166 kPa is 196.9 at 20 °C; the gauge figure alone would give 184.9, under the limit of 192")
                .isTrue();
    }

    /** The tyre's own temperature shows that 195 kPa was read warm, and 20 degrees colder it is short of air. */
    @Test
    void aWarmTyreIsReferredByItsOwnTemperature() {
        log.on("2020-01-01")
                .warning(LOW_PRESSURE)
                .ambient(-10)
                .placard(240)
                .wheels(heard("1L", "A1").sensorKpa(195).celsius(30).hot());

        assertThat(last().pressuresExplainedByCold()).isFalse();
    }

    @Test
    void itCannotBeToldWithoutPressurePlacardOrTemperature() {
        log.on("2020-01-01").warning(LOW_PRESSURE).ambient(-10).placard(240).wheels(heard("1L", "A1"));
        assertThat(last().pressuresExplainedByCold()).isNull();

        log.on("2020-01-02")
                .warning(LOW_PRESSURE)
                .ambient(-10)
                .wheels(heard("1L", "A1").gauge(195));
        assertThat(last().pressuresExplainedByCold()).isNull();

        log.on("2020-01-03")
                .warning(LOW_PRESSURE)
                .placard(240)
                .wheels(heard("1L", "A1").gauge(195));
        assertThat(last().pressuresExplainedByCold()).isNull();

        log.on("2020-01-04")
                .warning(LOW_PRESSURE)
                .ambient(-10)
                .placard(240)
                .wheels(heard("1L", "A1").gauge(195).hot());
        assertThat(last().pressuresExplainedByCold()).isNull();

        log.on("2020-01-05")
                .warning(Warning.SYSTEM_FAULT)
                .ambient(-10)
                .placard(240)
                .wheels(heard("1L", "A1").gauge(195));
        assertThat(last().pressuresExplainedByCold()).isNull();
    }
}
