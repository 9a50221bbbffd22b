package sensorrounds.cox;

import java.util.Arrays;

/**
 * The failures at one age of one stratum, and the rows at risk there. Under Efron's rule the d of them are d steps, each
 * with its own mean and covariance of the covariates; under Breslow's all steps are alike.
 */
final class TiedFailures {
    private final RiskSweep sweep;
    private final int p;
    private final RunningSums atRisk;
    private final RunningSums failing;
    private int[] rows = new int[8];
    private int count;
    private double weight;
    private int stratum;
    private double age;

    /** Of the step in use. */
    private double gone;

    private double total;
    private final double[] mean;

    TiedFailures(RiskSweep sweep, RunningSums atRisk) {
        this.sweep = sweep;
        this.atRisk = atRisk;
        p = sweep.columns();
        failing = new RunningSums(length(p));
        mean = new double[p];
    }

    /** Entries of a set of sums: total, p first and p(p+1)/2 second moments. */
    static int length(int p) {
        return 1 + p + p * (p + 1) / 2;
    }

    void startAt(int newStratum, double newAge) {
        stratum = newStratum;
        age = newAge;
        if (count > 0) {
            failing.clear();
        }
        count = 0;
        weight = 0;
    }

    void add(int row, double risk) {
        if (count == rows.length) {
            rows = Arrays.copyOf(rows, 2 * count);
        }
        rows[count++] = row;
        weight += sweep.sample().weight(row);
        sweep.addTo(failing, row, risk);
    }

    /** Moves to a step at which this share of the tied risk has left. */
    void moveTo(double shareGone) {
        gone = shareGone;
        total = atRisk.get(0) - gone * failing.get(0);
        for (int j = 0; j < p; j++) {
            mean[j] = (atRisk.get(1 + j) - gone * failing.get(1 + j)) / total;
        }
    }

    int stratum() {
        return stratum;
    }

    double age() {
        return age;
    }

    int count() {
        return count;
    }

    int row(int k) {
        return rows[k];
    }

    /** Weight of each step: the mean weight of the failures. */
    double stepWeight() {
        return weight / count;
    }

    /** Sum of weight times risk score at this step. */
    double total() {
        return total;
    }

    /** Mean of a standardised covariate at this step, by risk. */
    double mean(int j) {
        return mean[j];
    }

    /** Covariance of two standardised covariates at this step, by risk; k <= j. */
    double covariance(int j, int k) {
        int index = 1 + p + j * (j + 1) / 2 + k;
        return (atRisk.get(index) - gone * failing.get(index)) / total - mean[j] * mean[k];
    }
}
