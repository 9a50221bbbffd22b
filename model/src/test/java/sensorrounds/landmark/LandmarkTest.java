package sensorrounds.landmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.history.SensorLife;
import sensorrounds.outlook.LastReport;
import sensorrounds.survival.LifetimeSample;

/** Hand-made histories; ages in days. */
class LandmarkTest {
    private static final LandmarkSettings SETTINGS = LandmarkSettings.with(Stories.LIMITS);
    private static final double NEVER = Double.POSITIVE_INFINITY;

    /** Reported low in warm air, low once more, then silent twice: dead between 180 and 360 days after the report. */
    private static final SensorLife WEARS_OUT = new Stories()
            .good(1180)
            .low(1360, 15.0)
            .low(1540, 18.0)
            .silent(1720)
            .silent(1800)
            .failed(1720)
            .life();

    /** Low on one freezing morning, good for years after. */
    private static final SensorLife COLD_MORNING = new Stories()
            .good(1180)
            .low(1360, -8.0)
            .good(1540)
            .good(1720)
            .good(2100)
            .life();

    private static final SensorLife SILENT_ONCE =
            new Stories().good(1180).silent(1390).answered(1500).life();

    private static final SensorLife SILENT_FOR_GOOD =
            new Stories().good(1180).silent(1390).silent(1450).failed(1390).life();

    private static List<double[]> rows(LifetimeSample sample) {
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < sample.size(); i++) {
            rows.add(new double[] {sample.entry(i), sample.lower(i), sample.upper(i), sample.weight(i)});
        }
        return rows;
    }

    private static LandmarkCells at(int age, SensorLife... lives) {
        LandmarkCells cells = LandmarkCells.at(age, SETTINGS);
        Arrays.stream(lives).forEach(life -> cells.add(life, Stories.LAST));
        return cells;
    }

    private static FirstLowCells firstLow(SensorLife... lives) {
        FirstLowCells cells = FirstLowCells.with(SETTINGS);
        Arrays.stream(lives).forEach(cells::add);
        return cells;
    }

    @Test
    void lifeAfterAFirstLowReportCountsFromThatDay() {
        FirstLowCells cells = firstLow(WEARS_OUT);

        assertThat(rows(cells.lives(FirstLow.IN_WARMTH))).containsExactly(new double[] {0, 180, 360, 1});
        assertThat(cells.recovered(FirstLow.IN_WARMTH)).isZero();
    }

    /** That it recovers came to be known later: it stays among the low ones, told apart by what was known, the cold. */
    @Test
    void aLowReportInTheColdThatRecovers() {
        FirstLowCells cells = firstLow(WEARS_OUT, COLD_MORNING);

        assertThat(rows(cells.lives(FirstLow.IN_THE_COLD))).containsExactly(new double[] {0, 740, NEVER, 1});
        assertThat(cells.recovered(FirstLow.IN_THE_COLD)).isEqualTo(1);
        assertThat(cells.lives(FirstLow.IN_WARMTH).lives()).isEqualTo(1);
        LandmarkCells landmark = at(1400, COLD_MORNING);
        assertThat(landmark.lives(LastReport.LOW_BATTERY).lives()).isEqualTo(1);
        assertThat(landmark.lives(LastReport.SOUND).lives()).isZero();
    }

    @Test
    void aLaterLandmarkSeesTheRecovery() {
        assertThat(rows(at(1600, COLD_MORNING).lives(LastReport.SOUND)))
                .containsExactly(new double[] {0, 560, NEVER, 1});
    }

    @Test
    void lowWhenFirstReportedIsKeptApart() {
        SensorLife low = new Stories()
                .low(1200, 15.0)
                .answered(1400)
                .silent(1500)
                .silent(1600)
                .failed(1500)
                .life();
        SensorLife nobodyWroteTheAir =
                new Stories().good(100).low(400, null).answered(700).life();

        FirstLowCells cells = firstLow(low, nobodyWroteTheAir);

        assertThat(rows(cells.lives(FirstLow.LOW_FROM_THE_START))).containsExactly(new double[] {0, 200, 300, 1});
        assertThat(rows(cells.lives(FirstLow.TEMPERATURE_NOT_KNOWN))).containsExactly(new double[] {0, 300, NEVER, 1});
    }

    @Test
    void theClockOfAReportNeedsNoAge() {
        SensorLife life = new Stories()
                .good(100)
                .low(300, 15.0)
                .answered(420)
                .silent(500)
                .silent(600)
                .failed(500)
                .ageNotKnown()
                .life();

        assertThat(rows(firstLow(life).lives(FirstLow.IN_WARMTH))).containsExactly(new double[] {0, 120, 200, 1});
        assertThat(at(365, life).leftOut()).isEqualTo(Map.of(LeftOut.NO_AGE, 1L));
    }

    @Test
    void theLandmarkIsTheLastVisitBeforeTheAge() {
        // Visits at 1180 and 1360: the age 1370 takes the latter, 1350 the former.
        assertThat(rows(at(1370, WEARS_OUT).lives(LastReport.LOW_BATTERY)))
                .containsExactly(new double[] {0, 180, 360, 1});
        assertThat(rows(at(1350, WEARS_OUT).lives(LastReport.SOUND))).containsExactly(new double[] {0, 360, 540, 1});
        assertThat(at(1000, WEARS_OUT).leftOut()).isEqualTo(Map.of(LeftOut.NOT_TRIED_THEN, 1L));
        assertThat(at(2600, COLD_MORNING).leftOut()).isEqualTo(Map.of(LeftOut.NOT_TRIED_THEN, 1L));
    }

    /** The history knows that the first silence ended the life; on the day it was silent once, no more. */
    @Test
    void hindsightIsNotUsed() {
        LandmarkCells cells = at(1400, SILENT_ONCE, SILENT_FOR_GOOD);

        assertThat(rows(cells.lives(LastReport.SILENT_ONCE)))
                .containsExactly(new double[] {0, 0, 60, 1}, new double[] {0, 110, NEVER, 1});
        assertThat(at(1460, SILENT_FOR_GOOD).leftOut()).isEqualTo(Map.of(LeftOut.ALREADY_FAILED, 1L));
    }

    @Test
    void whatNoLaterContactSettlesIsLeftOut() {
        SensorLife lowAtLast = new Stories().good(1180).low(1360, 15.0).life();

        assertThat(firstLow(lowAtLast, SILENT_ONCE).leftOut())
                .isEqualTo(Map.of(LeftOut.NO_LATER_CONTACT, 1L, LeftOut.NEVER_LOW, 1L));
        assertThat(at(1400, lowAtLast).leftOut()).isEqualTo(Map.of(LeftOut.NO_LATER_CONTACT, 1L));
    }

    /** On paper: middles of intervals 270 and 100, one alive at 740: S = 2/3 after 100, 1/3 after 270. */
    @Test
    void theCurveOfThreeLives() {
        SensorLife quick = new Stories()
                .good(1180)
                .low(1360, 15.0)
                .answered(1430)
                .silent(1490)
                .silent(1500)
                .failed(1490)
                .life();

        LifeAhead ahead = at(1400, WEARS_OUT, COLD_MORNING, quick).ahead(LastReport.LOW_BATTERY);

        assertThat(ahead.lives()).isEqualTo(3);
        assertThat(ahead.failures()).isEqualTo(2);
        assertThat(ahead.curve().survival().at(99)).isEqualTo(1);
        assertThat(ahead.curve().survival().at(100)).isCloseTo(2 / 3.0, within(1e-15));
        assertThat(ahead.curve().survival().at(270)).isCloseTo(1 / 3.0, within(1e-15));
        assertThat(ahead.curve().survival().to()).isEqualTo(740);
        assertThat(ahead.law().converged()).isTrue();
    }

    @Test
    void noLivesNoLaw() {
        LifeAhead none = at(1400).ahead(LastReport.SOUND);

        assertThat(none.law().converged()).isFalse();
        assertThat(none.curve().survival().to()).isZero();
    }

    @Test
    void anyOrderAndAnyPartsAddUpTheSame() {
        List<SensorLife> lives = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            lives.addAll(List.of(WEARS_OUT, COLD_MORNING, SILENT_ONCE, SILENT_FOR_GOOD));
        }
        SensorLife[] all = lives.toArray(SensorLife[]::new);
        LandmarkCells whole = at(1400, all);
        FirstLowCells wholeLow = firstLow(all);
        Collections.shuffle(lives, new Random(3));
        LandmarkCells parts = at(1400, lives.subList(0, 13).toArray(SensorLife[]::new))
                .merge(at(1400, lives.subList(13, 160).toArray(SensorLife[]::new)))
                .merge(at(1400));
        FirstLowCells partsLow = firstLow(lives.subList(0, 77).toArray(SensorLife[]::new))
                .merge(firstLow(lives.subList(77, 160).toArray(SensorLife[]::new)));

        for (LastReport report : LastReport.values()) {
            assertThat(rows(parts.lives(report))).containsExactlyElementsOf(rows(whole.lives(report)));
        }
        assertThat(rows(whole.lives(LastReport.LOW_BATTERY)))
                .containsExactly(new double[] {0, 180, 360, 40}, new double[] {0, 740, NEVER, 40});
        for (FirstLow kind : FirstLow.values()) {
            assertThat(rows(partsLow.lives(kind))).containsExactlyElementsOf(rows(wholeLow.lives(kind)));
            assertThat(partsLow.recovered(kind)).isEqualTo(wholeLow.recovered(kind));
        }
        assertThat(partsLow.leftOut()).isEqualTo(wholeLow.leftOut()).containsEntry(LeftOut.NEVER_LOW, 80L);
    }

    @Test
    void refusesToMixLandmarks() {
        assertThatThrownBy(() -> at(1400).merge(at(1500)))
                .hasMessageContaining("1400 days")
                .hasMessageContaining("1500");
        assertThatThrownBy(() -> LandmarkCells.at(0, SETTINGS)).hasMessageContaining("from 1 up");
        assertThatThrownBy(() -> new LandmarkSettings(0, 0, Stories.LIMITS)).hasMessageContaining("window");
        assertThatThrownBy(() -> firstLow().merge(FirstLowCells.with(new LandmarkSettings(365, 5, Stories.LIMITS))))
                .hasMessageContaining("cannot be added");
    }
}
