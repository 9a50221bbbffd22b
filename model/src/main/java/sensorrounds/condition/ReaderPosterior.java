package sensorrounds.condition;

import java.util.List;

/**
 * What is known of one reader's chance to wake a sound sensor on an ordinary wheel in ordinary weather: its beta prior
 * times the likelihood of its tries, each cell's log odds shifted by a known effect. Without a shift this is the
 * conjugate beta law exactly; with one, the posterior's mean and variance are integrated and carried by the beta law
 * that has them (Gelman et al. 2013, Bayesian Data Analysis, sections 2.4 and 10.1).
 */
final class ReaderPosterior {
    /** Tries in a cell whose log odds lie {@code shift} above the reader's own. */
    record ShiftedTries(double shift, WakeCells.Tries tries) {}

    private static final int NODES = 2001;
    /** Half-width of the grid in curvature standard deviations: wide enough for the skew of a beta on the logit scale. */
    private static final double WIDTH = 30;

    private ReaderPosterior() {}

    static BetaDistribution of(BetaDistribution prior, List<ShiftedTries> cells) {
        boolean shifted =
                cells.stream().anyMatch(c -> c.shift() != 0 && c.tries().total() > 0);
        return shifted ? integrated(prior, cells) : conjugate(prior, cells);
    }

    private static BetaDistribution conjugate(BetaDistribution prior, List<ShiftedTries> cells) {
        WakeCells.Tries all =
                cells.stream().map(ShiftedTries::tries).reduce(new WakeCells.Tries(0, 0), WakeCells.Tries::plus);
        return new BetaDistribution(prior.alpha() + all.successes(), prior.beta() + all.failures());
    }

    private static BetaDistribution integrated(BetaDistribution prior, List<ShiftedTries> cells) {
        double mode = mode(prior, cells);
        double deviation = 1 / Math.sqrt(-slope(prior, cells, mode)[1]);
        double peak = logDensity(prior, cells, mode);
        double step = 2 * WIDTH * deviation / (NODES - 1);
        double sum = 0;
        double first = 0;
        double second = 0;
        for (int i = 0; i < NODES; i++) {
            double theta = mode - WIDTH * deviation + i * step;
            double weight = Math.exp(logDensity(prior, cells, theta) - peak);
            double p = Odds.chance(theta);
            sum += weight;
            first += weight * p;
            second += weight * p * p;
        }
        double mean = first / sum;
        return BetaDistribution.ofMoments(mean, second / sum - mean * mean);
    }

    /** Log density of the log odds, up to a constant; concave. */
    private static double logDensity(BetaDistribution prior, List<ShiftedTries> cells, double theta) {
        double sum = prior.alpha() * Odds.logChance(theta) + prior.beta() * Odds.logChance(-theta);
        for (ShiftedTries c : cells) {
            sum += c.tries().successes() * Odds.logChance(theta + c.shift())
                    + c.tries().failures() * Odds.logChance(-theta - c.shift());
        }
        return sum;
    }

    private static double[] slope(BetaDistribution prior, List<ShiftedTries> cells, double theta) {
        double size = prior.alpha() + prior.beta();
        double p = Odds.chance(theta);
        double first = prior.alpha() - size * p;
        double second = -size * p * (1 - p);
        for (ShiftedTries c : cells) {
            double q = Odds.chance(theta + c.shift());
            first += c.tries().successes() - c.tries().total() * q;
            second -= c.tries().total() * q * (1 - q);
        }
        return new double[] {first, second};
    }

    /** Root of a falling function between bounds that hold it, by halving. */
    private static double mode(BetaDistribution prior, List<ShiftedTries> cells) {
        double low = -40;
        double high = 40;
        while (high - low > 1e-12) {
            double middle = 0.5 * (low + high);
            if (slope(prior, cells, middle)[0] > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }
}
