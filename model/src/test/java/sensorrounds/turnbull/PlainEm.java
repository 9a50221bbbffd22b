package sensorrounds.turnbull;

import java.util.Arrays;
import sensorrounds.survival.LifetimeSample;

/**
 * Turnbull's (1976) self-consistency algorithm with the lives that truncation hid ("ghosts"), matrices and all: slow,
 * and written apart from the estimator under test, which it checks.
 */
final class PlainEm {
    private final boolean[][] canFail;
    private final boolean[][] wasSeen;
    private final double[] weight;
    private final double[] mass;

    PlainEm(LifetimeSample sample, double[] lower, double[] upper) {
        int n = sample.size();
        int m = lower.length;
        canFail = new boolean[n][m];
        wasSeen = new boolean[n][m];
        weight = new double[n];
        for (int i = 0; i < n; i++) {
            weight[i] = sample.weight(i);
            for (int j = 0; j < m; j++) {
                boolean exactHere = sample.exact(i) && lower[j] == upper[j] && lower[j] == sample.lower(i);
                boolean after = lower[j] > sample.lower(i) || lower[j] == sample.lower(i) && upper[j] > lower[j];
                canFail[i][j] = exactHere || after && upper[j] <= sample.upper(i);
                wasSeen[i][j] = lower[j] > sample.entry(i) || lower[j] == sample.entry(i) && upper[j] > lower[j];
            }
        }
        mass = new double[m];
        Arrays.fill(mass, 1.0 / m);
    }

    void iterate(int times) {
        for (int t = 0; t < times; t++) {
            double[] expected = new double[mass.length];
            for (int i = 0; i < weight.length; i++) {
                double inRange = sum(canFail[i]);
                double seen = sum(wasSeen[i]);
                for (int j = 0; j < mass.length; j++) {
                    expected[j] += canFail[i][j] ? weight[i] * mass[j] / inRange : 0;
                    expected[j] += wasSeen[i][j] ? 0 : weight[i] * mass[j] / seen;
                }
            }
            double total = Arrays.stream(expected).sum();
            for (int j = 0; j < mass.length; j++) {
                mass[j] = expected[j] / total;
            }
        }
    }

    double logLikelihood() {
        double value = 0;
        for (int i = 0; i < weight.length; i++) {
            value += weight[i] * Math.log(sum(canFail[i]) / sum(wasSeen[i]));
        }
        return value;
    }

    /** Survival after each interval. */
    double[] survival() {
        double[] survival = new double[mass.length];
        double left = 1;
        for (int j = 0; j < mass.length; j++) {
            left -= mass[j];
            survival[j] = left;
        }
        return survival;
    }

    private double sum(boolean[] over) {
        double sum = 0;
        for (int j = 0; j < mass.length; j++) {
            sum += over[j] ? mass[j] : 0;
        }
        return sum;
    }
}
