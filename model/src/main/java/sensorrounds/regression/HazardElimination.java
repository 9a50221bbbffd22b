package sensorrounds.regression;

/**
 * Log scale of a Weibull law as a function of its shape and the other parameters, such that the cumulative hazard between
 * two ages keeps the value whose log is given: with A(shape) = to^shape - from^shape, log scale = (log A - target) /
 * shape. From age 0 on that holds the survival at an age.
 */
final class HazardElimination implements Elimination {
    private final double logFrom;
    private final double logTo;
    private final double[] scaleRow;
    private final double[] shapeRow;

    /** Ages in the lives' own unit, {@code from} 0 or more. */
    HazardElimination(Design design, double[] x, double from, double to) {
        logFrom = Math.log(from) - design.centre();
        logTo = Math.log(to) - design.centre();
        scaleRow = new double[design.parameters()];
        System.arraycopy(design.standardised(x)[0], 0, scaleRow, 0, design.scales());
        shapeRow = LinearElimination.shapeRow(design, x);
    }

    @Override
    public int place() {
        return 0;
    }

    @Override
    public double[] complete(double target, double[] free) {
        double[] all = new double[free.length + 1];
        System.arraycopy(free, 0, all, 1, free.length);
        all[0] = bend(target, free)[0];
        for (int i = 0; i < free.length; i++) {
            all[0] -= scaleRow[i + 1] * free[i];
        }
        return all;
    }

    /** (log A - target) / shape with its first and second derivative in log shape. */
    private double[] bend(double target, double[] free) {
        double logShape = 0;
        for (int i = 0; i < free.length; i++) {
            logShape += shapeRow[i + 1] * free[i];
        }
        double shape = Math.exp(logShape);
        double logA = shape * logTo;
        double first = logTo;
        double second = 0;
        if (logFrom > Double.NEGATIVE_INFINITY) {
            // log A = shape logTo + log(1 - q), q = (from / to)^shape.
            double gap = logFrom - logTo;
            double rest = -Math.expm1(shape * gap);
            double ratio = (1 - rest) / rest;
            logA += Math.log(rest);
            first -= gap * ratio;
            second -= gap * gap * ratio / rest;
        }
        double value = (logA - target) / shape;
        return new double[] {value, first - value, shape * second - first + value};
    }

    @Override
    public double[] slope(double target, double[] free) {
        double bend = bend(target, free)[1];
        double[] slope = new double[free.length];
        for (int i = 0; i < free.length; i++) {
            slope[i] = bend * shapeRow[i + 1] - scaleRow[i + 1];
        }
        return slope;
    }

    @Override
    public double[][] curvature(double target, double[] free) {
        double bend = bend(target, free)[2];
        double[][] curvature = new double[free.length][free.length];
        for (int i = 0; i < free.length; i++) {
            for (int j = 0; j < free.length; j++) {
                curvature[i][j] = bend * shapeRow[i + 1] * shapeRow[j + 1];
            }
        }
        return curvature;
    }
}
