package sensorrounds.regression;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.numeric.StudentT;
import sensorrounds.regression.Verdict.Search;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.FitStatus;

/**
 * What came of a {@link LifeRegression}: coefficients in the covariates' own units with their covariance, or the reason
 * why there are none. Asking a failed fit for coefficients throws.
 */
public final class RegressionFit {
    private final LifeFamily family;
    private final RegressionStatus status;
    private final String column;
    private final String cause;
    private final double lives;
    private final double failures;
    private final double exposure;
    private final Search search;
    private final Solution solution;

    /**
     * The maximum, in standardised parameters, and the covariance in own units.
     *
     * @param degrees of freedom that the covariance has; infinite when it is the information's
     */
    record Solution(
            Design design, double[] point, double logLikelihood, double[][] covariance, double level, double degrees) {
        /** Standard errors from an estimate to a limit. */
        double errorsToLimit() {
            return StudentT.quantile((1 + level) / 2, degrees);
        }

        /** Root of the chi-square quantile of one degree, against which a likelihood ratio is held. */
        double rootOfRatio() {
            return StandardNormal.quantile((1 + level) / 2);
        }
    }

    RegressionFit(
            LifeFamily family,
            RegressionStatus status,
            String column,
            String cause,
            double lives,
            double failures,
            double exposure,
            Search search,
            Solution solution) {
        this.family = family;
        this.status = status;
        this.column = column;
        this.cause = cause;
        this.lives = lives;
        this.failures = failures;
        this.exposure = exposure;
        this.search = search;
        this.solution = solution;
    }

    static RegressionFit failed(
            LifeFamily family,
            RegressionStatus status,
            String column,
            String cause,
            LifeSummary summary,
            Search search) {
        return new RegressionFit(
                family, status, column, cause, summary.lives(), summary.failures(), summary.exposure(), search, null);
    }

    public LifeFamily family() {
        return family;
    }

    public RegressionStatus status() {
        return status;
    }

    public boolean converged() {
        return status == RegressionStatus.CONVERGED;
    }

    /** What it says of itself, as every fit does. */
    public FitReport report() {
        return new FitReport(
                FitStatus.valueOf(status.name()),
                cause,
                column,
                lives,
                failures,
                exposure,
                iterations(),
                gradientNorm(),
                condition());
    }

    /** Why there are no coefficients, in words; empty when there are. */
    public String cause() {
        return cause;
    }

    /** The covariate that is to blame, where one is. */
    public Optional<String> column() {
        return column.isEmpty() ? Optional.empty() : Optional.of(column);
    }

    /** Sum of weights. */
    public double lives() {
        return lives;
    }

    /** Sum of weights of lives that failed. */
    public double failures() {
        return failures;
    }

    /** Unit-time under observation; failures count to the middle of their interval. */
    public double exposure() {
        return exposure;
    }

    /** Newton steps of the search that is reported. */
    public int iterations() {
        return search.iterations();
    }

    /** Largest derivative in standard units, per failure, where the search stopped; NaN when it never began. */
    public double gradientNorm() {
        return search.gradientNorm();
    }

    /** Condition (one-norm) of the information in standard units; NaN when no search began. */
    public double condition() {
        return search.condition();
    }

    /** Of T, so exact failures count by their density per unit of time. */
    public double logLikelihood() {
        return solution().logLikelihood();
    }

    /** Number of parameters. */
    public int parameters() {
        return solution().design().parameters();
    }

    /** Akaike's criterion, 2 parameters - 2 log L; the smaller the better among fits to the same lives. */
    public double aic() {
        return 2 * parameters() - 2 * logLikelihood();
    }

    /**
     * Schwarz's criterion with the number of failures as the size of the sample, as censored lives call for: Volinsky and
     * Raftery (2000), Biometrics 56:256-262.
     */
    public double bic() {
        return parameters() * Math.log(failures) - 2 * logLikelihood();
    }

    /** All coefficients: of log scale, of log shape, of the law; constants first in each. */
    public List<Coefficient> coefficients() {
        Design design = solution().design();
        double[] values = design.inOwnUnits(solution.point());
        List<Coefficient> all = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            double error = Math.sqrt(solution.covariance()[i][i]);
            double half = solution.errorsToLimit() * error;
            all.add(new Coefficient(
                    design.part(i), design.name(i), values[i], error, values[i] - half, values[i] + half));
        }
        return all;
    }

    /**
     * One coefficient.
     *
     * @throws IllegalArgumentException if there is none of that name and part
     */
    public Coefficient coefficient(Coefficient.Part part, String name) {
        return coefficients().stream()
                .filter(c -> c.part() == part && c.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "no coefficient " + name + " of " + part + "; there are " + coefficients()));
    }

    /** Covariance of {@link #coefficients}, in their order. */
    public double[][] covariance() {
        double[][] copy = solution().covariance().clone();
        for (int i = 0; i < copy.length; i++) {
            copy[i] = copy[i].clone();
        }
        return copy;
    }

    /** The law of life for these covariates, in the order of the columns. */
    public FittedLaw at(double... x) {
        Design design = solution().design();
        double[][] rows = design.rowsAt(x);
        double[] three = Design.times(rows, design.inOwnUnits(solution.point()));
        return new FittedLaw(
                family,
                three[0],
                three[1],
                three[2],
                Design.sandwich(rows, solution.covariance()),
                solution.errorsToLimit());
    }

    /** Test of a smaller model within this one, fitted to the same lives. */
    public RatioTest against(RegressionFit smaller) {
        return RatioTest.of(2 * (logLikelihood() - smaller.logLikelihood()), parameters() - smaller.parameters());
    }

    /** The maximum; throws when there is none. */
    Solution solution() {
        if (!converged()) {
            throw new IllegalStateException("the " + family + " regression has no coefficients: " + status + ", "
                    + cause + "; ask converged() first");
        }
        return solution;
    }
}
