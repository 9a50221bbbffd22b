package sensorrounds.regression;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.Objective;
import sensorrounds.numeric.PositiveDefinite;

/**
 * How far leaving out one cluster after the other moves the maximum, for errors that allow for likeness within clusters. With A the
 * information, A_g and s_g the part and the score of cluster g, a Newton step from the maximum of all goes by -(A - A_g)^-1 s_g;
 * where that is short it stands, where it is long, which takes a cluster that carries much, the others are fitted anew. The variance
 * is (G - 1) / G times the sum over the G clusters of the outer product of these moves. The plain sandwich of Liang and Zeger
 * (1986), Biometrika 73:13-22, takes A^-1 s_g and is too small where clusters are few or one of them carries much. Sources: the
 * jackknife by clusters, Bell and McCaffrey (2002), Survey Methodology 28:169-181, section 4; its one-step form and Student's t of
 * G - 1 degrees: MacKinnon, Nielsen and Webb (2023), J. Applied Econometrics 38:671-694, section 2 (both from memory).
 *
 * <p>A state that parts add up to, as long as no cluster is in two of them.
 */
public final class ClusterSteps implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int NONE = -1;
    /** A step longer than two errors of the information, squared, goes beyond where one tells the maximum. */
    private static final double FAR = 4;
    /** Share of the information on a parameter under which the rest counts as rounding. */
    private static final double ROUNDING = 1e-9;

    private static final int MAX_ITERATIONS = 30;

    private final double[][] information;
    private final double[][] products;
    private final List<CovariateLives> far = new ArrayList<>();
    private long clusters;
    private int loose = NONE;

    /** Nothing yet; the information is that of all lives, in standardised parameters. */
    public ClusterSteps(double[][] information) {
        this.information = information;
        products = new double[information.length][information.length];
    }

    /** Adds the clusters of another part, taken at the same maximum. */
    public void add(ClusterSteps other) {
        clusters += other.clusters;
        far.addAll(other.far);
        for (int i = 0; i < products.length; i++) {
            for (int j = 0; j < products.length; j++) {
                products[i][j] += other.products[i][j];
            }
        }
    }

    /** One cluster, by the derivatives of its log-likelihood at the maximum. */
    void add(Supplier<CovariateLives> cluster, Objective.Evaluation at) {
        clusters++;
        double[][] others = information.clone();
        for (int i = 0; i < others.length; i++) {
            others[i] = others[i].clone();
            for (int j = 0; j < others.length; j++) {
                others[i][j] += at.hessian()[i][j];
            }
        }
        double[] step =
                sound(others) ? PositiveDefinite.of(others).orElseThrow().solve(at.gradient()) : null;
        if (step == null || square(step) > FAR) {
            far.add(cluster.get());
        } else {
            addProduct(step);
        }
    }

    /** Fits the others anew where a step was long. */
    void settle(LifeSource lives, Design design, double[] point) {
        for (CovariateLives cluster : far) {
            Objective all = LifeRegression.objective(lives, design);
            Objective others = at -> less(all.at(at), FivePoints.at(cluster, design, at));
            Maximum maximum = NewtonMaximizer.withDefaults()
                    .withMaxIterations(MAX_ITERATIONS)
                    .maximize(others, point);
            double[][] left = negative(maximum.at().hessian());
            if (maximum.outcome() == Maximum.Outcome.CONVERGED && sound(left)) {
                double[] step = point.clone();
                for (int i = 0; i < step.length; i++) {
                    step[i] -= maximum.point()[i];
                }
                addProduct(step);
            } else if (loose == NONE) {
                loose = firstLoose(left);
            }
        }
        far.clear();
    }

    private static Objective.Evaluation less(Objective.Evaluation all, Objective.Evaluation cluster) {
        int n = all.gradient().length;
        double[] gradient = new double[n];
        double[][] hessian = new double[n][n];
        for (int i = 0; i < n; i++) {
            gradient[i] = all.gradient()[i] - cluster.gradient()[i];
            for (int j = 0; j < n; j++) {
                hessian[i][j] = all.hessian()[i][j] - cluster.hessian()[i][j];
            }
        }
        return new Objective.Evaluation(all.value() - cluster.value(), gradient, hessian);
    }

    static double[][] negative(double[][] matrix) {
        return Arrays.stream(matrix)
                .map(row -> Arrays.stream(row).map(x -> -x).toArray())
                .toArray(double[][]::new);
    }

    /** Whether the information left determines every parameter, and not by rounding alone. */
    private boolean sound(double[][] left) {
        return PositiveDefinite.of(surely(left, left.length)).isPresent();
    }

    private double[][] surely(double[][] left, int size) {
        double[][] corner = new double[size][];
        for (int i = 0; i < size; i++) {
            corner[i] = Arrays.copyOf(left[i], size);
            corner[i][i] -= ROUNDING * information[i][i];
        }
        return corner;
    }

    /** The first parameter that is not determined beside those before it; the last where all are but the search failed. */
    private int firstLoose(double[][] left) {
        int size = 1;
        while (size < left.length && PositiveDefinite.of(surely(left, size)).isPresent()) {
            size++;
        }
        return size - 1;
    }

    private void addProduct(double[] step) {
        for (int i = 0; i < step.length; i++) {
            for (int j = 0; j < step.length; j++) {
                products[i][j] += step[i] * step[j];
            }
        }
    }

    private double square(double[] step) {
        double[] times = Design.times(information, step);
        double sum = 0;
        for (int i = 0; i < step.length; i++) {
            sum += step[i] * times[i];
        }
        return sum;
    }

    long clusters() {
        return clusters;
    }

    /** Once settled: a parameter that the others do not determine without one of the clusters; empty when there is none. */
    Optional<Integer> loose() {
        return loose == NONE ? Optional.empty() : Optional.of(loose);
    }

    /** Once settled: the jackknife covariance of the standardised parameters. */
    double[][] covariance() {
        int n = products.length;
        double[][] covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                covariance[i][j] = products[i][j] * (clusters - 1) / clusters;
            }
        }
        return covariance;
    }
}
