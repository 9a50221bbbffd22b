package sensorrounds.survival;

import java.util.Locale;
import java.util.Random;
import sensorrounds.coverage.FleetSeed;

/**
 * How often limits from a declared prior and few failures hold the truth, and how often those of a fit alone do. Argument: fleets
 * (default 1000). Results are in docs/coverage.md.
 */
public final class WeakPriorCoverage {
    private static final double YEAR = 365.25;
    private static final double AGE = 5 * YEAR;

    private WeakPriorCoverage() {}

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        System.out.println("truth well inside the prior");
        study(fleets, 61_000_000, Truth.WELL_INSIDE);
        System.out.println("truth drawn from the prior");
        study(fleets, 67_000_000, Truth.FROM_PRIOR);
    }

    private enum Truth {
        WELL_INSIDE,
        /** Another law for each fleet: then the limits of the posterior hold as often as they say, if they are right. */
        FROM_PRIOR;

        WeibullLife law(Random random) {
            if (this == WELL_INSIDE) {
                return new WeibullLife(2.5, 7 * YEAR, 0, 0, 0);
            }
            WeakPrior prior = WeakPrior.declared();
            double median = Math.exp(prior.centre() + prior.spread() * random.nextGaussian());
            double shape = Math.exp(prior.shapeCentre() + prior.shapeSpread() * random.nextGaussian());
            return new WeibullLife(shape, median * Math.pow(Math.log(2), -1 / shape), 0, 0, 0);
        }
    }

    private static void study(int fleets, long seed, Truth truth) {
        int[][] held = new int[2][3];
        double[][] width = new double[2][1];
        double failures = 0;
        int without = 0;
        for (int fleet = 0; fleet < fleets; fleet++) {
            Random random = new Random(FleetSeed.of(seed, fleet, 200));
            WeibullLife real = truth.law(random);
            double survival = real.survival(AGE);
            double within = real.failureWithin(AGE, YEAR, 1);
            LifetimeSample sample = WeakPriorFitterTest.fleet(random, 200, 3, 0.7, real);
            failures += sample.failures();
            WeakPriorFit fit = WeakPriorFitter.of(WeakPrior.declared()).fit(sample);
            count(
                    held[0],
                    real.shape(),
                    survival,
                    within,
                    fit.survival(AGE),
                    fit.shape(),
                    fit.failureWithin(AGE, YEAR));
            WeibullLife law = fit.life();
            count(
                    held[1],
                    real.shape(),
                    survival,
                    within,
                    of(law.survivalLimits(AGE)),
                    of(law.shapeLimits()),
                    of(law.failureWithinLimits(AGE, YEAR, 1, 0)));
            width[0][0] += fit.survival(AGE).upper() - fit.survival(AGE).lower();
            ParametricFit plain = ParametricFitter.of(Family.WEIBULL).fit(sample);
            without += plain.converged() ? 0 : 1;
            width[1][0] += plain.converged()
                    ? plain.survival(AGE).upper() - plain.survival(AGE).lower()
                    : 1;
        }
        System.out.printf(
                Locale.ROOT,
                "%d fleets, %.1f failures on average; no fit alone in %d; mean width of S(5 y): prior %.2f, alone %.2f%n",
                fleets,
                failures / fleets,
                without,
                width[0][0] / fleets,
                width[1][0] / fleets);
        for (int i = 0; i < 2; i++) {
            System.out.printf(
                    Locale.ROOT,
                    "| %s | S(5) %.1f %% | shape %.1f %% | within a year at 5 %.1f %% |%n",
                    i == 0 ? "posterior" : "law in use",
                    100.0 * held[i][0] / fleets,
                    100.0 * held[i][1] / fleets,
                    100.0 * held[i][2] / fleets);
        }
    }

    private static Estimate of(double[] limits) {
        return new Estimate(Double.NaN, limits[0], limits[1]);
    }

    private static void count(
            int[] held,
            double shape,
            double survival,
            double within,
            Estimate ofSurvival,
            Estimate ofShape,
            Estimate ofWithin) {
        held[0] += survival >= ofSurvival.lower() && survival <= ofSurvival.upper() ? 1 : 0;
        held[1] += ofShape.lower() <= shape && ofShape.upper() >= shape ? 1 : 0;
        held[2] += within >= ofWithin.lower() && within <= ofWithin.upper() ? 1 : 0;
    }
}
