package sensorrounds.condition;

import java.util.List;

/**
 * How far success chances differ between groups: the beta law that maximises the marginal likelihood of the groups'
 * successes and failures, sum of log B(a + s, b + f) - log B(a, b) (beta-binomial: Griffiths 1973, Biometrics 29:637;
 * tries until the first success, the beta-geometric: Weinberg and Gladen 1986, Biometrics 42:547). Binomial
 * coefficients, which do not move the maximum, are left out.
 */
final class BetaSpread {
    /** Groups with the same counts. */
    record Group(long successes, long failures, long groups) {}

    /** What came of the fit. */
    enum Status {
        CONVERGED,
        /** The groups differ no more than chance explains: the concentration grows without bound. */
        NO_SPREAD,
        NOT_CONVERGED
    }

    /**
     * @param alpha weight of successes; the last value reached unless CONVERGED, and then not to be used
     * @param gradientNorm largest derivative in (log alpha, log beta), per group
     */
    record Fit(double alpha, double beta, double logLikelihood, int iterations, double gradientNorm, Status status) {}

    private static final int MAX_ITERATIONS = 500;
    private static final double GRADIENT = 1e-10;
    /** A spread of chances this narrow cannot be told from none. */
    private static final double NO_SPREAD_FROM = 1e5;

    private BetaSpread() {}

    /** Newton's method in (log alpha, log beta), damped where the surface is not concave. */
    static Fit fit(List<Group> groups) {
        double s = 0;
        double n = 0;
        double size = 0;
        for (Group g : groups) {
            s += (double) g.successes() * g.groups();
            n += (double) (g.successes() + g.failures()) * g.groups();
            size += g.groups();
        }
        if (!(s > 0 && s < n)) {
            return new Fit(Double.NaN, Double.NaN, Double.NaN, 0, Double.NaN, Status.NOT_CONVERGED);
        }
        double[] at = {Math.log(4 * s / n), Math.log(4 * (1 - s / n))};
        double value = logLikelihood(groups, Math.exp(at[0]), Math.exp(at[1]));
        double damping = 1e-3;
        double norm = Double.NaN;
        for (int i = 0; i < MAX_ITERATIONS; i++) {
            double a = Math.exp(at[0]);
            double b = Math.exp(at[1]);
            double[] d = derivatives(groups, a, b);
            norm = Math.max(Math.abs(d[0]), Math.abs(d[1])) / size;
            if (a + b > NO_SPREAD_FROM) {
                return new Fit(a, b, value, i, norm, Status.NO_SPREAD);
            }
            if (norm < GRADIENT) {
                return new Fit(a, b, value, i, norm, Status.CONVERGED);
            }
            boolean better = false;
            while (!better && damping < 1e12) {
                double[] step = step(d, damping * size);
                double[] next = {at[0] + step[0], at[1] + step[1]};
                double nextValue = logLikelihood(groups, Math.exp(next[0]), Math.exp(next[1]));
                if (nextValue >= value) {
                    at = next;
                    value = nextValue;
                    damping = Math.max(damping / 10, 1e-12);
                    better = true;
                } else {
                    damping *= 10;
                }
            }
            if (!better) {
                // No step improves: at the limit of double precision the optimum is reached, or the surface is broken.
                Status status = norm < 1e-7 ? Status.CONVERGED : Status.NOT_CONVERGED;
                return new Fit(a, b, value, i, norm, status);
            }
        }
        return new Fit(Math.exp(at[0]), Math.exp(at[1]), value, MAX_ITERATIONS, norm, Status.NOT_CONVERGED);
    }

    static double logLikelihood(List<Group> groups, double a, double b) {
        double base = BetaDistribution.logBeta(a, b);
        double sum = 0;
        for (Group g : groups) {
            sum += g.groups() * (BetaDistribution.logBeta(a + g.successes(), b + g.failures()) - base);
        }
        return sum;
    }

    /** Gradient (2) and Hessian (aa, ab, bb) in the logs of alpha and beta. */
    private static double[] derivatives(List<Group> groups, double a, double b) {
        double ga = 0;
        double gb = 0;
        double haa = 0;
        double hab = 0;
        double hbb = 0;
        double digammaA = Polygamma.digamma(a);
        double digammaB = Polygamma.digamma(b);
        double digammaAb = Polygamma.digamma(a + b);
        double trigammaA = Polygamma.trigamma(a);
        double trigammaB = Polygamma.trigamma(b);
        double trigammaAb = Polygamma.trigamma(a + b);
        for (Group g : groups) {
            double n = g.successes() + g.failures();
            double both = Polygamma.digamma(a + b + n) - digammaAb;
            double bothSecond = Polygamma.trigamma(a + b + n) - trigammaAb;
            ga += g.groups() * (Polygamma.digamma(a + g.successes()) - digammaA - both);
            gb += g.groups() * (Polygamma.digamma(b + g.failures()) - digammaB - both);
            haa += g.groups() * (Polygamma.trigamma(a + g.successes()) - trigammaA - bothSecond);
            hbb += g.groups() * (Polygamma.trigamma(b + g.failures()) - trigammaB - bothSecond);
            hab -= g.groups() * bothSecond;
        }
        return new double[] {a * ga, b * gb, a * ga + a * a * haa, a * b * hab, b * gb + b * b * hbb};
    }

    /** Solves (damping I - H) step = g; falls back to more damping where the matrix is not positive definite. */
    private static double[] step(double[] d, double damping) {
        double lambda = damping;
        while (true) {
            double p = lambda - d[2];
            double r = lambda - d[4];
            double determinant = p * r - d[3] * d[3];
            if (p > 0 && determinant > 0) {
                double s0 = (r * d[0] + d[3] * d[1]) / determinant;
                double s1 = (d[3] * d[0] + p * d[1]) / determinant;
                // Far steps in log space overshoot into overflow.
                double shrink = Math.min(1, 2 / Math.max(Math.abs(s0), Math.abs(s1)));
                return new double[] {shrink * s0, shrink * s1};
            }
            lambda = Math.max(10 * lambda, 1e-8);
        }
    }
}
