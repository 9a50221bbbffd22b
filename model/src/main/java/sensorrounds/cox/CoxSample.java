package sensorrounds.cox;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Rows for a proportional hazards regression: each was under observation at ages in (entry, exit] with the covariates it
 * shows, and failed at {@code exit} or left sight there. One unit may have several rows that follow each other
 * (covariates that change with age). What a covariate says must have been known at the row's entry: a battery report
 * enters from the visit after it on, or a symptom is taken for a cause. Immutable.
 */
public final class CoxSample {
    private final List<String> columns;
    private final double[] entry;
    private final double[] exit;
    private final boolean[] failed;
    private final double[][] covariates;
    private final double[] weight;
    private final int[] stratum;
    private final int[] cluster;

    private CoxSample(
            List<String> columns,
            double[] entry,
            double[] exit,
            boolean[] failed,
            double[][] covariates,
            double[] weight,
            int[] stratum,
            int[] cluster) {
        this.columns = columns;
        this.entry = entry;
        this.exit = exit;
        this.failed = failed;
        this.covariates = covariates;
        this.weight = weight;
        this.stratum = stratum;
        this.cluster = cluster;
    }

    /**
     * Rows of weight 1 in one stratum, each its own cluster.
     *
     * @param columns names of the covariates, at least one, no two equal
     * @param entry age from which the row is under observation, from 0 up
     * @param exit age at which it failed or left sight, above its entry
     * @param covariates one array per row, in the order of the columns
     * @throws IllegalArgumentException naming the row, and the column where it is one
     */
    public static CoxSample of(
            List<String> columns, double[] entry, double[] exit, boolean[] failed, double[][] covariates) {
        int n = entry.length;
        if (columns.isEmpty() || columns.stream().distinct().count() < columns.size()) {
            throw new IllegalArgumentException("a regression needs columns, no two of one name, not " + columns);
        }
        if (exit.length != n || failed.length != n || covariates.length != n) {
            throw new IllegalArgumentException("rows need arrays of one length, not entry " + n + ", exit "
                    + exit.length + ", failed " + failed.length + ", covariates " + covariates.length);
        }
        double[][] copy = new double[n][];
        for (int i = 0; i < n; i++) {
            if (!(0 <= entry[i] && entry[i] < exit[i] && exit[i] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("row " + i + " was under observation for no time: entry " + entry[i]
                        + ", exit " + exit[i] + "; needs 0 <= entry < exit, finite");
            }
            if (covariates[i].length != columns.size()) {
                throw new IllegalArgumentException(
                        "row " + i + " has " + covariates[i].length + " covariates for the columns " + columns);
            }
            for (int j = 0; j < columns.size(); j++) {
                if (!Double.isFinite(covariates[i][j])) {
                    throw new IllegalArgumentException("row " + i + ", column " + columns.get(j) + ": "
                            + covariates[i][j] + " is no number; leave the row out or give the unknown its own column");
                }
            }
            copy[i] = covariates[i].clone();
        }
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        int[] own = new int[n];
        Arrays.setAll(own, i -> i);
        return new CoxSample(
                List.copyOf(columns), entry.clone(), exit.clone(), failed.clone(), copy, ones, new int[n], own);
    }

    /**
     * Rows counted this often. With {@link Ties#BRESLOW} that is the same as repeating them; with {@link Ties#EFRON} tied
     * failures share their mean weight, which is not (Therneau and Grambsch 2000, app. E.3).
     */
    public CoxSample withWeights(double[] weights) {
        requireLength("weights", weights.length);
        for (int i = 0; i < weights.length; i++) {
            if (!(weights[i] > 0 && weights[i] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("row " + i + " has weight " + weights[i] + "; needs one above 0");
            }
        }
        return new CoxSample(columns, entry, exit, failed, covariates, weights.clone(), stratum, cluster);
    }

    /** Rows are compared only within their stratum; each stratum has its own baseline hazard. */
    public CoxSample withStrata(int[] strata) {
        requireLength("strata", strata.length);
        return new CoxSample(columns, entry, exit, failed, covariates, weight, strata.clone(), cluster);
    }

    /** Rows that belong together for the robust errors: all of one vehicle, say. */
    public CoxSample withClusters(int[] clusters) {
        requireLength("clusters", clusters.length);
        return new CoxSample(columns, entry, exit, failed, covariates, weight, stratum, clusters.clone());
    }

    public List<String> columns() {
        return columns;
    }

    /** Number of rows. */
    public int size() {
        return entry.length;
    }

    public double entry(int row) {
        return entry[row];
    }

    public double exit(int row) {
        return exit[row];
    }

    public boolean failed(int row) {
        return failed[row];
    }

    public double covariate(int row, int column) {
        return covariates[row][column];
    }

    public double weight(int row) {
        return weight[row];
    }

    public int stratum(int row) {
        return stratum[row];
    }

    public int cluster(int row) {
        return cluster[row];
    }

    /** Rows that end in a failure, each counted once whatever its weight. */
    public int failures() {
        int count = 0;
        for (boolean f : failed) {
            count += f ? 1 : 0;
        }
        return count;
    }

    /** Weighted mean of a column. */
    double mean(int column) {
        return weighted(i -> covariates[i][column]);
    }

    /** Weighted standard deviation of a column; 0 where it does not vary. */
    double spread(int column, double mean) {
        return Math.sqrt(weighted(i -> {
            double d = covariates[i][column] - mean;
            return d * d;
        }));
    }

    private double weighted(IntToDoubleFunction value) {
        double sum = 0;
        double total = 0;
        for (int i = 0; i < size(); i++) {
            sum += weight[i] * value.applyAsDouble(i);
            total += weight[i];
        }
        return total > 0 ? sum / total : 0;
    }

    private void requireLength(String what, int length) {
        if (length != size()) {
            throw new IllegalArgumentException(length + " " + what + " for " + size() + " rows; one each is needed");
        }
    }
}
