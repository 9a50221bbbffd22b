package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.List;
import sensorrounds.recurrence.GammaPoissonFit.Cell;

/**
 * Laws of rates that the counts of a cohort allow: draws from their posterior, so that what is not known of the peers is in every
 * statement about one of them. A law has masses on a grid of rates, even in the logarithm. Beforehand the masses are Dirichlet,
 * centred half on the gamma law fitted to the counts ({@link GammaPoissonFit}) and half on the even grid, with the weight of
 * 1, 5 and 25 vehicles in turn (Liu 1996, Ann. Statist. 24:911; finite form: Ishwaran and Zarepour 2002, Canad. J. Statist.
 * 30:269). Each chain starts afresh with the grid moved by a fraction of its step, since a law on few points is too sure of
 * itself beside the place where a point happens to lie.
 */
final class RateLaws implements Serializable {
    private static final int POINTS = 24;
    private static final double[] PRIOR_VEHICLES = {1, 5, 25};
    private static final int CHAINS = 9;
    private static final int LAWS_OF_CHAIN = 30;
    private static final int CLIMB = 60;
    private static final int BEFORE_FIRST = 60;
    private static final int BETWEEN = 2;
    /** Lowest rate of the grid, of the mean over all; highest at least, of the same. */
    private static final double LOWEST = 0.05;

    private static final double HIGHEST = 3;
    private static final long SEED = 20_040_155;

    /** Laws drawn from the posterior. */
    static final int LAWS = CHAINS * LAWS_OF_CHAIN;

    private final double logStep;
    /** Rates by chain and point. */
    private final double[][] rates;
    /** Masses by law and point. */
    private final double[][] masses;
    /** By law. */
    private final double[] means;

    private RateLaws(double logStep) {
        this.logStep = logStep;
        rates = new double[CHAINS][POINTS];
        masses = new double[LAWS][];
        means = new double[LAWS];
    }

    /**
     * Draws laws; the same cells in the same order give the same laws.
     *
     * @param cells with an event among them
     */
    static RateLaws draw(List<Cell> cells, double shape, double mean) {
        double top = HIGHEST * mean;
        for (Cell c : cells) {
            top = Math.max(top, c.count() / c.exposure());
        }
        RateLaws laws = new RateLaws(Math.log(top / (LOWEST * mean)) / (POINTS - 1));
        GammaDistribution centre = new GammaDistribution(shape, shape / mean);
        Dice dice = new Dice(SEED);
        for (int chain = 0; chain < CHAINS; chain++) {
            double[] rate = laws.rates[chain];
            double moved = (chain + 0.5) / CHAINS - 0.5;
            for (int j = 0; j < POINTS; j++) {
                rate[j] = LOWEST * mean * Math.exp((j + moved) * laws.logStep);
            }
            double[] prior = laws.prior(centre, rate, PRIOR_VEHICLES[chain % PRIOR_VEHICLES.length]);
            MassSampler sampler = new MassSampler(cells, rate, prior, dice);
            sampler.climb(CLIMB);
            sampler.step(BEFORE_FIRST);
            for (int k = 0; k < LAWS_OF_CHAIN; k++) {
                sampler.step(BETWEEN);
                double[] mass = sampler.masses();
                laws.masses[chain * LAWS_OF_CHAIN + k] = mass;
                for (int j = 0; j < POINTS; j++) {
                    laws.means[chain * LAWS_OF_CHAIN + k] += mass[j] * rate[j];
                }
            }
        }
        return laws;
    }

    private double[] prior(GammaDistribution centre, double[] rate, double vehicles) {
        double[] prior = new double[POINTS];
        double under = 0;
        for (int j = 0; j < POINTS; j++) {
            double upTo = j == POINTS - 1 ? 1 : centre.cdf(rate[j] * Math.exp(logStep / 2));
            prior[j] = vehicles * (0.5 * (upTo - under) + 0.5 / POINTS);
            under = upTo;
        }
        return prior;
    }

    /**
     * A vehicle with so many events in so many years, under each law.
     *
     * @param perYear mean rate over the laws
     * @param noWorse by law, the chance that its rate is not above the law's mean
     */
    record Judged(double perYear, double[] noWorse) {
        double meanNoWorse() {
            double sum = 0;
            for (double p : noWorse) {
                sum += p;
            }
            return sum / noWorse.length;
        }
    }

    Judged judge(int events, double years) {
        double[] noWorse = new double[LAWS];
        double perYear = 0;
        for (int chain = 0; chain < CHAINS; chain++) {
            double[] rate = rates[chain];
            double[] chance = chances(rate, events, years);
            for (int law = chain * LAWS_OF_CHAIN; law < (chain + 1) * LAWS_OF_CHAIN; law++) {
                double all = 0;
                double upTo = 0;
                double mean = 0;
                for (int j = 0; j < POINTS; j++) {
                    double p = masses[law][j] * chance[j];
                    all += p;
                    mean += p * rate[j];
                    upTo += p * shareUpTo(rate[j], means[law]);
                }
                noWorse[law] = upTo / all;
                perYear += mean / all;
            }
        }
        return new Judged(perYear / LAWS, noWorse);
    }

    /** How much of a point's step, in the logarithm, lies at or under a rate. */
    private double shareUpTo(double point, double rate) {
        return Math.max(0, Math.min(1, Math.log(rate / point) / logStep + 0.5));
    }

    /** Chances of a count by point, the largest being 1. */
    static double[] chances(double[] rate, int events, double years) {
        double[] chance = new double[rate.length];
        double most = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < rate.length; j++) {
            chance[j] = events * Math.log(rate[j]) - rate[j] * years;
            most = Math.max(most, chance[j]);
        }
        for (int j = 0; j < rate.length; j++) {
            chance[j] = Math.exp(chance[j] - most);
        }
        return chance;
    }
}
