package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Logbook.age;
import static sensorrounds.history.Logbook.life;
import static sensorrounds.history.Wheel.heard;
import static sensorrounds.history.Wheel.silent;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.WorkReason;

/** On what a sensor's age rests, and what bounds it. The vehicle is first used on 1 January 2018. */
class OriginTest {
    private final Logbook log = new Logbook();

    @Test
    void fittedOnRecord() {
        log.on("2020-01-01").heard("A1", "A2", "A3").wheels(heard("2R", "A4").replaced(WorkReason.PREVENTIVE, "B4"));
        log.on("2021-01-01").heard("A1", "A2", "A3", "B4");

        SensorLife life = life(log.history(), "B4");

        assertThat(life.basis()).isEqualTo(OriginBasis.RECORDED_FITTING);
        assertThat(life.fittedOn()).isEqualTo("2020-01-01");
        assertThat(life.fittedNotBefore()).isEqualTo("2020-01-01");
        assertThat(life.lifetime()).isEqualTo(Lifetime.censored(0, 366));
    }

    @Test
    void vehiclesFirstUseForOriginalSensors() {
        log.on("2020-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2021-01-01").heard("A1", "A2", "A3", "A4");

        SensorLife life = life(log.history(), "A1");

        assertThat(life.basis()).isEqualTo(OriginBasis.VEHICLE_FIRST_USE);
        assertThat(life.fittedOn()).isEqualTo("2018-01-01");
        assertThat(life.lifetime()).isEqualTo(Lifetime.censored(730, 1096));
    }

    /**
     * Common practice, no source: a sensor is changed with the bead off. A wheel that in 2024 still has the tyre of 2017
     * has the sensor of 2017, though nobody saw the vehicle before.
     */
    @Test
    void boundedByTyreDate() {
        log.on("2024-01-01")
                .wheels(heard("1L", "A1").tyre("2017-10-02"), heard("1R", "A2").tyre("2022-05-02"));
        log.on("2025-01-01").wheels(heard("1L", "A1"), heard("1R", "A2"));

        SensorLife first = life(log.history(), "A1");
        SensorLife renewed = life(log.history(), "A2");

        assertThat(first.basis()).isEqualTo(OriginBasis.TYRE_DATE);
        assertThat(first.fittedOn())
                .as("age runs from the first use, as for every original")
                .isEqualTo("2018-01-01");
        assertThat(first.fittedNotBefore()).isEqualTo("2017-10-02");
        assertThat(first.part()).isEqualTo("P-ORIGINAL");
        assertThat(first.lifetime()).isEqualTo(Lifetime.censored(age("2024-01-01"), age("2025-01-01")));
        assertThat(renewed.basis())
                .as("sensors outlive tyres: a newer tyre bounds nothing")
                .isEqualTo(OriginBasis.UNKNOWN);
        assertThat(renewed.fittedNotBefore()).isNull();
    }

    @ParameterizedTest
    @CsvSource({"2017-01-02, TYRE_DATE", "2016-12-26, UNKNOWN", "2018-01-01, TYRE_DATE", "2018-01-08, UNKNOWN"})
    void theFirstTyreIsMadeInTheYearBeforeFirstUse(String week, OriginBasis basis) {
        log.on("2024-01-01").wheels(heard("1L", "A1").tyre(week));

        assertThat(life(log.history(), "A1").basis()).isEqualTo(basis);
    }

    @Test
    void anotherPartThanTheOriginalIsNoOriginalWhateverTheTyre() {
        log.on("2024-01-01").wheels(heard("1L", "A1").tyre("2017-10-02").part("P-LATER"));

        assertThat(life(log.history(), "A1").basis()).isEqualTo(OriginBasis.UNKNOWN);
    }

    @Test
    void aSecondWheelSetOnItsFirstTyresIsAsOldAsTheVehicle() {
        log.on("2018-04-01").set("summer").heard("A1");
        log.on("2020-11-01")
                .set("winter")
                .wheels(heard("1L", "B1").tyre("2017-08-07"), heard("1R", "B2").tyre("2020-08-03"));

        assertThat(life(log.history(), "B1").basis()).isEqualTo(OriginBasis.TYRE_DATE);
        assertThat(life(log.history(), "B2").basis()).isEqualTo(OriginBasis.UNKNOWN);
    }

    /** What is read only later is not known at the first meeting, from which the life is under observation. */
    @Test
    void aTyreReadLaterTellsNothingOfTheTimeBefore() {
        log.on("2024-01-01").wheels(heard("1L", "A1"));
        log.on("2025-01-01").wheels(heard("1L", "A1").tyre("2017-10-02"));

        assertThat(life(log.history(), "A1").basis()).isEqualTo(OriginBasis.UNKNOWN);
    }

    @Test
    void aTyreBoundsNothingOnAVehicleWhoseFirstUseIsNotKnown() {
        log.unregistered();
        log.on("2024-01-01").wheels(heard("1L", "A1").tyre("2017-10-02"));

        assertThat(life(log.history(), "A1").basis()).isEqualTo(OriginBasis.UNKNOWN);
        assertThat(life(log.history(), "A1").fittedNotBefore()).isNull();
    }

    /** Unknown, and yet no older than the last sign of the sensor before it. */
    @Test
    void anUnrecordedChangeIsBoundedByTheLastAnswerBeforeIt() {
        log.on("2020-01-01").wheels(heard("1L", "A1"), heard("1R", "A2"));
        log.on("2020-06-01").wheels(heard("1L", "A1"), silent("1R"));
        log.on("2021-01-01").wheels(heard("1L", "F1"), heard("1R", "F2").tyre("2020-10-05"));

        SensorLife f1 = life(log.history(), "F1");
        SensorLife f2 = life(log.history(), "F2");

        assertThat(f1.basis()).isEqualTo(OriginBasis.UNKNOWN);
        assertThat(f1.fittedOn()).isNull();
        assertThat(f1.fittedNotBefore()).isEqualTo("2020-06-01");
        assertThat(f2.fittedNotBefore())
                .as("the bead is off for both, tyre and sensor")
                .isEqualTo("2020-10-05");
        assertThat(f1.lifetime()).isNull();
    }

    @Test
    void aSensorThatFillsAnEmptyPlaceIsBoundedByTheDayThePlaceWasLeft() {
        log.on("2020-01-01").wheels(heard("1L", "A1").plainValve(WorkReason.LOST));
        log.on("2021-01-01").wheels(heard("1L", "F1"));

        assertThat(life(log.history(), "F1").fittedNotBefore()).isEqualTo(LocalDate.of(2020, 1, 1));
    }

    @Test
    void nothingToGoByIsUnknownAndStaysOutOfTheSample() {
        log.on("2024-01-01").heard("A1", "A2", "A3", "A4");
        log.on("2025-01-01").heard("A1", "A2", "A3", "A4");

        SensorLife life = life(log.history(), "A1");

        assertThat(life.basis()).isEqualTo(OriginBasis.UNKNOWN);
        assertThat(life.fittedOn()).isNull();
        assertThat(life.lifetime()).isNull();
        assertThat(life.exclusion()).isNotBlank();
    }
}
