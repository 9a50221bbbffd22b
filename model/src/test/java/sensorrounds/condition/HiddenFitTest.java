package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static sensorrounds.condition.HiddenFleet.NO_PRIORS;
import static sensorrounds.condition.HiddenFleet.SETTINGS;
import static sensorrounds.condition.HiddenFleet.TRUTH;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Recovery of known parameters on simulated fleets, calibration of the filter, and fits that must fail by name. */
class HiddenFitTest {
    private static final int SENSORS = 20_000;
    private static final List<HiddenFleet.Sensor> FLEET = HiddenFleet.sensors(SENSORS, 10, TRUTH, 11);
    private static final HiddenFit FIT = fit(HiddenFleet.readings(FLEET), NO_PRIORS);

    private static HiddenFit fit(List<HiddenReadings> readings, HiddenSettings settings) {
        HiddenModel model = HiddenFleet.model(settings);
        return HiddenFitter.of(model).fit(HiddenPass.over(readings, model));
    }

    private static double errors(HiddenFit fit, int i) {
        return (fit.parameters().at(i) - TRUTH.at(i)) / Math.sqrt(fit.covariance()[i][i]);
    }

    /** Within 4 standard errors each, and their squares together like a chi-squared law of 20 degrees. */
    @Test
    void knownParametersAreRecovered() {
        assertThat(FIT.status()).as(FIT.cause()).isEqualTo(HiddenFit.Status.CONVERGED);
        double squares = 0;
        for (int i = 0; i < TRUTH.size(); i++) {
            assertThat(errors(FIT, i))
                    .as("parameter " + i + " in standard errors")
                    .isBetween(-4.0, 4.0);
            squares += errors(FIT, i) * errors(FIT, i);
        }
        // 0.9999 quantile of the chi-squared law with 20 degrees of freedom is 52.4 (from memory, tables).
        assertThat(squares).isLessThan(52.4);
        for (int b = 0; b < 4; b++) {
            assertThat(FIT.covariance()[b][b]).as("the data tell the rates").isLessThan(0.1 * 0.1);
        }
        assertThat(FIT.gradientNorm()).isLessThan(1e-5);
        assertThat(FIT.iterations()).isLessThan(40);
    }

    /** The same sensors with their first age taken for a fitting under observation: the old ones look immortal. */
    @Test
    void ignoringTheEntryIsVisiblyWrong() {
        List<HiddenReadings> ignorant = new ArrayList<>();
        for (HiddenReadings r : HiddenFleet.readings(FLEET)) {
            HiddenReadings.Builder builder = new HiddenReadings.Builder(0);
            for (int i = 0;
                    i < r.size() && r.code(i) != HiddenReadings.KNOWN_DEAD && r.code(i) != HiddenReadings.KNOWN_ALIVE;
                    i++) {
                builder.add(r.age(i), r.context(i), r.code(i));
            }
            ignorant.add(
                    r.size() > 0 && r.code(r.size() - 1) == HiddenReadings.KNOWN_DEAD
                            ? builder.dead(r.lastAge()).build()
                            : builder.build());
        }
        HiddenFit wrong = fit(ignorant, NO_PRIORS);
        assertThat(errors(wrong, 0))
                .as("weakening in the first band, .029 for .040")
                .isLessThan(-6);
        assertThat(errors(wrong, 8)).as("sudden death, .0065 for .010").isLessThan(-4);
    }

    /** The priors are weak: with this many sensors they move nothing by more than a fifth of a standard error. */
    @Test
    void priorsHardlyMatter() {
        HiddenFit with = fit(HiddenFleet.readings(FLEET), SETTINGS);
        for (int i = 0; i < TRUTH.size(); i++) {
            double moved = (with.parameters().at(i) - FIT.parameters().at(i)) / Math.sqrt(FIT.covariance()[i][i]);
            assertThat(moved).as("parameter " + i).isBetween(-0.2, 0.2);
        }
    }

    /** On a fleet the fit has not seen: of sensors given a chance of p, about the share p are so. */
    @Test
    void filterIsCalibrated() {
        HiddenFilter filter = FIT.filter();
        List<HiddenFleet.Sensor> fresh = HiddenFleet.sensors(SENSORS, 6, TRUTH, 12);
        double[][] weak = new double[6][3];
        double[][] fails = new double[6][3];
        double[] bounds = {0, .02, .1, .3, .6, .9, 1.01};
        for (HiddenFleet.Sensor s : fresh) {
            int age = s.readings().lastAge();
            HiddenFilter.Condition now = filter.at(s.readings(), age);
            assertThat(now.good() + now.weak() + now.dead()).isCloseTo(1, within(1e-12));
            count(weak, bounds, now.weak(), s.conditionAt(age) == 1);
            count(fails, bounds, filter.failureWithin(now, 365), s.conditionAt(age + 365) == 2);
        }
        assertCalibrated("weak now", weak);
        assertCalibrated("dead within a year", fails);
        assertThat(weak[4][2]).as("some are called weak with confidence").isGreaterThan(100);
    }

    private static void count(double[][] bins, double[] bounds, double p, boolean is) {
        int bin = 0;
        while (p >= bounds[bin + 1]) {
            bin++;
        }
        bins[bin][0] += p;
        bins[bin][1] += is ? 1 : 0;
        bins[bin][2]++;
    }

    /** Within 4 binomial standard deviations, and 2 % more for the error of the fit. */
    private static void assertCalibrated(String what, double[][] bins) {
        for (double[] bin : bins) {
            if (bin[2] > 0) {
                double p = bin[0] / bin[2];
                double deviation = 4 * Math.sqrt(bin[0] * (1 - p)) + 0.02 * bin[0] + 1;
                assertThat(bin[1])
                        .as(what + " at a mean chance of " + p + " of " + bin[2])
                        .isCloseTo(bin[0], within(deviation));
            }
        }
    }

    @Test
    void failureGrowsWithTheHorizonAndLimitsHoldIt() {
        HiddenFilter filter = FIT.filter();
        for (HiddenFleet.Sensor s : FLEET.subList(0, 300)) {
            HiddenFilter.Condition now = filter.at(s.readings(), s.readings().lastAge() + 10);
            double last = now.dead();
            for (int days : new int[] {30, 90, 180, 365}) {
                double p = filter.failureWithin(now, days);
                assertThat(p).isBetween(last, 1.0);
                double[] limits = filter.limits(s.readings(), s.readings().lastAge() + 10, days);
                assertThat(limits[0]).isLessThanOrEqualTo(p + 1e-9);
                assertThat(limits[1]).isGreaterThanOrEqualTo(p - 1e-9);
                last = p;
            }
        }
        HiddenReadings some = FLEET.get(0).readings();
        assertThatThrownBy(() -> filter.at(some, some.lastAge() - 1)).hasMessageContaining("last reading");
    }

    /** The limits cover the truth about as often as they say, over fleets of 1000. */
    @Test
    void limitsCoverTheTruth() {
        HiddenReadings sensor = FLEET.get(1).readings();
        int age = sensor.lastAge() + 10;
        double truth;
        HiddenFilter known =
                new HiddenFilter(new HiddenTables(TRUTH, HiddenFleet.MODEL), new double[TRUTH.size()][TRUTH.size()]);
        truth = known.failureWithin(known.at(sensor, age), 365);
        int covered = 0;
        for (int i = 0; i < 40; i++) {
            HiddenFit fit = fit(HiddenFleet.readings(HiddenFleet.sensors(1000, 10, TRUTH, 100 + i)), SETTINGS);
            double[] limits = fit.filter().limits(sensor, age, 365);
            covered += limits[0] <= truth && truth <= limits[1] ? 1 : 0;
        }
        // Of 40 at 95 % fewer than 33 come with a chance of 0.2 %.
        assertThat(covered).isGreaterThanOrEqualTo(33);
    }

    /** Dead on the day it was known to be alive. */
    private static final HiddenReadings CONTRADICTORY =
            new HiddenReadings.Builder(100).dead(100).build();

    @Test
    void aSensorWhoseReadingsContradictEachOtherIsLeftOutAndCounted() {
        List<HiddenReadings> sound = HiddenFleet.readings(FLEET.subList(0, 2000));
        List<HiddenReadings> broken = new ArrayList<>(sound);
        broken.add(700, CONTRADICTORY);
        HiddenFit fit = fit(broken, SETTINGS);
        HiddenFit without = fit(sound, SETTINGS);
        assertThat(fit.status()).as(fit.cause()).isEqualTo(HiddenFit.Status.CONVERGED);
        assertThat(fit.leftOut()).isEqualTo(1);
        assertThat(fit.sensors()).isEqualTo(2000);
        assertThat(fit.parameters().point())
                .containsExactly(without.parameters().point());
        SetLikeness none = SetLikeness.none("one sensor each");
        assertThat(ConditionFigure.of(fit, none))
                .filteredOn(f -> f.name().equals("left_out"))
                .singleElement()
                .satisfies(f -> assertThat(f.value()).isEqualTo(1));
        assertThat(ConditionFigure.of(without, none)).noneMatch(f -> f.name().equals("left_out"));
    }

    @Test
    void failuresAreNamed() {
        List<HiddenReadings> few = HiddenFleet.readings(FLEET.subList(0, 150));
        assertThat(fit(few, SETTINGS).status()).isEqualTo(HiddenFit.Status.TOO_FEW);
        assertThat(fit(few, SETTINGS).cause()).contains("150 sensors").contains("200");
        assertThatThrownBy(fit(few, SETTINGS)::parameters)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("TOO_FEW");

        HiddenParameters alike = HiddenParameters.of(
                new double[] {.1, .1, .1, .1}, new double[] {.5, .5, .5, .5}, .05, 1, .1, .1, .1, .1);
        HiddenFit same = fit(HiddenFleet.readings(HiddenFleet.sensors(3000, 10, alike, 5)), SETTINGS);
        assertThat(same.status()).as(same.cause()).isEqualTo(HiddenFit.Status.NOT_TOLD_APART);

        HiddenSettings oldAge = NO_PRIORS.with(List.of(1461, 2192, 2922, 20_000));
        HiddenFit flat = fit(HiddenFleet.readings(FLEET.subList(0, 3000)), oldAge);
        assertThat(flat.converged()).as("no sensor is 55 years old").isFalse();
        assertThat(flat.cause()).contains("age band 5");

        List<HiddenReadings> broken = new ArrayList<>(HiddenFleet.readings(FLEET.subList(0, 3000)));
        broken.addAll(Collections.nCopies(200, CONTRADICTORY));
        HiddenFit impossible = fit(broken, SETTINGS);
        assertThat(impossible.status()).isEqualTo(HiddenFit.Status.IMPOSSIBLE_DATA);
        assertThat(impossible.cause()).contains("200 of 3200").contains("one in 20");
        HiddenModel model = HiddenFleet.MODEL;
        assertThat(HiddenFitter.of(model)
                        .withMaxIterations(1)
                        .fit(HiddenPass.over(few.subList(0, 0), model))
                        .status())
                .isEqualTo(HiddenFit.Status.TOO_FEW);
        List<HiddenReadings> some = HiddenFleet.readings(FLEET.subList(0, 2000));
        assertThat(HiddenFitter.of(model)
                        .withMaxIterations(1)
                        .fit(HiddenPass.over(some, model))
                        .status())
                .isEqualTo(HiddenFit.Status.NOT_CONVERGED);
    }

    @Test
    void settingsSayWhatTheyExpect() {
        assertThatThrownBy(() -> SETTINGS.with(List.of(500, 400))).hasMessageContaining("rise");
        assertThatThrownBy(() -> HiddenParameters.of(new double[] {-1}, new double[] {1}, .1, .1, .1, .1, .1, .1))
                .hasMessageContaining("positive");
        assertThatThrownBy(() -> new HiddenTables(TRUTH, HiddenFleet.model(SETTINGS.with(List.of()))))
                .hasMessageContaining("4 age bands");
    }
}
