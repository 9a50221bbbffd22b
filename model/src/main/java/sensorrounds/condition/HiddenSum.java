package sensorrounds.condition;

import java.io.Serializable;
import sensorrounds.numeric.ExactSums;

/**
 * Log-likelihood of many sensors at one point with its derivatives and, on request, the outer products of each sensor's
 * scores: a mergeable state. Adding is exact, so any split of the fleet merged in any order gives the same bits. Not
 * thread safe.
 */
public final class HiddenSum implements Serializable {
    private static final long serialVersionUID = 1;

    /** What is added up. */
    public enum Detail {
        SLOPE,
        /** Also the outer products of the scores, which estimate the information (Berndt et al. 1974). */
        SLOPE_AND_CURVATURE
    }

    private final int size;
    private final Detail detail;
    private final ExactSums sums;
    private long sensors;
    private long failures;
    private long lowReports;
    private long impossible;

    HiddenSum(int size, Detail detail) {
        this.size = size;
        this.detail = detail;
        this.sums = new ExactSums(1 + size + (detail == Detail.SLOPE ? 0 : size * (size + 1) / 2));
    }

    /** The sum over these sensors at a point; the parts of a fleet are then merged. */
    public static HiddenSum of(Iterable<HiddenReadings> sensors, HiddenPoint at, Detail detail) {
        HiddenLikelihood likelihood = new HiddenLikelihood(at.tables());
        HiddenSum sum = new HiddenSum(at.parameters().size(), detail);
        for (HiddenReadings readings : sensors) {
            sum.add(readings, likelihood);
        }
        return sum;
    }

    private void add(HiddenReadings readings, HiddenLikelihood likelihood) {
        double value = likelihood.valueAndScore(readings);
        if (value == Double.NEGATIVE_INFINITY) {
            impossible++;
            return;
        }
        sensors++;
        failures += readings.failed() ? 1 : 0;
        for (int r = 0; r < readings.size(); r++) {
            lowReports +=
                    readings.code(r) >= 0 && HiddenReadings.isLow(readings.code(r) % HiddenReadings.BATTERIES) ? 1 : 0;
        }
        sums.add(0, value);
        double[] score = likelihood.score();
        int next = 1 + size;
        for (int i = 0; i < size; i++) {
            sums.add(1 + i, score[i]);
            for (int j = 0; detail == Detail.SLOPE_AND_CURVATURE && j <= i; j++) {
                sums.add(next++, score[i] * score[j]);
            }
        }
    }

    /** Takes another part of the fleet in. */
    public HiddenSum merge(HiddenSum other) {
        sums.merge(other.sums);
        sensors += other.sensors;
        failures += other.failures;
        lowReports += other.lowReports;
        impossible += other.impossible;
        return this;
    }

    /** Log-likelihood of the sensors whose readings can happen at this point. */
    public double value() {
        return sums.value(0);
    }

    public double[] gradient() {
        double[] gradient = new double[size];
        for (int i = 0; i < size; i++) {
            gradient[i] = sums.value(1 + i);
        }
        return gradient;
    }

    /** Sum of outer products of the scores; null when only the slope was asked for. */
    public double[][] curvature() {
        if (detail == Detail.SLOPE) {
            return null;
        }
        double[][] outer = new double[size][size];
        int next = 1 + size;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                outer[i][j] = sums.value(next++);
                outer[j][i] = outer[i][j];
            }
        }
        return outer;
    }

    /** Sensors whose readings can happen at this point. */
    public long sensors() {
        return sensors;
    }

    /** Sensors among them that failed by their histories. */
    public long failures() {
        return failures;
    }

    public long lowReports() {
        return lowReports;
    }

    /** Sensors whose readings cannot happen at this point; nothing else counts them. */
    public long impossible() {
        return impossible;
    }
}
