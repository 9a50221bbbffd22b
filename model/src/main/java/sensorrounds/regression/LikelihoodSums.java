package sensorrounds.regression;

import java.io.Serializable;
import sensorrounds.numeric.Objective;

/**
 * Log-likelihood, gradient and Hessian summed over lives: a state that parts add up to, in any grouping and order, to
 * the last few bits, since what rounding drops is carried along (Neumaier 1974, Z. Angew. Math. Mech. 54:39-51).
 */
public final class LikelihoodSums implements Serializable {
    private final int parameters;
    private final double[] sum;
    private final double[] carry;

    /** Nothing yet, for so many parameters. */
    public LikelihoodSums(int parameters) {
        this.parameters = parameters;
        sum = new double[1 + parameters + parameters * (parameters + 1) / 2];
        carry = new double[sum.length];
    }

    /** Adds the lives of another part. */
    public void add(LikelihoodSums other) {
        for (int i = 0; i < sum.length; i++) {
            add(i, other.sum[i]);
            carry[i] += other.carry[i];
        }
    }

    private void add(int place, double x) {
        double s = sum[place] + x;
        carry[place] += Math.abs(sum[place]) >= Math.abs(x) ? (sum[place] - s) + x : (x - s) + sum[place];
        sum[place] = s;
    }

    void addValue(double x) {
        add(0, x);
    }

    void addGradient(int i, double x) {
        add(1 + i, x);
    }

    /** Only for j <= i. */
    void addHessian(int i, int j, double x) {
        add(1 + parameters + i * (i + 1) / 2 + j, x);
    }

    double value() {
        return at(0);
    }

    double gradient(int i) {
        return at(1 + i);
    }

    double hessian(int i, int j) {
        int a = Math.max(i, j);
        return at(1 + parameters + a * (a + 1) / 2 + Math.min(i, j));
    }

    /** An overflow spoils the carry; the plain sum then says what is wrong. */
    private double at(int place) {
        return Double.isFinite(sum[place]) ? sum[place] + carry[place] : sum[place];
    }

    Objective.Evaluation evaluation() {
        double[] gradient = new double[parameters];
        double[][] hessian = new double[parameters][parameters];
        for (int i = 0; i < parameters; i++) {
            gradient[i] = gradient(i);
            for (int j = 0; j < parameters; j++) {
                hessian[i][j] = hessian(i, j);
            }
        }
        return new Objective.Evaluation(value(), gradient, hessian);
    }
}
