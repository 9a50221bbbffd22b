package sensorrounds.frailty;

import java.util.Arrays;
import sensorrounds.numeric.LogGammaLaw;
import sensorrounds.numeric.Objective;

/** Adds up the log-likelihoods of vehicles with their derivatives: {@code begin}, the lives of one set, {@code end}. */
final class VehicleTerms {
    private final int scales;
    private final boolean hasShape;
    private final int n;
    private final double shape;
    private final double logShape;
    private final double a;
    private final HazardTerms hazard = new HazardTerms();

    private final Sum entered;
    private final Sum survived;
    private final Sum known;
    private int exact;
    private Sum[] intervals = {};
    private int within;

    private final double logExcess;
    private final double trigammaExcess;
    private final double[] score;
    private final double[] atMode;
    private final double[] mean;
    private final double[][] square;

    private double value;
    private final double[] gradient;
    private final double[][] hessian;

    /** A function of the parameters of the law of life, with derivatives. */
    private final class Sum {
        double value;
        final double[] first = new double[n];
        final double[][] second = new double[n][n];

        void clear() {
            value = 0;
            Arrays.fill(first, 0);
            for (double[] row : second) {
                Arrays.fill(row, 0);
            }
        }

        /** Adds a function of a life's log scale and log shape. */
        void add(double f, double m, double k, double mm, double mk, double kk, double[] v) {
            value += f;
            for (int i = 0; i < scales; i++) {
                first[i] += m * v[i];
                for (int j = 0; j <= i; j++) {
                    second[i][j] += mm * v[i] * v[j];
                }
                if (hasShape) {
                    second[scales][i] += mk * v[i];
                }
            }
            if (hasShape) {
                first[scales] += k;
                second[scales][scales] += kk;
            }
        }

        void add(HazardTerms h, double[] v) {
            add(h.value, h.m, h.k, h.mm, h.mk, h.kk, v);
        }
    }

    /** @param a 1 / variance of the frailty */
    VehicleTerms(int scales, boolean hasShape, double shape, double a) {
        this.scales = scales;
        this.hasShape = hasShape;
        this.n = scales + (hasShape ? 2 : 1);
        this.shape = shape;
        this.logShape = Math.log(shape);
        this.a = a;
        entered = new Sum();
        survived = new Sum();
        known = new Sum();
        logExcess = GammaShape.logExcess(a);
        trigammaExcess = GammaShape.trigammaExcess(a);
        score = new double[n];
        atMode = new double[n];
        mean = new double[n];
        square = new double[n][n];
        gradient = new double[n];
        hessian = new double[n][n];
    }

    void begin() {
        entered.clear();
        survived.clear();
        known.clear();
        exact = 0;
        within = 0;
    }

    void enter(double logEntry, double logScale, double[] v) {
        hazard.at(logEntry, logScale, shape);
        entered.add(hazard, v);
    }

    void survive(double logLower, double logScale, double[] v) {
        hazard.at(logLower, logScale, shape);
        survived.add(hazard, v);
    }

    /** Failed at this age: log hazard z + log shape - log t, t in the lives' own unit. */
    void failAt(double logAge, double logScale, double centre, double[] v) {
        exact++;
        double z = shape * (logAge - logScale);
        known.add(z + logShape - logAge - centre, -shape, z + 1, 0, -shape, z, v);
    }

    void failWithin(double logLower, double logUpper, double logScale, double[] v) {
        if (within == intervals.length) {
            intervals = Arrays.copyOf(intervals, within + 1);
            intervals[within] = new Sum();
        }
        hazard.between(logLower, logUpper, logScale, shape);
        intervals[within].clear();
        intervals[within++].add(hazard, v);
    }

    void end() {
        addSurvival(entered, 1);
        if (exact + within == 0) {
            addSurvival(survived, -1);
        } else {
            addFailures();
        }
    }

    /** sign times a log(1 + A / a), minus the log of the Laplace transform at A. */
    private void addSurvival(Sum sum, double sign) {
        double total = a + sum.value;
        double log = Math.log1p(sum.value / a);
        double mean = a / total;
        double byVariance = log - sum.value / total;
        int t = n - 1;
        value += sign * a * log;
        gradient[t] -= sign * a * byVariance;
        hessian[t][t] += sign * a * (byVariance - sum.value * sum.value / (total * total));
        for (int i = 0; i < t; i++) {
            gradient[i] += sign * mean * sum.first[i];
            hessian[t][i] -= sign * mean * sum.value / total * sum.first[i];
            for (int j = 0; j <= i; j++) {
                hessian[i][j] += sign * mean * (sum.second[i][j] - sum.first[i] * sum.first[j] / total);
            }
        }
    }

    private void addFailures() {
        double[] d = new double[within];
        for (int i = 0; i < within; i++) {
            d[i] = intervals[i].value;
        }
        SetIntegral integral = new SetIntegral(a, survived.value, exact, d);
        value += integral.logIntegral() + known.value;
        Arrays.fill(mean, 0);
        for (double[] row : square) {
            Arrays.fill(row, 0);
        }
        double[] ofInterval = new double[within];
        double[] ofSquare = new double[within];
        double meanFrailty = 0;
        for (int q = 0; q < integral.size(); q++) {
            double y = integral.y(q);
            double w = Math.exp(y);
            double weight = integral.weight(q);
            for (int j = 0; j < n - 1; j++) {
                score[j] = known.first[j] - w * survived.first[j];
            }
            for (int i = 0; i < within; i++) {
                // d/dD log(1 - exp(-D w)) = w r, d2/dD2 = -w^2 r (1 + r), r = 1 / (exp(D w) - 1).
                double r = integral.ratio(q, i);
                ofInterval[i] += weight * w * r;
                ofSquare[i] += weight * w * r * w * (1 + r);
                for (int j = 0; j < n - 1; j++) {
                    score[j] += w * r * intervals[i].first[j];
                }
            }
            // d log f / d log variance = a (e^y - 1 - y) - a (log a - digamma a).
            score[n - 1] = a * LogGammaLaw.excess(y) * y * y - logExcess;
            meanFrailty += weight * w;
            addMoments(weight, q == 0);
        }
        for (int i = 0; i < n; i++) {
            gradient[i] += atMode[i] + mean[i];
            for (int j = 0; j <= i; j++) {
                hessian[i][j] += square[i][j] - mean[i] * mean[j];
            }
        }
        addMeanCurvature(meanFrailty, ofInterval, ofSquare, atMode[n - 1] + mean[n - 1]);
    }

    /** Moments of the score about its value at the mode, so that little cancels when the mean is taken off. */
    private void addMoments(double weight, boolean mode) {
        if (mode) {
            System.arraycopy(score, 0, atMode, 0, n);
        }
        for (int i = 0; i < n; i++) {
            score[i] -= atMode[i];
            mean[i] += weight * score[i];
            for (int j = 0; j <= i; j++) {
                square[i][j] += weight * score[i] * score[j];
            }
        }
    }

    private void addMeanCurvature(double frailty, double[] ofInterval, double[] ofSquare, double varianceScore) {
        for (int i = 0; i < n - 1; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = known.second[i][j] - frailty * survived.second[i][j];
                for (int q = 0; q < within; q++) {
                    sum += ofInterval[q] * intervals[q].second[i][j]
                            - ofSquare[q] * intervals[q].first[i] * intervals[q].first[j];
                }
                hessian[i][j] += sum;
            }
        }
        // Second derivative in log variance: minus the first, plus a - a^2 trigamma(a).
        hessian[n - 1][n - 1] += -varianceScore - trigammaExcess;
    }

    Objective.Evaluation total() {
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                hessian[j][i] = hessian[i][j];
            }
        }
        return new Objective.Evaluation(value, gradient, hessian);
    }
}
