package sensorrounds.regression;

import java.io.Serializable;

/**
 * What must be known of the lives before a fit: counts, means, co-moments and ranges of the covariates. A state that
 * parts add up to. Means and co-moments are merged as by Chan, Golub and LeVeque (1983), Am. Statist. 37:242-247.
 *
 * <p>Covariates count only for lives under observation for some time, since the others have no part in the likelihood.
 */
public final class LifeSummary implements Serializable {
    private double lives;
    private double failures;
    private double survivedTime;
    private double exposure;
    private double weight;
    private double sumLogExit;
    private double failureLogExit;
    private final double[] mean;
    private final double[][] moment;
    private final double[][] ranges;

    private enum Among {
        ALL,
        FAILED,
        SURVIVED
    }

    private LifeSummary(int columns) {
        mean = new double[columns];
        moment = new double[columns][columns];
        ranges = new double[2 * Among.values().length][columns];
        for (int i = 0; i < ranges.length; i++) {
            java.util.Arrays.fill(ranges[i], i % 2 == 0 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY);
        }
    }

    /** The summary of no lives with so many covariates. */
    public static LifeSummary empty(int columns) {
        return new LifeSummary(columns);
    }

    /** Adds one life, ages as logarithms. */
    public void add(double logEntry, double logLower, double logUpper, double w, double[] x) {
        lives += w;
        boolean failed = logUpper < Double.POSITIVE_INFINITY;
        boolean survived = logLower > logEntry;
        if (!failed && !survived) {
            return;
        }
        double lower = Math.exp(logLower);
        double exit = failed ? lower + (Math.exp(logUpper) - lower) / 2 : lower;
        failures += failed ? w : 0;
        survivedTime += survived ? w : 0;
        exposure += w * (exit - Math.exp(logEntry));
        sumLogExit += w * Math.log(exit);
        failureLogExit += failed ? w * Math.log(exit) : 0;
        range(Among.ALL, x);
        if (failed) {
            range(Among.FAILED, x);
        }
        if (survived) {
            range(Among.SURVIVED, x);
        }
        double share = w / (weight + w);
        double[] d = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            d[i] = x[i] - mean[i];
            for (int j = 0; j <= i; j++) {
                moment[i][j] += weight * share * d[i] * d[j];
            }
        }
        for (int i = 0; i < x.length; i++) {
            mean[i] += share * d[i];
        }
        weight += w;
    }

    private void range(Among among, double[] x) {
        double[] low = ranges[2 * among.ordinal()];
        double[] high = ranges[2 * among.ordinal() + 1];
        for (int i = 0; i < x.length; i++) {
            low[i] = Math.min(low[i], x[i]);
            high[i] = Math.max(high[i], x[i]);
        }
    }

    /** Adds the lives of another part. */
    public void add(LifeSummary other) {
        lives += other.lives;
        failures += other.failures;
        survivedTime += other.survivedTime;
        exposure += other.exposure;
        sumLogExit += other.sumLogExit;
        failureLogExit += other.failureLogExit;
        for (int r = 0; r < ranges.length; r++) {
            for (int i = 0; i < mean.length; i++) {
                ranges[r][i] = r % 2 == 0
                        ? Math.min(ranges[r][i], other.ranges[r][i])
                        : Math.max(ranges[r][i], other.ranges[r][i]);
            }
        }
        if (other.weight > 0) {
            double share = other.weight / (weight + other.weight);
            double[] d = new double[mean.length];
            for (int i = 0; i < mean.length; i++) {
                d[i] = other.mean[i] - mean[i];
                for (int j = 0; j <= i; j++) {
                    moment[i][j] += other.moment[i][j] + weight * share * d[i] * d[j];
                }
            }
            for (int i = 0; i < mean.length; i++) {
                mean[i] += share * d[i];
            }
            weight += other.weight;
        }
    }

    double lives() {
        return lives;
    }

    double failures() {
        return failures;
    }

    /** Weight of the lives that were under observation for some time, or failed in it. */
    double observed() {
        return weight;
    }

    double exposure() {
        return exposure;
    }

    /** Mean log age at exit, of failures where there are any. */
    double centre() {
        return failures > 0 ? failureLogExit / failures : sumLogExit / weight;
    }

    double mean(int column) {
        return mean[column];
    }

    /** Weighted mean product of the deviations of two columns. */
    double covariance(int i, int j) {
        return moment[Math.max(i, j)][Math.min(i, j)] / weight;
    }

    double lowest(int column) {
        return ranges[0][column];
    }

    double highest(int column) {
        return ranges[1][column];
    }

    /**
     * Whether the likelihood rises without end along this column: every failure has its lowest (or highest) value while
     * others survived with another, or all that survived any time have it while others failed with another.
     */
    boolean separates(int column) {
        return failures > 0 && atOneEnd(Among.FAILED, column) || survivedTime > 0 && atOneEnd(Among.SURVIVED, column);
    }

    private boolean atOneEnd(Among among, int column) {
        double low = ranges[2 * among.ordinal()][column];
        double high = ranges[2 * among.ordinal() + 1][column];
        return low == high && lowest(column) < highest(column) && (low == lowest(column) || low == highest(column));
    }
}
