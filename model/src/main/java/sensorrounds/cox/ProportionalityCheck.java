package sensorrounds.cox;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import sensorrounds.numeric.ChiSquareTest;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.StepCurve;

/**
 * Does a covariate's effect stay the same with age? A score test of adding, for each column, its product with a function
 * of age g(t) to the model: with V(t) the covariance of the covariates at risk at each failure, the scores are sums of
 * g(t) (z - mean), and their information sums of V, g V and g^2 V. Sources: Grambsch and Therneau (1994), Biometrika
 * 81:515-526; in this exact form, Therneau and Grambsch (2000), Modeling Survival Data, 6.2, without their approximation
 * that V is constant. Older programs that use that approximation give other figures.
 */
public final class ProportionalityCheck {
    private final AgeScale scale;

    private ProportionalityCheck(AgeScale scale) {
        this.scale = scale;
    }

    /** On which scale of age an effect is suspected to drift. */
    public enum AgeScale {
        /** 1 - S(t-) of all rows pooled, which spreads failures evenly and gives late stragglers no lever. */
        SHARE_FAILED,
        AGE,
        LOG_AGE
    }

    /** On the share failed. */
    public static ProportionalityCheck withDefaults() {
        return new ProportionalityCheck(AgeScale.SHARE_FAILED);
    }

    public ProportionalityCheck with(AgeScale newScale) {
        return new ProportionalityCheck(newScale);
    }

    /**
     * What the check found.
     *
     * @param columns one test per column, in the sample's order, each beside all coefficients of the model
     * @param global all columns together
     * @param drift for charts: at each failure, by rising age, an estimate of each coefficient at that age
     */
    public record Result(List<ColumnTest> columns, ChiSquareTest global, List<Drift> drift) {}

    /** The test of one column; a small p-value says that its effect changes with age. */
    public record ColumnTest(String column, ChiSquareTest test) {}

    /**
     * The scaled Schoenfeld residual of one failure, moved to the coefficient: its smooth over age shows the effect there
     * (Grambsch and Therneau 1994).
     */
    public record Drift(double age, double[] coefficient) {}

    /**
     * The tests.
     *
     * @throws IllegalStateException if the fit has no coefficients
     */
    public Result of(CoxFit fit) {
        RiskSweep sweep = fit.sweep();
        CoxFit.Solution solution = fit.solution();
        int p = sweep.columns();
        DoubleUnaryOperator g = function(fit.sample());
        double[][] joint = new double[2 * p][2 * p];
        double[] score = new double[2 * p];
        List<Drift> residuals = new ArrayList<>();
        sweep.forEach(sweep.scores(solution.beta()), tied -> {
            double at = g.applyAsDouble(tied.age());
            double[] mean = new double[p];
            for (int k = 0; k < tied.count(); k++) {
                tied.moveTo(fit.ties().gone(k, tied.count()));
                for (int j = 0; j < p; j++) {
                    mean[j] += tied.mean(j) / tied.count();
                    for (int l = 0; l <= j; l++) {
                        double v = tied.stepWeight() * tied.covariance(j, l);
                        joint[j][l] += v;
                        joint[p + j][l] += at * v;
                        joint[p + j][p + l] += at * at * v;
                    }
                }
            }
            for (int k = 0; k < tied.count(); k++) {
                double[] residual = new double[p];
                for (int j = 0; j < p; j++) {
                    residual[j] = sweep.standard(tied.row(k), j) - mean[j];
                    score[p + j] += sweep.sample().weight(tied.row(k)) * at * residual[j];
                }
                residuals.add(new Drift(tied.age(), residual));
            }
        });
        fill(joint, p);
        List<ColumnTest> tests = new ArrayList<>();
        for (int j = 0; j < p; j++) {
            int[] kept = new int[p + 1];
            Arrays.setAll(kept, i -> i);
            kept[p] = p + j;
            tests.add(
                    new ColumnTest(fit.sample().columns().get(j), new ChiSquareTest(quadratic(joint, score, kept), 1)));
        }
        int[] all = new int[2 * p];
        Arrays.setAll(all, i -> i);
        return new Result(
                List.copyOf(tests), new ChiSquareTest(quadratic(joint, score, all), p), drift(fit, residuals));
    }

    private DoubleUnaryOperator function(CoxSample sample) {
        if (scale != AgeScale.SHARE_FAILED) {
            return scale == AgeScale.AGE ? age -> age : Math::log;
        }
        int n = sample.size();
        double[] entry = new double[n];
        double[] exit = new double[n];
        double[] upper = new double[n];
        double[] weight = new double[n];
        for (int i = 0; i < n; i++) {
            entry[i] = sample.entry(i);
            exit[i] = sample.exit(i);
            upper[i] = sample.failed(i) ? exit[i] : Double.POSITIVE_INFINITY;
            weight[i] = sample.weight(i);
        }
        StepCurve survival = KaplanMeier.withDefaults()
                .fit(LifetimeSample.of(entry, exit, upper, weight))
                .survival();
        return age -> 1 - survival.at(Math.nextDown(age));
    }

    /** The coefficient plus failures x covariance x residual, in the sample's units, oldest failures first on input. */
    private static List<Drift> drift(CoxFit fit, List<Drift> residuals) {
        RiskSweep sweep = fit.sweep();
        CoxFit.Solution solution = fit.solution();
        int p = sweep.columns();
        List<Drift> result = new ArrayList<>();
        for (Drift residual : residuals) {
            double[] coefficient = new double[p];
            for (int j = 0; j < p; j++) {
                double moved = solution.beta()[j];
                for (int k = 0; k < p; k++) {
                    moved += residuals.size() * solution.covariance()[j][k] * residual.coefficient()[k];
                }
                coefficient[j] = moved / sweep.scale(j);
            }
            result.add(new Drift(residual.age(), coefficient));
        }
        Collections.reverse(result);
        result.sort((a, b) -> Double.compare(a.age(), b.age()));
        return List.copyOf(result);
    }

    /** The upper triangle, and the lower left block's other half, from what was summed. */
    private static void fill(double[][] joint, int p) {
        for (int j = 0; j < p; j++) {
            for (int l = 0; l < j; l++) {
                joint[p + l][j] = joint[p + j][l];
            }
        }
        for (int j = 0; j < 2 * p; j++) {
            for (int l = 0; l < j; l++) {
                joint[l][j] = joint[j][l];
            }
        }
    }

    private static double quadratic(double[][] matrix, double[] vector, int[] kept) {
        double[][] part = new double[kept.length][kept.length];
        double[] scores = new double[kept.length];
        for (int i = 0; i < kept.length; i++) {
            scores[i] = vector[kept[i]];
            for (int j = 0; j < kept.length; j++) {
                part[i][j] = matrix[kept[i]][kept[j]];
            }
        }
        return PositiveDefinite.of(part)
                .map(factored -> {
                    double[] solved = factored.solve(scores);
                    double sum = 0;
                    for (int i = 0; i < scores.length; i++) {
                        sum += scores[i] * solved[i];
                    }
                    return sum;
                })
                .orElse(Double.NaN);
    }
}
