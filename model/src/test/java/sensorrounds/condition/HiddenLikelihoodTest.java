package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.HiddenFleet.SETTINGS;
import static sensorrounds.condition.HiddenFleet.TRUTH;
import static sensorrounds.condition.HiddenFleet.WAKE;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.markov.EmissionMatrix;
import sensorrounds.markov.IntensityMatrix;
import sensorrounds.markov.MarkovModel;
import sensorrounds.markov.Path;
import sensorrounds.markov.Sighting;

/** The likelihood of one sensor against independent computations, and its sum against itself under any split. */
class HiddenLikelihoodTest {
    private static final List<HiddenReadings> SENSORS =
            HiddenFleet.readings(HiddenFleet.sensors(400, 10, TRUTH, 20_240_501));

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
    @Test
    void bandsAgreeWithMatrixExponentials() {
        HiddenLikelihood ours = likelihood(TRUTH);
        int exact = 0;
        for (HiddenReadings sensor : SENSORS) {
            boolean monitored = HiddenReadings.isMonitored(sensor.context(0));
            exact += monitored ? 0 : 1;
            assertThat(ours.value(sensor)).isCloseTo(bruteForce(sensor), within(monitored ? 1e-4 : 1e-10));
        }
        assertThat(exact).as("on vehicles that show no warning").isBetween(50, 350);
    }

    /** Good, weak, dead and to be reported, dead and not, reported. */
    private static double bruteForce(HiddenReadings sensor) {
        double[] a = carried(new double[] {1, 0, 0, 0, 0}, 0, sensor.entryDays(), false);
        double alive = a[0] + a[1];
        a = new double[] {a[0] / alive, a[1] / alive, 0, 0, 0};
        int age = sensor.entryDays();
        for (int r = 0; r < sensor.size(); r++) {
            a = carried(a, age, sensor.age(r), HiddenReadings.isMonitored(sensor.context(r)));
            age = sensor.age(r);
            double[] e = seen(sensor.code(r));
            double[] w = warned(HiddenReadings.sign(sensor.context(r)));
            for (int k = 0; k < 4; k++) {
                a[k] *= e[Math.min(2, k)] * w[k];
            }
            a[4] = 0;
            if (sensor.code(r) >= 0 && e[2] == 1) {
                a[3] += a[2];
                a[2] = 0;
            }
        }
        return Math.log(a[0] + a[1] + a[2] + a[3]);
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

    private static double[] carried(double[] a, int from, int to, boolean monitored) {
        double[] now = a;
        double share = TRUTH.reportedShare();
        double reports = monitored ? 365.25 / TRUTH.daysUntilReported() : 0;
        for (int day = from; day < to; ) {
            int band = 0;
            int end = to;
            for (int limit : SETTINGS.bandLimitDays()) {
                band += day >= limit ? 1 : 0;
                end = day < limit ? Math.min(end, limit) : end;
            }
            double dying = TRUTH.dyingPerYear(band);
            double sudden = TRUTH.suddenPerYear();
            double[][] p = IntensityMatrix.of(new double[][] {
                        {0, TRUTH.weakeningPerYear(band), share * sudden, (1 - share) * sudden, 0},
                        {0, 0, share * dying, (1 - share) * dying, 0},
                        {0, 0, 0, 0, reports},
                        {0, 0, 0, 0, 0},
                        {0, 0, 0, 0, 0}
                    })
                    .transition((end - day) / 365.25);
            double[] next = new double[5];
            for (int i = 0; i < 5; i++) {
                for (int j = 0; j < 5; j++) {
                    next[j] += now[i] * p[i][j];
                }
            }
            now = next;
            day = end;
        }
        return now;
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

    @Test
    void scoreAgreesWithDifferences() {
        double h = 1e-4;
        for (HiddenReadings sensor : SENSORS.subList(0, 60)) {
            HiddenLikelihood at = likelihood(TRUTH);
            at.valueAndScore(sensor);
            double[] score = at.score().clone();
            for (int i = 0; i < score.length; i++) {
                double[] moved = TRUTH.point();
                moved[i] += h;
                double above = likelihood(new HiddenParameters(moved)).value(sensor);
                moved[i] -= 2 * h;
                double below = likelihood(new HiddenParameters(moved)).value(sensor);
                assertThat(score[i]).as("parameter " + i).isCloseTo((above - below) / (2 * h), within(2e-7));
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
            assertThat(tables.chances[0][0][HiddenTables.ROW * 500 + HiddenTables.GW])
                    .isCloseTo(p[0][1], within(1e-14));
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
        return HiddenSum.of(sensors, TRUTH, HiddenFleet.MODEL, HiddenSum.Detail.SLOPE_AND_CURVATURE);
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
