package sensorrounds.cox;

import java.util.List;
import java.util.stream.IntStream;
import sensorrounds.numeric.ChiSquareTest;
import sensorrounds.numeric.Objective.Evaluation;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.FitStatus;

/**
 * What came of a {@link CoxFitter}: coefficients with their errors, or the reason why there are none. Asking a failed fit
 * for its numbers throws.
 */
public final class CoxFit {
    private final RiskSweep sweep;
    private final Ties ties;
    private final double level;
    private final Outcome outcome;
    private final Search search;
    private final Solution solution;

    /** What came of a fit. */
    public enum Status {
        CONVERGED,
        /** The sample is empty. */
        NO_ROWS,
        /** No row ends in a failure. */
        NO_FAILURES,
        /** A column does not vary within any risk set. */
        CONSTANT_COLUMN,
        /** A column is a combination of those before it. */
        COLLINEAR,
        /** A column, or a combination, tells every failure from the others at risk: no finite coefficient. */
        SEPARATION,
        /** The data leave a coefficient undetermined for another reason. */
        FLAT_LIKELIHOOD,
        /** The search ended without a maximum. */
        NOT_CONVERGED
    }

    /** Status, the column to blame (empty when none), and the cause in words (empty when converged). */
    record Outcome(Status status, String column, String cause) {}

    /** How the search went. */
    record Search(int iterations, double gradientNorm, double condition) {}

    /** Per standard unit of the covariates. */
    record Solution(double[] beta, Evaluation atMaximum, Evaluation atZero, double[][] covariance) {}

    CoxFit(RiskSweep sweep, Ties ties, double level, Outcome outcome, Search search, Solution solution) {
        this.sweep = sweep;
        this.ties = ties;
        this.level = level;
        this.outcome = outcome;
        this.search = search;
        this.solution = solution;
    }

    /**
     * One column's answer.
     *
     * @param value log of the hazard ratio for one unit more
     * @param standardError from the information
     * @param robustError sandwich by cluster, right also where the rows of a cluster depend on each other
     * @param hazardRatio exp(value), limits from {@code standardError}
     * @param robustHazardRatio exp(value), limits from {@code robustError}
     */
    public record Coefficient(
            String column,
            double value,
            double standardError,
            double robustError,
            Estimate hazardRatio,
            Estimate robustHazardRatio) {}

    public Status status() {
        return outcome.status();
    }

    public boolean converged() {
        return outcome.status() == Status.CONVERGED;
    }

    /** The column to blame when the fit failed; empty when there is none. */
    public String column() {
        return outcome.column();
    }

    /** What it says of itself, as every fit does; a row counts as a life, or as its weight. */
    public FitReport report() {
        FitStatus code = switch (outcome.status()) {
            case CONVERGED -> FitStatus.CONVERGED;
            case NO_ROWS -> FitStatus.NO_LIVES;
            case NO_FAILURES -> FitStatus.NO_FAILURES;
            case CONSTANT_COLUMN, COLLINEAR -> FitStatus.COLLINEAR_COLUMN;
            case SEPARATION -> FitStatus.SEPARATED_COLUMN;
            case FLAT_LIKELIHOOD -> FitStatus.FLAT_LIKELIHOOD;
            case NOT_CONVERGED -> FitStatus.NOT_CONVERGED;
        };
        CoxSample rows = sample();
        double lives = 0;
        double failures = 0;
        double exposure = 0;
        for (int i = 0; i < rows.size(); i++) {
            lives += rows.weight(i);
            failures += rows.failed(i) ? rows.weight(i) : 0;
            exposure += rows.weight(i) * (rows.exit(i) - rows.entry(i));
        }
        return new FitReport(
                code, cause(), column(), lives, failures, exposure, iterations(), gradientNorm(), condition());
    }

    /** Why there are no coefficients, in words; empty when there are. */
    public String cause() {
        return outcome.cause();
    }

    public int iterations() {
        return search.iterations();
    }

    /** Largest derivative in standard units, per failure, where the search stopped; NaN when it never began. */
    public double gradientNorm() {
        return search.gradientNorm();
    }

    /** Condition (one-norm) of the information in standard units; infinite when it is not positive definite. */
    public double condition() {
        return search.condition();
    }

    public CoxSample sample() {
        return sweep.sample();
    }

    public Ties ties() {
        return ties;
    }

    /** One per column, in the sample's order. */
    public List<Coefficient> coefficients() {
        double[] values = values();
        double[][] naive = covariance();
        double[][] robust = robustCovariance();
        return IntStream.range(0, values.length)
                .mapToObj(j -> {
                    double error = Math.sqrt(naive[j][j]);
                    double robustError = Math.sqrt(robust[j][j]);
                    return new Coefficient(
                            sample().columns().get(j),
                            values[j],
                            error,
                            robustError,
                            ratio(values[j], error),
                            ratio(values[j], robustError));
                })
                .toList();
    }

    /** Coefficients alone, in the order of the columns. */
    public double[] values() {
        double[] beta = solution().beta();
        return IntStream.range(0, beta.length)
                .mapToDouble(j -> beta[j] / sweep.scale(j))
                .toArray();
    }

    /** Inverse of the information. */
    public double[][] covariance() {
        return unscaled(solution().covariance());
    }

    /**
     * Sandwich covariance: the sum over clusters of the outer products of their dfbetas, without a small-sample factor.
     * Sources: Lin and Wei (1989), JASA 84:1074-1078; by cluster: Therneau and Grambsch (2000), 8.2.
     */
    public double[][] robustCovariance() {
        double[][] scores = CoxResiduals.at(this).clusterScores();
        double[][] v = solution().covariance();
        int p = v.length;
        double[][] result = new double[p][p];
        double[] influence = new double[p];
        for (double[] score : scores) {
            for (int j = 0; j < p; j++) {
                influence[j] = 0;
                for (int k = 0; k < p; k++) {
                    influence[j] += v[j][k] * score[k];
                }
            }
            for (int j = 0; j < p; j++) {
                for (int k = 0; k < p; k++) {
                    result[j][k] += influence[j] * influence[k];
                }
            }
        }
        return unscaled(result);
    }

    /** Log partial likelihood at the maximum. */
    public double logLikelihood() {
        return solution().atMaximum().value();
    }

    /** Log partial likelihood without any effect. */
    public double nullLogLikelihood() {
        return solution().atZero().value();
    }

    /** Twice the gain in log-likelihood over no effect. */
    public ChiSquareTest likelihoodRatioTest() {
        return new ChiSquareTest(2 * (logLikelihood() - nullLogLikelihood()), sweep.columns());
    }

    /** Score test of no effect, at coefficients 0. */
    public ChiSquareTest scoreTest() {
        Evaluation zero = solution().atZero();
        double[][] information = new double[sweep.columns()][sweep.columns()];
        for (int j = 0; j < information.length; j++) {
            for (int k = 0; k < information.length; k++) {
                information[j][k] = -zero.hessian()[j][k];
            }
        }
        return new ChiSquareTest(quadratic(information, zero.gradient()), sweep.columns());
    }

    /** Wald test of no effect, at the maximum, by the information. */
    public ChiSquareTest waldTest() {
        double[] beta = solution().beta();
        double sum = 0;
        for (int j = 0; j < beta.length; j++) {
            for (int k = 0; k < beta.length; k++) {
                sum -= beta[j] * solution().atMaximum().hessian()[j][k] * beta[k];
            }
        }
        return new ChiSquareTest(sum, beta.length);
    }

    /** Wald test of no effect, at the maximum, by the robust covariance; NaN with fewer clusters than columns. */
    public ChiSquareTest robustWaldTest() {
        return new ChiSquareTest(quadratic(robustCovariance(), values()), sweep.columns());
    }

    /**
     * Score test of no effect that holds also where rows of a cluster depend on each other: scores at 0, their variance
     * from the clusters; NaN with fewer clusters than columns.
     */
    public ChiSquareTest robustScoreTest() {
        int p = solution().beta().length;
        double[][] variance = new double[p][p];
        for (double[] score : CoxResiduals.of(sweep, ties, new double[p]).clusterScores()) {
            for (int j = 0; j < p; j++) {
                for (int k = 0; k < p; k++) {
                    variance[j][k] += score[j] * score[k];
                }
            }
        }
        return new ChiSquareTest(quadratic(variance, solution().atZero().gradient()), p);
    }

    /** beta'x of any covariates, in the order of the columns: log of their hazard ratio to covariates 0. */
    public double linearPredictor(double[] covariates) {
        double[] values = values();
        requireColumns(covariates);
        double sum = 0;
        for (int j = 0; j < values.length; j++) {
            sum += values[j] * covariates[j];
        }
        return sum;
    }

    /**
     * Cumulative hazard and survival of a unit with these covariates throughout, in a stratum of the sample.
     *
     * @throws IllegalArgumentException if the sample has no failure in that stratum
     */
    public PredictedHazard hazard(double[] covariates, int stratum) {
        requireColumns(covariates);
        return PredictedHazard.of(this, covariates, stratum, StandardNormal.quantile((1 + level) / 2));
    }

    /** The same where the sample has one stratum. */
    public PredictedHazard hazard(double[] covariates) {
        return hazard(covariates, 0);
    }

    /** Residuals at the maximum. */
    public CoxResiduals residuals() {
        return CoxResiduals.at(this);
    }

    RiskSweep sweep() {
        return sweep;
    }

    Solution solution() {
        if (solution == null) {
            throw new IllegalStateException("the regression has no coefficients: " + outcome.status()
                    + (outcome.column().isEmpty() ? "" : ", column " + outcome.column()) + ", " + outcome.cause()
                    + "; ask converged() first");
        }
        return solution;
    }

    private Estimate ratio(double value, double error) {
        double half = StandardNormal.quantile((1 + level) / 2) * error;
        return new Estimate(Math.exp(value), Math.exp(value - half), Math.exp(value + half));
    }

    private double[][] unscaled(double[][] matrix) {
        double[][] result = new double[matrix.length][matrix.length];
        for (int j = 0; j < matrix.length; j++) {
            for (int k = 0; k < matrix.length; k++) {
                result[j][k] = matrix[j][k] / (sweep.scale(j) * sweep.scale(k));
            }
        }
        return result;
    }

    private void requireColumns(double[] covariates) {
        if (covariates.length != sweep.columns()) {
            throw new IllegalArgumentException(covariates.length + " covariates for the columns " + sample().columns());
        }
    }

    private static double quadratic(double[][] matrix, double[] vector) {
        return PositiveDefinite.of(matrix)
                .map(factored -> {
                    double[] solved = factored.solve(vector);
                    double sum = 0;
                    for (int j = 0; j < vector.length; j++) {
                        sum += vector[j] * solved[j];
                    }
                    return sum;
                })
                .orElse(Double.NaN);
    }
}
