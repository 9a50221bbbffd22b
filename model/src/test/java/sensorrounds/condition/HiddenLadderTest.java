package sensorrounds.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static sensorrounds.condition.HiddenFleet.NO_PRIORS;
import static sensorrounds.condition.HiddenFleet.SETTINGS;

import java.time.LocalDate;
import java.time.Month;
import java.util.EnumSet;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sensorrounds.condition.HiddenFleet.Weak;
import sensorrounds.condition.HiddenFleet.World;

/** How many stages of weakness, and whether the rates know the season: told by simulated fleets of known truth. */
class HiddenLadderTest {
    private static HiddenFit ladder(List<HiddenReadings> readings, ColdSeason season) {
        HiddenModel model = HiddenFleet.model(SETTINGS).with(season);
        return HiddenLadder.of(model).fit(m -> HiddenPass.over(readings, m));
    }

    private static HiddenFit fit(List<HiddenReadings> readings, HiddenModel model) {
        return HiddenFitter.of(model).fit(HiddenPass.over(readings, model));
    }

    private static void assertRecovered(HiddenFit fit, HiddenParameters truth, double chiSquared) {
        assertThat(fit.status()).as(fit.cause()).isEqualTo(HiddenFit.Status.CONVERGED);
        double squares = 0;
        for (int i = 0; i < truth.size(); i++) {
            double errors = (fit.parameters().at(i) - truth.at(i)) / Math.sqrt(fit.covariance()[i][i]);
            assertThat(errors).as("parameter " + i + " in standard errors").isBetween(-4.0, 4.0);
            squares += errors * errors;
        }
        assertThat(squares).isLessThan(chiSquared);
    }

    /** Two stages and a season that raises all rates by half: all 21 parameters. */
    @Test
    void twoStagesAndSeasonAreRecovered() {
        World world = World.PLAIN.with(Weak.TWO_STAGES).withWinter(1.5);
        List<HiddenReadings> fleet = HiddenFleet.readings(HiddenFleet.sensors(20_000, 10, world, 21));
        HiddenModel model = HiddenFleet.model(NO_PRIORS).with(WeakStages.TWO).with(HiddenFleet.WINTER);
        HiddenFit fit = fit(fleet, model);
        // 0.9999 quantile of the chi-squared law with 21 degrees of freedom is 54.0 (from memory, tables).
        assertRecovered(fit, world.truth(), 54.0);
        int i = fit.parameters().coldRate();
        assertThat(fit.covariance()[i][i]).as("the data tell the season").isLessThan(0.05 * 0.05);

        HiddenFit chosen = ladder(fleet.subList(0, 5000), HiddenFleet.WINTER);
        assertThat(chosen.model().stages()).as(chosen.decision().stages()).isEqualTo(WeakStages.TWO);
        assertThat(chosen.parameters().knowsSeason())
                .as(chosen.decision().season())
                .isTrue();
        assertThat(ConditionFigure.of(chosen, SetLikeness.none("one sensor each")))
                .filteredOn(f -> f.name().equals("cold_rate_factor"))
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.value()).isBetween(f.lower(), f.upper());
                    assertThat(1.5).isBetween(f.lower(), f.upper());
                    assertThat(f.meaning()).contains("it adds");
                });
    }

    /**
     * Sensors weak for a time of Weibull shape 1 and 2: the ladder takes the model with no memory and with memory, and the
     * chances after a sign of weakness are right at every horizon within four binomial deviations; with one stage for the
     * second world they are not.
     */
    @ParameterizedTest
    @EnumSource(
            value = Weak.class,
            names = {"EXPONENTIAL", "WEIBULL_2"})
    void chancesAfterASignOfWeaknessAreRight(Weak weak) {
        World world = World.PLAIN.with(weak);
        List<HiddenReadings> fleet = HiddenFleet.readings(HiddenFleet.sensors(10_000, 10, world, 31));
        HiddenFit chosen = ladder(fleet, ColdSeason.none());
        boolean memory = weak == Weak.WEIBULL_2;
        assertThat(chosen.model().stages())
                .as(chosen.decision().stages())
                .isEqualTo(memory ? WeakStages.TWO : WeakStages.ONE);
        HiddenFit other = fit(fleet, HiddenFleet.model(SETTINGS).with(memory ? WeakStages.ONE : WeakStages.TWO));
        List<HiddenFleet.Sensor> fresh = HiddenFleet.sensors(60_000, 6, world, 32);
        double worst = 0;
        for (Group group : Group.values()) {
            List<HiddenFleet.Sensor> members =
                    fresh.stream().filter(s -> group.holds(s.readings())).toList();
            for (int days : new int[] {30, 90, 180, 365}) {
                double off = deviations(chosen, members, days);
                assertThat(off)
                        .as(group + " within " + days + " days of " + members.size())
                        .isBetween(-4.0, 4.0);
                worst = Math.max(worst, Math.abs(deviations(other, members, days)));
            }
        }
        assertThat(worst).as("the other number of stages").isGreaterThan(4);
    }

    /** What was read last; the sensor answered. */
    private enum Group {
        SLOW(r -> tries(r) >= 3),
        LOW(r -> HiddenReadings.isLow(lastRead(r) % HiddenReadings.BATTERIES)),
        SOUND(r -> tries(r) == 1 && !HiddenReadings.isLow(lastRead(r) % HiddenReadings.BATTERIES));

        private final Predicate<HiddenReadings> test;

        Group(Predicate<HiddenReadings> test) {
            this.test = test;
        }

        boolean holds(HiddenReadings r) {
            return lastRead(r) >= 0 && lastRead(r) / HiddenReadings.BATTERIES % 2 == 1 && test.test(r);
        }

        private static int lastRead(HiddenReadings r) {
            int i = r.size() - 1;
            while (i >= 0 && r.code(i) == HiddenReadings.NOT_READ) {
                i--;
            }
            return i < 0 ? -1 : r.code(i);
        }

        private static int tries(HiddenReadings r) {
            return lastRead(r) / HiddenReadings.BATTERIES / 2 % (WakeCells.MAX_TRIES + 1);
        }
    }

    /** Failures seen less those expected, in binomial deviations. */
    private static double deviations(HiddenFit fit, List<HiddenFleet.Sensor> sensors, int days) {
        HiddenFilter filter = fit.filter();
        double expected = 0;
        double variance = 0;
        int seen = 0;
        for (HiddenFleet.Sensor s : sensors) {
            int age = s.readings().lastAge();
            double p = filter.failureWithin(filter.at(s.readings(), age), days);
            expected += p;
            variance += p * (1 - p);
            seen += s.deadAt() <= age + days ? 1 : 0;
        }
        return (seen - expected) / Math.sqrt(variance);
    }

    /** A season left out of account: right over a year, wrong over the months to come. */
    @Test
    void aSeasonIgnoredShowsInTheMonthsAhead() {
        World world = World.PLAIN.with(Weak.TWO_STAGES).withWinter(2);
        List<HiddenReadings> fleet = HiddenFleet.readings(HiddenFleet.sensors(10_000, 10, world, 41));
        HiddenModel model = HiddenFleet.model(SETTINGS).with(WeakStages.TWO);
        HiddenFit ignorant = fit(fleet, model);
        HiddenFit knowing = fit(fleet, model.with(HiddenFleet.WINTER));
        List<HiddenFleet.Sensor> fresh = HiddenFleet.sensors(60_000, 6, world, 42);
        for (boolean winter : new boolean[] {true, false}) {
            List<HiddenFleet.Sensor> members = fresh.stream()
                    .filter(s -> HiddenFleet.WINTER.coldDays(now(s), now(s) + 90) == (winter ? 90 : 0))
                    .toList();
            assertThat(deviations(knowing, members, 90)).isBetween(-4.0, 4.0);
            assertThat(deviations(ignorant, members, 90) * (winter ? 1 : -1)).isGreaterThan(4);
        }
    }

    private static int now(HiddenFleet.Sensor s) {
        return s.readings().fittedDay() + s.readings().lastAge();
    }

    /** No season in the fleets: the ladder says so, with the factor and its limits, but for one in twenty by chance. */
    @Test
    void aFlatYearHasNoSeason() {
        World flat = World.PLAIN.withWinter(1);
        int told = 0;
        HiddenFit fit = null;
        List<HiddenReadings> fleet = List.of();
        for (int seed = 51; seed < 61; seed++) {
            List<HiddenReadings> next = HiddenFleet.readings(HiddenFleet.sensors(800, 10, flat, seed));
            HiddenFit nextFit = ladder(next, HiddenFleet.WINTER);
            assertThat(nextFit.converged()).as(nextFit.cause()).isTrue();
            told += nextFit.parameters().knowsSeason() ? 1 : 0;
            if (!nextFit.parameters().knowsSeason()) {
                fit = nextFit;
                fleet = next;
            }
        }
        // Four of ten at 5 % come with a chance of 0.1 %.
        assertThat(told).isLessThan(4);
        assertThat(fit.parameters().coldRateFactor()).isEqualTo(1);
        assertThat(fit.decision().season()).startsWith("no season in the rates: a factor of ");
        assertThat(ConditionFigure.of(fit, SetLikeness.none("one sensor each")))
                .filteredOn(f -> f.name().equals("cold_rate_factor"))
                .singleElement()
                .satisfies(f -> assertThat(f.value()).isNaN());
        HiddenFit yearless = ladder(fleet, ColdSeason.none());
        assertThat(yearless.decision().season()).contains("no month is cold");
        assertThat(yearless.parameters().point())
                .as("the same answers as a model without")
                .containsExactly(fit.parameters().point());
        assertThat(ladder(fleet.subList(0, 150), HiddenFleet.WINTER).status()).isEqualTo(HiddenFit.Status.TOO_FEW);
    }

    @Test
    void daysOfTheColdAreThoseOfTheCalendar() {
        int day = ColdSeason.day(LocalDate.parse("2026-09-30"));
        assertThat(HiddenFleet.WINTER.coldDays(day - 100, day)).isZero();
        assertThat(HiddenFleet.WINTER.coldDays(day, day + 1)).isEqualTo(1);
        assertThat(HiddenFleet.WINTER.coldDays(day, day + 400)).isEqualTo(182 + 35);
        assertThat(ColdSeason.of(EnumSet.of(Month.JANUARY, Month.JULY)).coldDays(day, day + 365))
                .as("two cold months apart")
                .isEqualTo(62);
        assertThat(ColdSeason.of(EnumSet.allOf(Month.class)).turns()).isFalse();
    }
}
