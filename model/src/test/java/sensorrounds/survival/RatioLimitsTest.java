package sensorrounds.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class RatioLimitsTest {
    private static final LifetimeSample EIGHT = LifetimeSample.of(List.of(
            Lifetime.exact(0, 900),
            Lifetime.interval(200, 1100, 1300),
            Lifetime.exact(500, 1700),
            Lifetime.interval(0, 300, 600),
            new Lifetime(100, 1500, Lifetime.NEVER, 4),
            new Lifetime(0, 2000, Lifetime.NEVER, 2)));

    private static double profile(double fixed, boolean shapeFixed) {
        LifeLikelihood likelihood = new LifeLikelihood(StandardLaw.SMALLEST_EXTREME_VALUE, EIGHT, 0);
        double best = Double.NEGATIVE_INFINITY;
        for (double free = shapeFixed ? 5 : -4; free < (shapeFixed ? 30 : 4); free += 0.0005) {
            best = Math.max(best, (shapeFixed ? likelihood.at(free, fixed) : likelihood.at(fixed, free)).value);
        }
        return best;
    }

    /** By search on a grid: at each limit the best of the other parameter has lost half of 3.8415. */
    @Test
    void atTheLimitsHalfTheQuantileIsLost() {
        ParametricFit fit = ParametricFitter.of(Family.WEIBULL).fit(EIGHT);
        RatioLimits limits = RatioLimits.of(EIGHT, fit);
        LifeLikelihood likelihood = new LifeLikelihood(StandardLaw.SMALLEST_EXTREME_VALUE, EIGHT, 0);
        double highest = likelihood.at(
                        Math.log(fit.scale().value()), Math.log(fit.shape().value()))
                .value;
        for (double shape : new double[] {limits.shape().lower(), limits.shape().upper()}) {
            assertThat(highest - profile(Math.log(shape), true)).isCloseTo(3.841458820694124 / 2, within(1e-4));
        }
        assertThat(highest - profile(Math.log(limits.scale().lower()), false))
                .isCloseTo(3.841458820694124 / 2, within(1e-4));
        assertThat(limits.scale().upper()).isGreaterThan(fit.scale().upper());
        assertThat(limits.quantileOf(1 - Math.exp(-1)).lower())
                .isCloseTo(limits.scale().lower(), within(1e-3));
    }

    /** The ten failures of NIST/SEMATECH 8.4.1.3 (par-nist-intervals): shape and age by which a tenth failed, profile limits by R. */
    @Test
    void agreesWithTheReference() {
        ReferenceCases.Case nist = ReferenceCases.of("parametric.json").stream()
                .filter(c -> c.id().equals("par-nist-intervals"))
                .findFirst()
                .orElseThrow();
        double[] time = nist.column("time", Double.NaN);
        LifetimeSample sample = ReferenceCases.rightCensored(
                new double[time.length], time, nist.column("status", Double.NaN), nist.column("n", Double.NaN));
        ParametricFit fit = ParametricFitter.of(Family.WEIBULL).fit(sample);
        RatioLimits limits = RatioLimits.of(sample, fit);
        for (int side = 0; side < 2; side++) {
            double shape = side == 0 ? limits.shape().lower() : limits.shape().upper();
            Estimate tenth = fit.quantile(0.1, sample);
            nist.check("shape", shape, nist.expected().get("shape_profile").get(side));
            nist.check(
                    "tenth",
                    side == 0 ? tenth.lower() : tenth.upper(),
                    nist.expected().get("B10_profile").get(side));
        }
    }

    @Test
    void aFitWithManyFailuresKeepsItsNormalLimits() {
        LifetimeSample many = LifetimeSample.of(List.of(
                new Lifetime(0, 100, 100, 30), new Lifetime(0, 300, 300, 30), new Lifetime(0, 400, Lifetime.NEVER, 5)));
        ParametricFit fit = ParametricFitter.of(Family.WEIBULL).fit(many);
        assertThat(WeibullLimits.of(many, fit).scaleDays()).isEqualTo(fit.life().scaleLimits());
        assertThat(fit.quantile(0.5, many)).isEqualTo(fit.quantile(0.5));
        ParametricFit few = ParametricFitter.of(Family.WEIBULL).fit(EIGHT);
        assertThat(few.quantile(0.5, EIGHT).upper())
                .isNotEqualTo(few.quantile(0.5).upper());
    }

    @Test
    void limitsThatAreNotSetAreNamed() {
        double nan = Double.NaN;
        assertThat(new WeibullLimits(new double[] {nan, 3}, new double[] {800, nan}).open())
                .isEqualTo("the failures set no lower limit to the shape and no upper limit to the scale");
        assertThat(new WeibullLimits(new double[] {1, 3}, new double[] {800, 900}).open())
                .isEmpty();
    }
}
