package sensorrounds.cox;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Goes through the failures of a sample from the oldest age to the youngest, stratum by stratum, keeping the sums over the
 * rows at risk up to date: a row joins at its exit and leaves at its entry. One pass costs O((n + d) p^2) after sorting.
 * Covariates are centred and scaled inside, and the largest risk score is 1.
 */
final class RiskSweep {
    private final CoxSample sample;
    private final int p;
    private final double[] centre;
    private final double[] scale;
    /** Covariates in standard units, row by row. */
    private final double[] z;
    /** Rows of each stratum by falling exit, and by falling entry. */
    private final int[][] byExit;

    private final int[][] byEntry;

    RiskSweep(CoxSample sample) {
        this.sample = sample;
        p = sample.columns().size();
        int n = sample.size();
        centre = new double[p];
        scale = new double[p];
        z = new double[n * p];
        for (int j = 0; j < p; j++) {
            centre[j] = sample.mean(j);
            double spread = sample.spread(j, centre[j]);
            // Rounding of the mean makes a constant look as if it varied.
            scale[j] = spread > 1e-12 * Math.abs(centre[j]) ? spread : 1;
            for (int i = 0; i < n; i++) {
                z[i * p + j] = (sample.covariate(i, j) - centre[j]) / scale[j];
            }
        }
        int[] strata =
                IntStream.range(0, n).map(sample::stratum).sorted().distinct().toArray();
        byExit = new int[strata.length][];
        byEntry = new int[strata.length][];
        int[] counts = new int[strata.length];
        for (int i = 0; i < n; i++) {
            counts[Arrays.binarySearch(strata, sample.stratum(i))]++;
        }
        for (int s = 0; s < strata.length; s++) {
            byExit[s] = new int[counts[s]];
        }
        Arrays.fill(counts, 0);
        for (int i = 0; i < n; i++) {
            int s = Arrays.binarySearch(strata, sample.stratum(i));
            byExit[s][counts[s]++] = i;
        }
        for (int s = 0; s < strata.length; s++) {
            byEntry[s] = sorted(byExit[s], Comparator.comparingDouble((Integer i) -> -sample.entry(i)));
            byExit[s] = sorted(byExit[s], Comparator.comparingDouble((Integer i) -> -sample.exit(i)));
        }
    }

    private static int[] sorted(int[] rows, Comparator<Integer> order) {
        return Arrays.stream(rows)
                .boxed()
                .sorted(order)
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** Told of the failures at one age of one stratum. */
    @FunctionalInterface
    interface Visitor {
        void failuresAt(TiedFailures tied);
    }

    CoxSample sample() {
        return sample;
    }

    int columns() {
        return p;
    }

    double standard(int row, int column) {
        return z[row * p + column];
    }

    double centre(int column) {
        return centre[column];
    }

    double scale(int column) {
        return scale[column];
    }

    /**
     * beta'z of every row.
     *
     * @param relative less the largest of them
     * @param largest the largest
     */
    record Scores(double[] relative, double largest) {}

    /** Scores at beta per standard unit. */
    Scores scores(double[] beta) {
        double[] eta = new double[sample.size()];
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < eta.length; i++) {
            for (int j = 0; j < p; j++) {
                eta[i] += beta[j] * z[i * p + j];
            }
            largest = Math.max(largest, eta[i]);
        }
        for (int i = 0; i < eta.length; i++) {
            eta[i] -= largest;
        }
        return new Scores(eta, largest);
    }

    /** One pass. The object handed to the visitor is used again for the next age. */
    void forEach(Scores scores, Visitor visitor) {
        double[] risk = new double[scores.relative().length];
        for (int i = 0; i < risk.length; i++) {
            risk[i] = sample.weight(i) * Math.exp(scores.relative()[i]);
        }
        for (int s = 0; s < byExit.length; s++) {
            sweep(s, risk, visitor);
        }
    }

    private void sweep(int s, double[] risk, Visitor visitor) {
        RunningSums atRisk = new RunningSums(TiedFailures.length(p));
        TiedFailures tied = new TiedFailures(this, atRisk);
        int inside = 0;
        int out = 0;
        for (int i = 0; i < byExit[s].length; ) {
            double age = sample.exit(byExit[s][i]);
            tied.startAt(sample.stratum(byExit[s][i]), age);
            for (; out < byEntry[s].length && sample.entry(byEntry[s][out]) >= age; out++) {
                addTo(atRisk, byEntry[s][out], -risk[byEntry[s][out]]);
                inside--;
            }
            if (inside == 0) {
                atRisk.clear();
            }
            for (; i < byExit[s].length && sample.exit(byExit[s][i]) == age; i++) {
                int row = byExit[s][i];
                addTo(atRisk, row, risk[row]);
                inside++;
                if (sample.failed(row)) {
                    tied.add(row, risk[row]);
                }
            }
            if (tied.count() > 0) {
                visitor.failuresAt(tied);
            }
        }
    }

    /** Adds r, r z and the lower triangle of r z z'. */
    void addTo(RunningSums sums, int row, double r) {
        int next = 0;
        sums.add(next++, r);
        for (int j = 0; j < p; j++) {
            sums.add(next++, r * z[row * p + j]);
        }
        for (int j = 0; j < p; j++) {
            double rz = r * z[row * p + j];
            for (int k = 0; k <= j; k++) {
                sums.add(next++, rz * z[row * p + k]);
            }
        }
    }
}
