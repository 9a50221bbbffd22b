package sensorrounds.recurrence;

import java.util.Arrays;
import java.util.List;
import sensorrounds.recurrence.GammaPoissonFit.Cell;

/**
 * Gibbs sampling of masses on given rates: each unit's point given the masses, then the masses given how many units lie at each
 * point (Tanner and Wong 1987, J. Am. Stat. Assoc. 82:528; Diebolt and Robert 1994, J. R. Stat. Soc. B 56:363).
 */
final class MassSampler {
    private static final double LEAST = 1e-300;
    /** Units of a cell up to which they are dealt out one by one. */
    private static final long FEW = 16;

    private final long[] units;
    private final double[][] chance;
    private final double[] prior;
    private final Dice dice;
    private final double[] mass;

    MassSampler(List<Cell> cells, double[] rate, double[] prior, Dice dice) {
        units = cells.stream().mapToLong(Cell::units).toArray();
        chance = cells.stream()
                .map(c -> RateLaws.chances(rate, c.count(), c.exposure()))
                .toArray(double[][]::new);
        this.prior = prior;
        this.dice = dice;
        double all = Arrays.stream(prior).sum();
        mass = Arrays.stream(prior).map(p -> p / all).toArray();
    }

    /**
     * Steps of EM (Laird 1978, J. Am. Stat. Assoc. 73:805) towards the masses that make the counts most likely: chains of large
     * fleets move slowly, and should not have far to go.
     */
    void climb(int times) {
        double units = Arrays.stream(this.units).sum();
        for (int step = 0; step < times; step++) {
            double[] at = new double[mass.length];
            for (int i = 0; i < chance.length; i++) {
                double all = 0;
                for (int j = 0; j < mass.length; j++) {
                    all += mass[j] * chance[i][j];
                }
                for (int j = 0; j < mass.length; j++) {
                    at[j] += this.units[i] * mass[j] * chance[i][j] / all;
                }
            }
            for (int j = 0; j < mass.length; j++) {
                mass[j] = Math.max(LEAST, at[j] / units);
            }
        }
    }

    double[] masses() {
        return mass.clone();
    }

    void step(int times) {
        for (int i = 0; i < times; i++) {
            step();
        }
    }

    private void step() {
        int points = mass.length;
        double[] weight = new double[points];
        double[] at = new double[points];
        for (int i = 0; i < units.length; i++) {
            double all = 0;
            for (int j = 0; j < points; j++) {
                weight[j] = mass[j] * chance[i][j];
                all += weight[j];
            }
            spread(units[i], weight, all, at);
        }
        double sum = 0;
        for (int j = 0; j < points; j++) {
            mass[j] = Math.max(LEAST, dice.gamma(prior[j] + at[j]));
            sum += mass[j];
        }
        for (int j = 0; j < points; j++) {
            mass[j] /= sum;
        }
    }

    /** Deals units out to points by their weights; few one by one, many point by point. */
    private void spread(long all, double[] weight, double sum, double[] at) {
        if (all <= FEW) {
            for (long unit = 0; unit < all; unit++) {
                at[dice.pick(weight, sum)]++;
            }
            return;
        }
        long left = all;
        double rest = sum;
        for (int j = 0; j < weight.length - 1 && left > 0; j++) {
            if (weight[j] > 0) {
                long here = rest > weight[j] ? dice.binomial(left, weight[j] / rest) : left;
                at[j] += here;
                left -= here;
                rest -= weight[j];
            }
        }
        at[weight.length - 1] += left;
    }
}
