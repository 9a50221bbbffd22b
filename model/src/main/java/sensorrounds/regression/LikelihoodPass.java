package sensorrounds.regression;

/**
 * One pass over lives: sums their log-likelihood with gradient and Hessian in the standardised parameters. A life adds
 * its derivatives in log scale and log shape times the products of its covariates.
 */
public final class LikelihoodPass {
    private final Design design;
    private final LifeKernel kernel;
    private final double[] point;
    private final int scales;
    private final int shapes;
    private final double[] answer = new double[LifeKernel.SIZE];
    private final double[] v;
    private final double[] u;
    private double value;
    private final double[] byScale;
    private final double[] byShape;
    private final double[] scaleScale;
    private final double[] shapeScale;
    private final double[] shapeShape;

    /** A pass at this point, the parameter being that of the law of W. */
    public LikelihoodPass(Design design, double parameter, double[] point) {
        this.design = design;
        this.kernel = design.family().kernel(parameter);
        this.point = point;
        this.scales = design.scales();
        this.shapes = design.shapes();
        v = new double[scales];
        u = new double[shapes];
        byScale = new double[scales];
        byShape = new double[shapes];
        scaleScale = new double[scales * (scales + 1) / 2];
        shapeScale = new double[shapes * scales];
        shapeShape = new double[shapes * (shapes + 1) / 2];
    }

    /** Adds one life, ages as logarithms, its covariates in their own units from the offset on. */
    public void add(double logEntry, double logLower, double logUpper, double w, double[] x, int offset) {
        design.standardise(x, offset, v, u);
        double m = design.centre();
        for (int i = 0; i < scales; i++) {
            m += point[i] * v[i];
        }
        double k = 0;
        for (int i = 0; i < shapes; i++) {
            k += point[scales + i] * u[i];
        }
        kernel.at(logEntry, logLower, logUpper, m, k, answer);
        value += w * answer[LifeKernel.VALUE];
        double dm = w * answer[LifeKernel.M];
        double dmm = w * answer[LifeKernel.MM];
        int place = 0;
        for (int i = 0; i < scales; i++) {
            byScale[i] += dm * v[i];
            double row = dmm * v[i];
            for (int j = 0; j <= i; j++) {
                scaleScale[place++] += row * v[j];
            }
        }
        double dk = w * answer[LifeKernel.K];
        double dmk = w * answer[LifeKernel.MK];
        double dkk = w * answer[LifeKernel.KK];
        int crossed = 0;
        place = 0;
        for (int i = 0; i < shapes; i++) {
            byShape[i] += dk * u[i];
            double row = dmk * u[i];
            for (int j = 0; j < scales; j++) {
                shapeScale[crossed++] += row * v[j];
            }
            row = dkk * u[i];
            for (int j = 0; j <= i; j++) {
                shapeShape[place++] += row * u[j];
            }
        }
    }

    /** What was added up. */
    public LikelihoodSums sums() {
        LikelihoodSums sums = new LikelihoodSums(scales + shapes);
        sums.addValue(value);
        for (int i = 0, place = 0; i < scales; i++) {
            sums.addGradient(i, byScale[i]);
            for (int j = 0; j <= i; j++) {
                sums.addHessian(i, j, scaleScale[place++]);
            }
        }
        for (int i = 0, place = 0; i < shapes; i++) {
            sums.addGradient(scales + i, byShape[i]);
            for (int j = 0; j < scales; j++) {
                sums.addHessian(scales + i, j, shapeScale[i * scales + j]);
            }
            for (int j = 0; j <= i; j++) {
                sums.addHessian(scales + i, scales + j, shapeShape[place++]);
            }
        }
        return sums;
    }
}
