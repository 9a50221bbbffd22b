package sensorrounds.regression;

/**
 * One parameter as a function of the others, such that a quantity keeps the value it is given: the parameter itself, log
 * shape at a point, or b0 = target - sum b_j v_j - w exp(-log shape), which holds the quantile at a point whose standard
 * quantile is w (w = 0: the scale).
 */
final class LinearElimination implements Elimination {
    private final int place;
    private final double[] linear;
    private final double w;
    private final double[] shapeRow;

    /** All but the first in the order of all parameters, that of the eliminated one unused. */
    private LinearElimination(int place, double[] linear, double w, double[] shapeRow) {
        this.place = place;
        this.linear = linear;
        this.w = w;
        this.shapeRow = shapeRow;
    }

    static LinearElimination fixed(int place) {
        return new LinearElimination(place, null, 0, null);
    }

    static LinearElimination scale(Design design, double[] x, double w) {
        double[] linear = new double[design.parameters()];
        System.arraycopy(design.standardised(x)[0], 0, linear, 0, design.scales());
        return new LinearElimination(0, linear, w, shapeRow(design, x));
    }

    static LinearElimination shape(Design design, double[] x) {
        return new LinearElimination(design.scales(), shapeRow(design, x), 0, null);
    }

    static double[] shapeRow(Design design, double[] x) {
        double[] row = new double[design.parameters()];
        System.arraycopy(design.standardised(x)[1], 0, row, design.scales(), design.shapes());
        return row;
    }

    @Override
    public int place() {
        return place;
    }

    @Override
    public double[] complete(double target, double[] free) {
        double[] all = new double[free.length + 1];
        System.arraycopy(free, 0, all, 0, place);
        System.arraycopy(free, place, all, place + 1, free.length - place);
        double value = target;
        for (int i = 0; i < free.length && linear != null; i++) {
            value -= linear[index(i)] * free[i];
        }
        all[place] = value - bend(free);
        return all;
    }

    /** w exp(-log shape). */
    private double bend(double[] free) {
        if (w == 0) {
            return 0;
        }
        double logShape = 0;
        for (int i = 0; i < free.length; i++) {
            logShape += shapeRow[index(i)] * free[i];
        }
        return w * Math.exp(-logShape);
    }

    @Override
    public double[] slope(double target, double[] free) {
        double[] slope = new double[free.length];
        double bend = bend(free);
        for (int i = 0; i < free.length && linear != null; i++) {
            slope[i] = -linear[index(i)] + (w == 0 ? 0 : bend * shapeRow[index(i)]);
        }
        return slope;
    }

    @Override
    public double[][] curvature(double target, double[] free) {
        double[][] curvature = new double[free.length][free.length];
        double bend = bend(free);
        for (int i = 0; i < free.length && w != 0; i++) {
            for (int j = 0; j < free.length; j++) {
                curvature[i][j] = -bend * shapeRow[index(i)] * shapeRow[index(j)];
            }
        }
        return curvature;
    }

    private int index(int free) {
        return free < place ? free : free + 1;
    }
}
