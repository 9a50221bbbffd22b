package sensorrounds.regression;

import java.io.Serializable;
import java.util.List;

/**
 * How standardised parameters stand to covariates in their own units. Log scale is centre + b0 + sum b_j v_j and log
 * shape g0 + sum g_j u_j, where v and u are covariates less their mean over their standard deviation. Parameters come in
 * the order b, g, then that of the law of W.
 */
public final class Design implements Serializable {
    private final LifeFamily family;
    private final List<String> names;
    private final int[] shapeColumns;
    private final double centre;
    private final double[] mean;
    private final double[] perDeviation;

    Design(LifeFamily family, List<String> names, int[] shapeColumns, LifeSummary summary) {
        this.family = family;
        this.names = List.copyOf(names);
        this.shapeColumns = shapeColumns.clone();
        this.centre = summary.centre();
        mean = new double[names.size()];
        perDeviation = new double[names.size()];
        for (int i = 0; i < mean.length; i++) {
            mean[i] = summary.mean(i);
            perDeviation[i] = 1 / Math.sqrt(summary.covariance(i, i));
        }
    }

    LifeFamily family() {
        return family;
    }

    /** Log age that stands for 0. */
    double centre() {
        return centre;
    }

    /** Parameters of log scale, the constant included. */
    int scales() {
        return 1 + mean.length;
    }

    /** Parameters of log shape, the constant included; 0 when the family has none. */
    int shapes() {
        return family.hasShape() ? 1 + shapeColumns.length : 0;
    }

    /** Parameters with analytic derivatives: all but that of the law of W. */
    public int slopes() {
        return scales() + shapes();
    }

    int parameters() {
        return slopes() + (family.hasOwnParameter() ? 1 : 0);
    }

    /** Fills the standardised covariates of the scale and of the shape, each beginning with 1. */
    void standardise(double[] x, int offset, double[] v, double[] u) {
        v[0] = 1;
        for (int i = 0; i < mean.length; i++) {
            v[i + 1] = (x[offset + i] - mean[i]) * perDeviation[i];
        }
        if (u.length > 0) {
            u[0] = 1;
            for (int i = 1; i < u.length; i++) {
                u[i] = v[1 + shapeColumns[i - 1]];
            }
        }
    }

    /** Standardised covariates of the scale and of the shape at a point. */
    double[][] standardised(double[] x) {
        requireColumns(x);
        double[] v = new double[scales()];
        double[] u = new double[shapes()];
        standardise(x, 0, v, u);
        return new double[][] {v, u};
    }

    /** Rows that take coefficients to log scale, log shape and the parameter of the law at a point. */
    double[][] rowsAt(double[] x) {
        requireColumns(x);
        double[][] rows = new double[3][parameters()];
        for (int i = 0; i < parameters(); i++) {
            rows[part(i).ordinal()][i] = column(i) < 0 ? 1 : x[column(i)];
        }
        return rows;
    }

    private void requireColumns(double[] x) {
        if (x.length != names.size()) {
            throw new IllegalArgumentException(
                    "a point needs a value for each of " + names + ", not " + x.length + " values");
        }
    }

    Coefficient.Part part(int parameter) {
        return parameter < scales()
                ? Coefficient.Part.LOG_SCALE
                : parameter < slopes() ? Coefficient.Part.LOG_SHAPE : Coefficient.Part.LAW;
    }

    /** Name of the covariate a parameter belongs to, or of the constant. */
    String name(int parameter) {
        int column = column(parameter);
        return column < 0 ? Coefficient.CONSTANT : names.get(column);
    }

    /** Column of the covariate, or -1. */
    int column(int parameter) {
        if (parameter < scales()) {
            return parameter - 1;
        }
        int inShape = parameter - scales();
        return parameter >= slopes() || inShape == 0 ? -1 : shapeColumns[inShape - 1];
    }

    /** Standardised parameter times this is the coefficient in the covariate's own unit. */
    double unit(int parameter) {
        int column = column(parameter);
        return column < 0 ? 1 : perDeviation[column];
    }

    /** Matrix that takes standardised parameters to coefficients, but for the centre of log time. */
    double[][] toOwnUnits() {
        int n = parameters();
        double[][] t = new double[n][n];
        for (int i = 0; i < n; i++) {
            t[i][i] = unit(i);
            int column = column(i);
            if (column >= 0) {
                t[i < scales() ? 0 : scales()][i] = -mean[column] * perDeviation[column];
            }
        }
        return t;
    }

    /** Coefficients in the covariates' own units. */
    double[] inOwnUnits(double[] point) {
        double[] raw = times(toOwnUnits(), point);
        raw[0] += centre;
        return raw;
    }

    static double[] times(double[][] matrix, double[] vector) {
        double[] result = new double[matrix.length];
        for (int i = 0; i < result.length; i++) {
            for (int j = 0; j < vector.length; j++) {
                result[i] += matrix[i][j] * vector[j];
            }
        }
        return result;
    }

    /** A V A'. */
    static double[][] sandwich(double[][] a, double[][] v) {
        int n = a.length;
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) {
            double[] row = new double[v.length];
            for (int j = 0; j < v.length; j++) {
                for (int k = 0; k < v.length; k++) {
                    row[j] += a[i][k] * v[k][j];
                }
            }
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < v.length; k++) {
                    result[i][j] += row[k] * a[j][k];
                }
            }
        }
        return result;
    }
}
