package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Logbook.age;
import static sensorrounds.history.Logbook.kinds;
import static sensorrounds.history.Logbook.life;
import static sensorrounds.history.Wheel.heard;
import static sensorrounds.history.Wheel.silent;

import org.junit.jupiter.api.Test;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.BatteryReport;

/**
 * A new sensor with the old ID that nobody wrote down. Common practice, no source: missed clones make life look twice as
 * long; signs are a dead sensor that answers again, a reserve that grows, a newer tyre.
 */
class CloneSignsTest {
    private static final BatteryReport NINE_YEARS = new BatteryReport(BatteryReport.Kind.MONTHS, 108);
    private static final BatteryReport HALF_A_YEAR = new BatteryReport(BatteryReport.Kind.MONTHS, 5);

    private final Logbook log = new Logbook();

    @Test
    void aDeadSensorThatAnswersInANewerTyreIsAnotherOne() {
        log.on("2020-01-01").wheels(heard("1L", "A1"), heard("1R", "A2").tyre("2017-10-02"));
        log.on("2021-01-01").wheels(heard("1L", "A1"), silent("1R"));
        log.on("2021-06-01").wheels(heard("1L", "A1"), silent("1R"));
        log.on("2022-01-01").wheels(heard("1L", "A1"), heard("1R", "A2").tyre("2021-09-06"));
        log.on("2023-01-01").wheels(heard("1L", "A1"), heard("1R", "A2").tyre("2021-09-06"));

        VehicleHistory history = log.history();

        assertThat(life(history, "A2", 1).lifetime())
                .isEqualTo(Lifetime.interval(age("2020-01-01"), age("2020-01-01"), age("2021-01-01")));
        assertThat(life(history, "A2", 1).end()).isEqualTo(LifeEnd.FAILED);
        assertThat(life(history, "A2", 1).endedOn()).isEqualTo("2022-01-01");
        assertThat(life(history, "A2", 2).basis()).isEqualTo(OriginBasis.UNKNOWN);
        assertThat(life(history, "A2", 2).fittedNotBefore()).isEqualTo("2021-09-06");
        assertThat(life(history, "A2", 2).inService()).isTrue();
        assertThat(life(history, "A2", 2).readings()).hasSize(2);
        assertThat(history.findings()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.CLONED_ID);
            assertThat(f.what()).contains("silent at 2 visits in a row", "2021-09-06", "2017-10-02");
            assertThat(f.done()).contains("its life begins anew", "stays counted as failed");
            assertThat(f.sources()).extracting(Object::toString).containsExactly("day.jsonl:31", "day.jsonl:41");
        });
    }

    @Test
    void inTheSameTyreItIsTheSameSensorAwakeAgain() {
        log.on("2020-01-01").wheels(heard("1L", "A1"), heard("1R", "A2").tyre("2017-10-02"));
        log.on("2021-01-01").wheels(heard("1L", "A1"), silent("1R"));
        log.on("2021-06-01").wheels(heard("1L", "A1"), silent("1R"));
        log.on("2022-01-01").wheels(heard("1L", "A1"), heard("1R", "A2").tyre("2017-10-02"));

        assertThat(log.history().lives()).hasSize(2).allMatch(SensorLife::inService);
        assertThat(kinds(log.history())).containsExactly(Finding.Kind.ALIVE_AGAIN);
    }

    @Test
    void aReserveThatGrowsInANewerTyreIsAnotherSensors() {
        log.on("2020-01-01")
                .ambient(15)
                .wheels(heard("1L", "A1").battery(HALF_A_YEAR).tyre("2017-10-02"));
        log.on("2021-01-01")
                .ambient(15)
                .wheels(heard("1L", "A1").battery(NINE_YEARS).tyre("2020-05-04"));

        VehicleHistory history = log.history();

        assertThat(life(history, "A1", 1).end())
                .as("nothing says that it failed")
                .isEqualTo(LifeEnd.LOST);
        assertThat(life(history, "A1", 1).lastAnswered()).isEqualTo("2020-01-01");
        assertThat(life(history, "A1", 2).firstAnswered()).isEqualTo("2021-01-01");
        assertThat(life(history, "A1", 2).fittedNotBefore()).isEqualTo("2020-05-04");
        assertThat(history.findings().get(0).what())
                .contains("reported its battery as 5 months on 2020-01-01 and now as 108 months");
    }

    @Test
    void aReserveThatGrowsInTheSameTyreIsToldAndSplitsNothing() {
        log.on("2020-01-01").ambient(15).wheels(heard("1L", "A1").battery(HALF_A_YEAR));
        log.on("2021-01-01").ambient(15).wheels(heard("1L", "A1").battery(NINE_YEARS));

        assertThat(log.history().lives()).hasSize(1);
        assertThat(log.history().findings()).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.CLONED_ID);
            assertThat(f.done()).startsWith("it is kept as one life, since nothing shows that the wheel was opened");
        });
    }

    @Test
    void aReportInTheColdAgainstOneInWarmthIsNoSign() {
        log.on("2020-01-01")
                .ambient(-15)
                .wheels(heard("1L", "A1").battery(HALF_A_YEAR).tyre("2017-10-02"));
        log.on("2021-07-01")
                .ambient(25)
                .wheels(heard("1L", "A1").battery(NINE_YEARS).tyre("2020-05-04"));

        assertThat(log.history().lives()).hasSize(1);
        assertThat(log.history().findings()).isEmpty();
    }

    @Test
    void lowTwiceAndSoundInANewerTyreIsToldAndSplitsNothing() {
        log.on("2020-01-01")
                .ambient(15)
                .wheels(heard("1L", "A1").battery(BatteryReport.LOW).tyre("2017-10-02"));
        log.on("2020-06-01")
                .ambient(15)
                .wheels(heard("1L", "A1").battery(BatteryReport.LOW).tyre("2017-10-02"));
        log.on("2021-01-01")
                .ambient(15)
                .wheels(heard("1L", "A1").battery(BatteryReport.OK).tyre("2020-05-04"));

        assertThat(log.history().lives()).hasSize(1);
        assertThat(kinds(log.history())).containsExactly(Finding.Kind.CLONED_ID);
        assertThat(log.history().findings().get(0).done()).startsWith("the sign is weak: it is kept as one life");
    }

    @Test
    void slowThreeTimesAndQuickInANewerTyreIsToldAndSplitsNothing() {
        for (String day : new String[] {"2020-01-01", "2020-06-01", "2021-01-01"}) {
            log.on(day).wheels(heard("1L", "A1").attempts(5).tyre("2017-10-02"));
        }
        log.on("2021-06-01").wheels(heard("1L", "A1").attempts(1).tyre("2021-03-01"));

        assertThat(log.history().lives()).hasSize(1);
        assertThat(kinds(log.history())).containsExactly(Finding.Kind.CLONED_ID);
    }

    @Test
    void aNewerTyreAloneIsNoSign() {
        log.on("2020-01-01")
                .ambient(15)
                .wheels(heard("1L", "A1").battery(BatteryReport.OK).tyre("2017-10-02"));
        log.on("2021-01-01")
                .ambient(15)
                .wheels(heard("1L", "A1").battery(BatteryReport.OK).tyre("2020-05-04"));

        assertThat(log.history().lives()).hasSize(1);
        assertThat(log.history().findings()).isEmpty();
    }
}
