package sensorrounds.stock;

import java.io.Serializable;
import java.util.Arrays;

/**
 * Demand of many sensors as a mergeable state: how many there are at each failure probability and each uncertainty, both
 * rounded to a fine grid, so that a fleet fits into a few thousand counts and any order and any partitioning give the
 * same bytes.
 *
 * <p>Grids: the cumulative hazard c = -ln(1 - p) in steps of 1/512 of its log, so a probability is off by at most 0.1 %
 * of itself and, errors of both signs evening out, an expected demand by far less; the standard deviation of the log
 * hazard in steps of 1/256.
 *
 * <p>The hazards of all sensors are multiplied by exp(sd z) with one common standard normal z, the error of the fit, over
 * a grid of 13 z from -3.6 to 3.6 weighted by the normal density (trapezoid rule). Given z the count is Poisson-binomial.
 * A plug-in interval, z = 0 alone, is too narrow however large the fleet. Source: Tian, Meng, Nordman and Meeker (2020),
 * arXiv 2007.08648; Escobar and Meeker (1999).
 */
public final class DemandState implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double STEPS_PER_LOG = 512;
    private static final double STEPS_PER_SD = 256;
    private static final int SD_VALUES = 1 << 12;
    /** log c of -40 and up: a probability of 4e-18 and less counts as that. */
    private static final double LEAST_LOG = -40;

    private static final long CERTAIN = Long.MAX_VALUE;
    private static final int NODES = 13;
    private static final double LAST_NODE = 3.6;

    private long[] cells = new long[0];
    private long[] counts = new long[0];
    private int sensors;
    private int planned;

    /** Adds one sensor's share. */
    public void add(DemandUnit unit) {
        add(unit.probability(), unit.sdLogHazard());
        planned += unit.kind() == DemandUnit.Kind.PLANNED ? 1 : 0;
    }

    /**
     * Adds one sensor that may fail.
     *
     * @throws IllegalArgumentException when the probability is not in 0..1 or the standard deviation is negative
     */
    public void add(double probability, double sdLogHazard) {
        if (!(probability >= 0 && probability <= 1 && sdLogHazard >= 0)) {
            throw new IllegalArgumentException("demand of a sensor with probability " + probability
                    + " and log-hazard deviation " + sdLogHazard + "; needs 0 to 1, and 0 or more");
        }
        sensors++;
        if (probability > 0) {
            put(cell(probability, sdLogHazard), 1);
        }
    }

    /** Adds all of another state to this one. */
    public DemandState merge(DemandState other) {
        sensors += other.sensors;
        planned += other.planned;
        for (int i = 0; i < other.cells.length; i++) {
            put(other.cells[i], other.counts[i]);
        }
        return this;
    }

    /** Sensors added. */
    public int sensors() {
        return sensors;
    }

    /** Those of them that are planned. */
    public int planned() {
        return planned;
    }

    /** Predictive distribution of the demand. */
    public CountDistribution finish() {
        if (Arrays.stream(cells).allMatch(c -> c == CERTAIN || c % SD_VALUES == 0)) {
            return given(0);
        }
        CountDistribution[] parts = new CountDistribution[NODES];
        double[] weights = new double[NODES];
        double total = 0;
        for (int i = 0; i < NODES; i++) {
            double z = -LAST_NODE + 2 * LAST_NODE * i / (NODES - 1);
            parts[i] = given(z);
            weights[i] = Math.exp(-z * z / 2);
            total += weights[i];
        }
        for (int i = 0; i < NODES; i++) {
            weights[i] /= total;
        }
        return CountDistribution.mixture(parts, weights);
    }

    /** Distribution with the error of the fit at z; z = 0 is the plug-in distribution. */
    CountDistribution given(double z) {
        double[] probabilities = new double[cells.length];
        for (int i = 0; i < cells.length; i++) {
            if (cells[i] == CERTAIN) {
                probabilities[i] = 1;
            } else {
                double log = LEAST_LOG + (cells[i] / SD_VALUES) / STEPS_PER_LOG;
                double sd = (cells[i] % SD_VALUES) / STEPS_PER_SD;
                probabilities[i] = -Math.expm1(-Math.exp(log + sd * z));
            }
        }
        return PoissonBinomial.of(probabilities, counts);
    }

    private static long cell(double probability, double sdLogHazard) {
        double hazard = -Math.log1p(-probability);
        if (hazard == Double.POSITIVE_INFINITY) {
            return CERTAIN;
        }
        long log = Math.round((Math.max(LEAST_LOG, Math.log(hazard)) - LEAST_LOG) * STEPS_PER_LOG);
        long sd = Math.min(SD_VALUES - 1, Math.round(sdLogHazard * STEPS_PER_SD));
        return log * SD_VALUES + sd;
    }

    private void put(long cell, long count) {
        int at = Arrays.binarySearch(cells, cell);
        if (at >= 0) {
            counts[at] += count;
            return;
        }
        int to = -at - 1;
        cells = inserted(cells, to, cell);
        counts = inserted(counts, to, count);
    }

    private static long[] inserted(long[] values, int at, long value) {
        long[] longer = new long[values.length + 1];
        System.arraycopy(values, 0, longer, 0, at);
        longer[at] = value;
        System.arraycopy(values, at, longer, at + 1, values.length - at);
        return longer;
    }
}
