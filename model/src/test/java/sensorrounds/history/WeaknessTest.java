package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.history.Logbook.age;
import static sensorrounds.history.Logbook.life;
import static sensorrounds.history.Wheel.heard;
import static sensorrounds.history.Wheel.silent;

import org.junit.jupiter.api.Test;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.BatteryReport;

/** The two end points, first weakness and failure, kept apart. */
class WeaknessTest {
    private final Logbook log = new Logbook();

    @Test
    void firstWeaknessAndFailureEachHaveTheirInterval() {
        log.on("2020-01-01").wheels(heard("1L", "A1"), heard("1R", "A2").battery(BatteryReport.OK));
        log.on("2021-01-01").wheels(heard("1L", "A1"), heard("1R", "A2").battery(BatteryReport.OK));
        log.on("2022-01-01").wheels(heard("1L", "A1"), heard("1R", "A2").battery(BatteryReport.LOW));
        log.on("2022-06-01").wheels(heard("1L", "A1"), silent("1R"));
        log.on("2022-09-01").wheels(heard("1L", "A1"), silent("1R"));

        SensorLife life = life(log.history(), "A2");

        assertThat(life.lastSound()).isEqualTo("2021-01-01");
        assertThat(life.firstWeak()).isEqualTo("2022-01-01");
        assertThat(life.recovered()).isNull();
        assertThat(life.toWeakness())
                .contains(Lifetime.interval(age("2020-01-01"), age("2021-01-01"), age("2022-01-01")));
        assertThat(life.lifetime())
                .isEqualTo(Lifetime.interval(age("2020-01-01"), age("2022-01-01"), age("2022-06-01")));
    }

    /** IEC coin cells give less in the cold (handbook knowledge, from memory): neither an error nor a death. */
    @Test
    void aLowReportInTheColdThatRecoversIsKeptAsSuch() {
        log.on("2020-07-01").ambient(24).wheels(heard("1L", "A1").battery(BatteryReport.OK));
        log.on("2021-01-10").ambient(-12).wheels(heard("1L", "A1").battery(BatteryReport.LOW));
        log.on("2021-07-01").ambient(24).wheels(heard("1L", "A1").battery(BatteryReport.OK));

        SensorLife life = life(log.history(), "A1");

        assertThat(life.inService()).isTrue();
        assertThat(life.firstWeak()).isEqualTo("2021-01-10");
        assertThat(life.recovered()).isEqualTo("2021-07-01");
        assertThat(life.readings().get(1).battery()).isEqualTo(BatteryReport.LOW);
        assertThat(life.readings().get(1).ambientCelsius()).isEqualTo(-12);
        assertThat(log.history().findings()).isEmpty();
        assertThat(life.lifetime()).isEqualTo(Lifetime.censored(age("2020-07-01"), age("2021-07-01")));
    }

    @Test
    void aRecoveryIsTakenBackByTheNextLowReport() {
        log.on("2021-01-10").wheels(heard("1L", "A1").battery(BatteryReport.LOW));
        log.on("2021-07-01").wheels(heard("1L", "A1").battery(BatteryReport.OK));
        log.on("2022-01-10").wheels(heard("1L", "A1").battery(BatteryReport.LOW));

        assertThat(life(log.history(), "A1").firstWeak()).isEqualTo("2021-01-10");
        assertThat(life(log.history(), "A1").recovered()).isNull();
        assertThat(life(log.history(), "A1").toWeakness())
                .as("weak at its first report: its sound time was not under observation")
                .isEmpty();
    }

    @Test
    void aBlankBatteryFieldIsNoReport() {
        log.on("2020-01-01").wheels(heard("1L", "A1"));
        log.on("2021-01-01").wheels(heard("1L", "A1"));

        assertThat(life(log.history(), "A1").lastSound()).isNull();
        assertThat(life(log.history(), "A1").toWeakness()).isEmpty();
    }

    @Test
    void soundUntilItsLastReportIsCensoredThere() {
        log.on("2020-01-01").wheels(heard("1L", "A1").battery(BatteryReport.OK));
        log.on("2021-01-01").wheels(heard("1L", "A1").battery(BatteryReport.OK));
        log.on("2022-01-01").wheels(heard("1L", "A1"));

        assertThat(life(log.history(), "A1").toWeakness())
                .contains(Lifetime.censored(age("2020-01-01"), age("2021-01-01")));
    }
}
