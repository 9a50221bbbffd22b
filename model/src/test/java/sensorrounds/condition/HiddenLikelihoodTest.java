package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.HiddenFleet.SETTINGS;
import static sensorrounds.condition.HiddenFleet.TRUTH;
import static sensorrounds.condition.HiddenFleet.WAKE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sensorrounds.markov.EmissionMatrix;
import sensorrounds.markov.IntensityMatrix;
import sensorrounds.markov.MarkovModel;
import sensorrounds.markov.Path;
import sensorrounds.markov.Sighting;

/** The likelihood of one sensor against independent computations, and its sum against itself under any split. */
class HiddenLikelihoodTest {
    private static final List<HiddenReadings> SENSORS =
            HiddenFleet.readings(HiddenFleet.sensors(400, 10, TRUTH, 20_240_501));

    /** A model at a point, and sensors drawn from it. */
    private record Case(HiddenModel model, HiddenParameters at, List<HiddenReadings> sensors) {
        HiddenLikelihood likelihood(HiddenParameters point) {
            return new HiddenLikelihood(new HiddenTables(point, model));
        }

        @Override
        public String toString() {
            return model.stages() + (model.season().turns() ? " with" : " without") + " season";
        }
    }

    private static Stream<Case> models() {
        HiddenFleet.World winter = HiddenFleet.World.PLAIN.withWinter(1.6);
        List<HiddenReadings> inYear = HiddenFleet.readings(HiddenFleet.sensors(400, 10, winter, 20_240_502));
        return Stream.of(
                new Case(HiddenFleet.MODEL, TRUTH, SENSORS),
                new Case(HiddenFleet.MODEL.with(WeakStages.TWO), TRUTH, SENSORS),
                new Case(HiddenFleet.MODEL.with(HiddenFleet.WINTER), winter.truth(), inYear),
                new Case(HiddenFleet.MODEL.with(HiddenFleet.WINTER).with(WeakStages.TWO), winter.truth(), inYear));
    }

    private static HiddenLikelihood likelihood(HiddenParameters at) {
        return new HiddenLikelihood(new HiddenTables(at, HiddenFleet.MODEL));
    }

    /** One age band, one reader, one try a visit: the panel model that is checked against published values. */
    @Test
    void oneBandIsThePanelModelWithErrors() {
        HiddenSettings oneBand = SETTINGS.with(List.of());
        HiddenParameters at = HiddenParameters.of(new double[] {.3}, new double[] {.9}, .05, .2, .05, .05, .6, .6)
                .withMissed(1e-13);
        double p = WAKE.chance(0);
        double q = .2 * p / (1 - p) / (1 + .2 * p / (1 - p));
        MarkovModel model = MarkovModel.of(IntensityMatrix.of(new double[][] {{0, .3, .05}, {0, 0, .9}, {0, 0, 0}}))
                .with(EmissionMatrix.of(
                        new double[][] {{p * .95, p * .05, 1 - p}, {q * .4, q * .6, 1 - q}, {0, 0, 1}}));
        int[] days = {40, 300, 301, 700, 1200};
        int[][] seen = {{0, 0, 1, 0, 2}, {0, 1, 1, 2, 1}, {2, 2, 0, 2, 2}, {0, 2, 2, 2, 2}};
        HiddenLikelihood ours = new HiddenLikelihood(new HiddenTables(at, HiddenModel.of(oneBand, WAKE)));
        for (int[] states : seen) {
            HiddenReadings.Builder builder = new HiddenReadings.Builder(0);
            List<Sighting> sightings = new ArrayList<>(List.of(Sighting.of(0, 0, Sighting.Kind.CERTAIN)));
            for (int j = 0; j < days.length; j++) {
                boolean answered = states[j] < 2;
                int battery = answered ? HiddenReadings.battery(states[j] == 1, false) : 0;
                builder.read(days[j], HiddenReadings.code(0, 1, answered, battery), answered);
                sightings.add(Sighting.of(days[j] / 365.25, states[j], Sighting.Kind.SNAPSHOT));
            }
            assertThat(ours.value(builder.build()))
                    .isCloseTo(model.logLikelihood(List.of(new Path("s", sightings))), within(1e-11));
        }
    }

    /**
     * All bands, readers, batteries and warnings: forward sums with a matrix exponential for every stretch. Deaths of a day
     * are put in its middle, which the exponential does not do: off by 5e-5 of the chance of a death, see the tables.
     */
    @ParameterizedTest
    @MethodSource("models")
    void bandsAgreeWithMatrixExponentials(Case c) {
        HiddenLikelihood ours = c.likelihood(c.at());
        int exact = 0;
        for (HiddenReadings sensor : c.sensors()) {
            boolean monitored = HiddenReadings.isMonitored(sensor.context(0));
            exact += monitored ? 0 : 1;
            assertThat(ours.value(sensor)).isCloseTo(bruteForce(c, sensor), within(monitored ? 1e-4 : 1e-10));
        }
        assertThat(exact).as("on vehicles that show no warning").isBetween(50, 350);
    }

    /** Good, early and late weak, dead and to be reported, dead and not, reported. */
    private static double bruteForce(Case c, HiddenReadings sensor) {
        double[] a = {1, 0, 0, 0, 0, 0};
        for (int day = 0; day < sensor.entryDays(); day++) {
            a = carried(c, a, day, beforeEntry(c, sensor, day), false);
        }
        double alive = a[0] + a[1] + a[2];
        a = new double[] {a[0] / alive, a[1] / alive, a[2] / alive, 0, 0, 0};
        int age = sensor.entryDays();
        for (int r = 0; r < sensor.size(); r++) {
            for (; age < sensor.age(r); age++) {
                a = carried(c, a, age, speed(c, sensor, age), HiddenReadings.isMonitored(sensor.context(r)));
            }
            double[] e = seen(sensor.code(r));
            double[] w = warned(HiddenReadings.sign(sensor.context(r)));
            double[] each = {e[0] * w[0], e[1] * w[1], e[1] * w[1], e[2] * w[2], e[2] * w[3], 0};
            for (int k = 0; k < 6; k++) {
                a[k] *= each[k];
            }
            if (sensor.code(r) >= 0 && e[2] == 1) {
                a[4] += a[3];
                a[3] = 0;
            }
        }
        return Math.log(a[0] + a[1] + a[2] + a[3] + a[4]);
    }

    /** A month is cold by the calendar; the mean of cold and other rates over even halves of the year is 1. */
    private static double speed(Case c, HiddenReadings sensor, int age) {
        LocalDate day = LocalDate.ofEpochDay(sensor.fittedDay() + age + 1L);
        double f = c.at().coldRateFactor();
        return 2 / (1 + f) * (day.getMonthValue() >= 10 || day.getMonthValue() <= 3 ? f : 1);
    }

    /** The declared simplification: before entry a whole piece of age is half cold. */
    private static double beforeEntry(Case c, HiddenReadings sensor, int age) {
        HiddenCohorts cohorts = c.model().cohorts();
        int piece = cohorts.pieceAt(age);
        int end = cohorts.from(piece + 1);
        if (end >= sensor.entryDays()) {
            return speed(c, sensor, age);
        }
        double f = c.at().coldRateFactor();
        return 2 / (1 + f) * (end - age <= (end - cohorts.from(piece)) / 2 ? f : 1);
    }

    private static double[] warned(RoadVisits.Sign sign) {
        return switch (sign) {
            case NONE -> new double[] {1, 1, 1, 1};
            case CALLED -> new double[] {1, 1, 1 + 1 / TRUTH.daysUntilReported() / HiddenFleet.CALLS_PER_DAY, 1};
            case LIT -> on(TRUTH.warningOn(false), TRUTH.warningOn(true));
            case DARK -> on(1 - TRUTH.warningOn(false), 1 - TRUTH.warningOn(true));
        };
    }

    private static double[] on(double alive, double dead) {
        return new double[] {alive, alive, dead, dead};
    }

    private static final Map<List<Object>, double[][]> DAYS = new HashMap<>();

    /** One day on. */
    private static double[] carried(Case c, double[] a, int day, double speed, boolean monitored) {
        int band = 0;
        for (int limit : SETTINGS.bandLimitDays()) {
            band += day >= limit ? 1 : 0;
        }
        int b = band;
        double[][] p = DAYS.computeIfAbsent(
                List.of(c.model().stages(), speed, band, monitored),
                key -> oneDay(c.model().stages(), speed, b, monitored));
        double[] next = new double[6];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                next[j] += a[i] * p[i][j];
            }
        }
        return next;
    }

    private static double[][] oneDay(WeakStages stages, double speed, int band, boolean monitored) {
        double share = TRUTH.reportedShare();
        double reports = monitored ? 365.25 / TRUTH.daysUntilReported() : 0;
        double weakening = speed * TRUTH.weakeningPerYear(band);
        double sudden = speed * TRUTH.suddenPerYear();
        boolean two = stages == WeakStages.TWO;
        double dying = speed * TRUTH.dyingPerYear(band) * (two ? 2 : 1);
        return IntensityMatrix.of(new double[][] {
                    {0, two ? weakening : 0, two ? 0 : weakening, share * sudden, (1 - share) * sudden, 0},
                    {0, 0, two ? dying : 0, 0, 0, 0},
                    {0, 0, 0, share * dying, (1 - share) * dying, 0},
                    {0, 0, 0, 0, 0, reports},
                    {0, 0, 0, 0, 0, 0},
                    {0, 0, 0, 0, 0, 0}
                })
                .transition(1 / 365.25);
    }

    private static double[] seen(int code) {
        if (code < 0) {
            return code == HiddenReadings.KNOWN_DEAD
                    ? new double[] {0, 0, 1}
                    : code == HiddenReadings.KNOWN_ALIVE ? new double[] {1, 1, 0} : new double[] {1, 1, 1};
        }
        int battery = code % 5;
        boolean answered = code / 5 % 2 == 1;
        int tries = code / 10 % (WakeCells.MAX_TRIES + 1);
        int cell = code / 10 / (WakeCells.MAX_TRIES + 1);
        double p = WAKE.chance(cell);
        double odds = p / (1 - p) * TRUTH.wakeOddsFactor() * (cell % 2 == 1 ? TRUTH.coldWakeFactor() : 1);
        odds *= Math.pow(p / (1 - p) / (0.85 / 0.15), -0.3);
        double[] e = new double[3];
        for (int k = 0; k < 2; k++) {
            double wakes = k == 0 ? p : odds / (1 + odds);
            double low = TRUTH.low(k == 1, battery == 2 || battery == 4);
            double hears = 1 - TRUTH.missedChance();
            e[k] = answered
                    ? hears * Math.pow(1 - wakes, tries - 1) * wakes
                    : 1 - hears + hears * Math.pow(1 - wakes, tries);
            e[k] *= battery == 0 ? 1 : battery > 2 ? low : 1 - low;
        }
        e[2] = answered ? 0 : 1;
        return e;
    }

    @ParameterizedTest
    @MethodSource("models")
    void scoreAgreesWithDifferences(Case c) {
        double h = 1e-4;
        for (HiddenReadings sensor : c.sensors().subList(0, 60)) {
            HiddenLikelihood at = c.likelihood(c.at());
            at.valueAndScore(sensor);
            double[] score = at.score().clone();
            for (int i = 0; i < score.length; i++) {
                double[] moved = c.at().point();
                moved[i] += h;
                double above = c.likelihood(new HiddenParameters(moved)).value(sensor);
                moved[i] -= 2 * h;
                double below = c.likelihood(new HiddenParameters(moved)).value(sensor);
                assertThat(score[i]).as("parameter " + i).isCloseTo((above - below) / (2 * h), within(5e-7));
            }
        }
    }

    /** A season that changes nothing changes nothing: only the order of the sums differs. */
    @Test
    void aSeasonOfFactorOneGivesTheSameAnswers() {
        HiddenLikelihood with = new HiddenLikelihood(
                new HiddenTables(TRUTH.withColdRateFactor(1), HiddenFleet.MODEL.with(HiddenFleet.WINTER)));
        HiddenLikelihood without = likelihood(TRUTH);
        for (HiddenReadings sensor : SENSORS) {
            assertThat(with.valueAndScore(sensor)).isCloseTo(without.valueAndScore(sensor), within(1e-11));
            for (int i = 0; i < without.score().length; i++) {
                assertThat(with.score()[i]).isCloseTo(without.score()[i], within(1e-9));
            }
        }
    }

    /** Rates of leaving good and weak that are equal, where the usual formula is 0 / 0. */
    @Test
    void equalRatesLoseNoFigures() {
        HiddenSettings oneBand = SETTINGS.with(List.of());
        for (double nudge : new double[] {0, 1e-12, 1e-7, 1e-3, .02, .05, .06}) {
            double dying = .5 * (1 + nudge);
            HiddenTables tables = new HiddenTables(
                    HiddenParameters.of(new double[] {.4}, new double[] {dying}, .1, .2, .05, .05, .6, .6),
                    HiddenModel.of(oneBand, WAKE));
            double[][] p = IntensityMatrix.of(new double[][] {{0, .4, .1}, {0, 0, dying}, {0, 0, 0}})
                    .transition(500 / 365.25);
            assertThat(tables.chances[0][0][0][HiddenRows.ROW * 500 + HiddenRows.GL])
                    .isCloseTo(p[0][1], within(1e-13));
        }
    }

    @Test
    void anySplitInAnyOrderGivesTheSameBits() {
        HiddenSum whole = sum(SENSORS);
        List<HiddenReadings> shuffled = new ArrayList<>(SENSORS);
        Collections.shuffle(shuffled, new Random(3));
        HiddenSum parts = sum(List.of());
        for (int from = 0; from < shuffled.size(); from += 37) {
            parts = sum(shuffled.subList(from, Math.min(from + 37, shuffled.size())))
                    .merge(parts);
        }
        assertThat(parts.value()).isEqualTo(whole.value());
        assertThat(parts.gradient()).isEqualTo(whole.gradient());
        assertThat(parts.curvature()).isDeepEqualTo(whole.curvature());
        assertThat(parts.sensors()).isEqualTo(400);
        assertThat(parts.failures()).isEqualTo(whole.failures()).isPositive();
        assertThat(parts.lowReports()).isEqualTo(whole.lowReports()).isPositive();
        double plain = SENSORS.stream().mapToDouble(likelihood(TRUTH)::value).sum();
        assertThat(whole.value()).isCloseTo(plain, within(1e-9));
    }

    private static HiddenSum sum(List<HiddenReadings> sensors) {
        return HiddenSum.of(sensors, new HiddenPoint(TRUTH, HiddenFleet.MODEL), HiddenSum.Detail.SLOPE_AND_CURVATURE);
    }

    /** Solved by hand: no reading but being alive at 3 years says nothing; a known death is the law of life itself. */
    @Test
    void entryIsConditionedOn() {
        HiddenLikelihood at = likelihood(TRUTH);
        assertThat(at.value(new HiddenReadings.Builder(1000).build())).isZero();
        HiddenSettings oneBand = SETTINGS.with(List.of());
        HiddenParameters sudden = HiddenParameters.of(new double[] {1e-9}, new double[] {1}, .2, .2, .05, .05, .6, .6);
        HiddenLikelihood simple = new HiddenLikelihood(new HiddenTables(sudden, HiddenModel.of(oneBand, WAKE)));
        double dies = simple.value(new HiddenReadings.Builder(1461).dead(2922).build());
        assertThat(dies).isCloseTo(Math.log(1 - Math.exp(-.2 * 4)), within(1e-7));
        assertThat(simple.value(new HiddenReadings.Builder(100).dead(100).build()))
                .as("dead on the day it was alive")
                .isEqualTo(Double.NEGATIVE_INFINITY);
    }
}
