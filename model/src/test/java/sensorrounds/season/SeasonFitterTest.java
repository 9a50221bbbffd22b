package sensorrounds.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.Month;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sensorrounds.numeric.Objective;
import sensorrounds.survival.FitStatus;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.PiecewiseExponentialFitter;

class SeasonFitterTest {
    private static final ColdMonths JANUARY = ColdMonths.of(Month.JANUARY);
    private static final LocalDate NEW_YEARS_EVE = LocalDate.of(2020, 12, 31);
    private static final LocalDate LAST_OF_JANUARY = LocalDate.of(2021, 1, 31);

    private static SeasonLife life(LocalDate fitted, Lifetime life) {
        return new SeasonLife(life, fitted, JANUARY, "");
    }

    private static Lifetime of(int lower, int upper, double weight) {
        return new Lifetime(0, lower, upper, weight);
    }

    /** Four failures on 310 cold days, three on 560 others: {@code docs/validation-survival.md}. */
    private static List<SeasonLife> byHand() {
        return List.of(
                life(NEW_YEARS_EVE, of(31, 31, 4)),
                life(NEW_YEARS_EVE, of(31, Lifetime.NEVER, 6)),
                life(LAST_OF_JANUARY, of(28, 28, 3)),
                life(LAST_OF_JANUARY, of(28, Lifetime.NEVER, 17)));
    }

    @Test
    void solvedByHand() {
        SeasonFit fit = SeasonFitter.withOneBand().fit(byHand());
        double cold = 4 / 310.0;
        double other = 3 / 560.0;
        double both = 7 / 870.0;
        assertThat(fit.converged()).as(fit.report().cause()).isTrue();
        assertThat(fit.factor().value()).isCloseTo(cold / other, within(1e-9));
        assertThat(fit.factor().value()).isCloseTo(2.4086, within(5e-5));
        assertThat(fit.logLikelihood()).isCloseTo(4 * Math.log(cold) + 3 * Math.log(other) - 7, within(1e-9));
        double ratio = 2 * (4 * Math.log(cold / both) + 3 * Math.log(other / both));
        // 2 (4 x .47231 - 3 x .40674), the square of 1.1567; the table of the normal law has .8749 at 1.15, .8770 at
        // 1.16.
        assertThat(ratio).isCloseTo(1.3380, within(5e-5));
        assertThat(fit.pValue()).isCloseTo(2 * (1 - 0.8763), within(2e-4));
        assertThat(fit.failuresCold()).isCloseTo(4, within(1e-12));
        assertThat(fit.yearsCold()).isCloseTo(310 / 365.25, within(1e-12));
        assertThat(fit.yearsOther()).isCloseTo(560 / 365.25, within(1e-12));
        for (double limit : new double[] {fit.factor().lower(), fit.factor().upper()}) {
            // With the factor held the rate of other days is 7 / (560 + 310 factor).
            double rate = 7 / (560 + 310 * limit);
            double held = 7 * Math.log(rate) + 4 * Math.log(limit) - 7;
            assertThat(2 * (fit.logLikelihood() - held)).isCloseTo(3.841459, within(1e-4));
        }
        assertThat(fit.report().gradientNorm()).isLessThan(1e-8);
        assertThat(fit.report().lives()).isEqualTo(30);
        assertThat(fit.report().failures()).isEqualTo(7);
        assertThat(fit.report().exposure()).isEqualTo(870);
    }

    /** With no effect of the cold the likelihood is that of the piecewise-exponential law, intervals and all. */
    @Test
    void aFactorOfOneIsTheLikelihoodWithoutASeason() {
        List<SeasonLife> lives = simulated(7, 400, 1, 1);
        double[] edges = {0, 700, 1500, Double.POSITIVE_INFINITY};
        var plain = PiecewiseExponentialFitter.withBands(700, 1500)
                .fit(LifetimeSample.of(lives.stream().map(SeasonLife::life).toList()));
        double[] point = new double[4];
        for (int j = 0; j < 3; j++) {
            point[j] = Math.log(plain.bands().get(j).rate().value());
        }
        Objective.Evaluation at = new SeasonLikelihood(edges, lives, List.of("")).at(point);
        assertThat(at.value()).isCloseTo(plain.logLikelihood(), within(1e-8));
        for (int j = 0; j < 3; j++) {
            assertThat(at.gradient()[j]).isCloseTo(0, within(1e-5));
        }
    }

    @Test
    void derivativesAgreeWithDifferences() {
        List<SeasonLife> lives = new ArrayList<>(simulated(3, 60, 1.5, 1));
        simulated(4, 60, 1.5, 2).forEach(l -> lives.add(new SeasonLife(l.life(), l.fittedOn(), JANUARY, "b")));
        lives.addAll(byHand());
        double[] edges = {0, 25, 900, Double.POSITIVE_INFINITY};
        SeasonLikelihood likelihood = new SeasonLikelihood(edges, lives, List.of("", "b"));
        double[] point = {-7, -6.5, -7.5, 0.3, 0.4};
        Objective.Evaluation at = likelihood.at(point);
        double h = 1e-5;
        for (int i = 0; i < point.length; i++) {
            double[] up = point.clone();
            double[] down = point.clone();
            up[i] += h;
            down[i] -= h;
            Objective.Evaluation above = likelihood.at(up);
            Objective.Evaluation below = likelihood.at(down);
            double slope = (above.value() - below.value()) / (2 * h);
            assertThat(at.gradient()[i]).isCloseTo(slope, within(1e-6 * Math.max(1, Math.abs(slope))));
            for (int j = 0; j < point.length; j++) {
                double curve = (above.gradient()[j] - below.gradient()[j]) / (2 * h);
                assertThat(at.hessian()[j][i]).isCloseTo(curve, within(1e-6 * Math.max(1, Math.abs(curve))));
            }
        }
    }

    @Test
    void findsTheFactorThatLivesWereSimulatedWith() {
        SeasonFit fit = SeasonFitter.withDefaults().fit(simulated(21, 4000, 1.8, 1));
        assertThat(fit.converged()).as(fit.report().cause()).isTrue();
        assertThat(fit.bands()).isEqualTo(6);
        double error = Math.log(fit.factor().upper() / fit.factor().lower()) / (2 * 1.96);
        assertThat(error).isLessThan(0.12);
        assertThat(Math.abs(Math.log(fit.factor().value() / 1.8))).isLessThan(4 * error);
        assertThat(fit.factor().lower()).isGreaterThan(1);
        assertThat(fit.pValue()).isLessThan(1e-3);
    }

    @Test
    void findsNoneWhereThereIsNone() {
        SeasonFit fit = SeasonFitter.withDefaults().fit(simulated(22, 4000, 1, 1));
        assertThat(fit.factor().lower()).isLessThan(1);
        assertThat(fit.factor().upper()).isGreaterThan(1);
        assertThat(fit.pValue()).isGreaterThan(0.05);
    }

    /** A cold place whose sensors fail three times as often for another reason must not make the cold look guilty. */
    @Test
    void placesAreComparedWithinThemselves() {
        ColdMonths long_ = ColdMonths.of(Month.NOVEMBER, Month.DECEMBER, Month.JANUARY, Month.FEBRUARY, Month.MARCH);
        List<SeasonLife> lives = new ArrayList<>();
        simulated(31, 1500, 1, 1).forEach(l -> lives.add(new SeasonLife(l.life(), l.fittedOn(), JANUARY, "mild")));
        simulated(32, 1500, 1, 3).forEach(l -> lives.add(new SeasonLife(l.life(), l.fittedOn(), long_, "harsh")));
        SeasonFit within = SeasonFitter.withDefaults().fit(lives);
        SeasonFit across = SeasonFitter.withDefaults()
                .fit(lives.stream()
                        .map(l -> new SeasonLife(l.life(), l.fittedOn(), l.cold(), "all"))
                        .toList());
        assertThat(within.strata()).isEqualTo(2);
        assertThat(within.factor().lower()).isLessThan(1);
        assertThat(within.factor().upper()).isGreaterThan(1);
        assertThat(across.factor().lower()).isGreaterThan(1.2);
    }

    @Test
    void weightsAreRepetitionAndOrderNeverMatters() {
        List<SeasonLife> lives = simulated(5, 300, 1.5, 1);
        List<SeasonLife> twice = new ArrayList<>(lives);
        twice.addAll(lives);
        Collections.shuffle(twice, new Random(1));
        List<SeasonLife> weighed = lives.stream()
                .map(l -> new SeasonLife(
                        new Lifetime(
                                l.life().entry(), l.life().lower(), l.life().upper(), 2),
                        l.fittedOn(),
                        l.cold(),
                        l.stratum()))
                .toList();
        SeasonFitter fitter = SeasonFitter.withOneBand();
        SeasonFit one = fitter.fit(twice);
        SeasonFit two = fitter.fit(weighed);
        assertThat(one.factor().value()).isCloseTo(two.factor().value(), within(1e-9));
        assertThat(one.factor().upper()).isCloseTo(two.factor().upper(), within(1e-4));
        assertThat(one.logLikelihood()).isCloseTo(two.logLikelihood(), within(1e-8));
    }

    @Test
    void whatCannotBeToldIsNamed() {
        SeasonFitter fitter = SeasonFitter.withDefaults();
        assertThat(fitter.fit(List.of()).report().status()).isEqualTo(FitStatus.NO_LIVES);
        assertThat(fitter.fit(List.of(life(NEW_YEARS_EVE, of(31, Lifetime.NEVER, 6))))
                        .report()
                        .status())
                .isEqualTo(FitStatus.NO_FAILURES);
        assertThat(fitter.fit(List.of(life(NEW_YEARS_EVE, of(31, 40, 1))))
                        .report()
                        .status())
                .isEqualTo(FitStatus.ONE_FAILURE);

        ColdMonths always = ColdMonths.of(Month.values());
        SeasonFit cold = fitter.fit(byHand().stream()
                .map(l -> new SeasonLife(l.life(), l.fittedOn(), always, ""))
                .toList());
        assertThat(cold.report().status()).isEqualTo(FitStatus.COLLINEAR_COLUMN);
        assertThat(cold.report().column()).isEqualTo("cold months");
        assertThat(cold.report().cause()).startsWith("every month");
        assertThat(cold.factor().value()).isNaN();
        assertThatThrownBy(() -> cold.clock(JANUARY)).hasMessageContaining("factor");

        SeasonFit apart = fitter.fit(byHand().subList(1, 4));
        assertThat(apart.report().status()).isEqualTo(FitStatus.SEPARATED_COLUMN);
        assertThat(apart.report().cause()).contains("no failure can have fallen in cold months");

        // Failures may lie in January or right after; nobody is seen to live through any other day.
        SeasonFit runsAway = SeasonFitter.withOneBand()
                .fit(List.of(life(NEW_YEARS_EVE, of(0, 40, 30)), life(LAST_OF_JANUARY, of(300, Lifetime.NEVER, 20))));
        assertThat(runsAway.report().status()).isEqualTo(FitStatus.SEPARATED_COLUMN);
        assertThat(runsAway.report().cause()).contains("cold months");
    }

    @Test
    void aGroupWithoutAFailureIsLeftOutAndCounted() {
        List<SeasonLife> lives = new ArrayList<>(byHand());
        lives.add(new SeasonLife(of(500, Lifetime.NEVER, 9), NEW_YEARS_EVE, JANUARY, "never failed"));
        SeasonFit fit = SeasonFitter.withOneBand().fit(lives);
        assertThat(fit.leftOut()).isEqualTo(9);
        assertThat(fit.strata()).isEqualTo(1);
        assertThat(fit.factor().value()).isCloseTo(560 * 4 / (310 * 3.0), within(1e-9));
    }

    /**
     * Lives with a Weibull hazard of shape 2 and scale 2,000 days times {@code level}, times {@code factor} in January and
     * February, entered at an age of up to 3 years, visited every 20 to 120 days for 4 years.
     */
    static List<SeasonLife> simulated(long seed, int lives, double factor, double level) {
        ColdMonths cold = ColdMonths.of(Month.JANUARY, Month.FEBRUARY);
        Random random = new Random(seed);
        List<SeasonLife> all = new ArrayList<>();
        while (all.size() < lives) {
            LocalDate fitted = LocalDate.of(2015, 1, 1).plusDays(random.nextInt(365));
            int entry = random.nextInt(1096);
            double target = -Math.log(random.nextDouble());
            double sum = 0;
            int age = 0;
            while (sum < target && age < 6000) {
                double hazard = level * 2 * (age + 0.5) / (2000.0 * 2000.0);
                sum += cold.contains(fitted.plusDays(age + 1)) ? factor * hazard : hazard;
                age++;
            }
            if (age <= entry) {
                continue;
            }
            int seen = entry;
            int last = entry + 1461;
            int next = entry;
            while (next < age && next < last) {
                seen = next;
                next += 20 + random.nextInt(101);
            }
            boolean failed = next >= age && next < last;
            if (failed || seen > entry) {
                Lifetime life = failed ? Lifetime.interval(entry, seen, next) : Lifetime.censored(entry, seen);
                all.add(new SeasonLife(life, fitted, cold, ""));
            }
        }
        return all;
    }
}
