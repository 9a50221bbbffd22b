package sensorrounds.causes;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import sensorrounds.causes.FineGrayFit.Status;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.PositiveDefinite;

/**
 * Regression on the incidence of one cause, by proportional hazards of the incidence itself: units ended by another cause
 * stay in the risk set with a weight that falls as censoring would have taken them, G(t-) / G(T-). Ties by Breslow's rule.
 * Its coefficients say who will be met with this cause, not why: for reasons fit the cause-specific hazard. Weights are
 * counts; delayed entry is not covered and refused. Source: Fine and Gray (1999), JASA 94:496-509, with their variance that
 * carries the estimated G.
 *
 * @param <C> type of the causes
 */
public final class FineGray<C> {
    /** A variance grown this much between no effect and the maximum is no answer. */
    private static final double HOPELESS_GROWTH = 1e6;

    private final C cause;

    private FineGray(C cause) {
        this.cause = cause;
    }

    public static <C> FineGray<C> of(C cause) {
        return new FineGray<>(cause);
    }

    /**
     * The fit; ask {@link FineGrayFit#converged} before its numbers.
     *
     * @param covariates one array per life, in the order of the columns, finite
     * @throws IllegalArgumentException with delayed entry, or if the arrays do not fit each other
     */
    public FineGrayFit fit(List<String> columns, List<EndedLife<C>> lives, double[][] covariates) {
        check(columns, lives, covariates);
        int[] order = IntStream.range(0, lives.size())
                .boxed()
                .sorted(Comparator.comparingDouble(i -> lives.get(i).exit()))
                .mapToInt(Integer::intValue)
                .toArray();
        int n = order.length;
        double[] age = new double[n];
        double[] weight = new double[n];
        Subdistribution.End[] end = new Subdistribution.End[n];
        double[][] x = new double[n][];
        for (int i = 0; i < n; i++) {
            EndedLife<C> life = lives.get(order[i]);
            age[i] = life.exit();
            weight[i] = life.weight();
            end[i] = life.cause() == null
                    ? Subdistribution.End.CENSORED
                    : life.cause().equals(cause) ? Subdistribution.End.CAUSE : Subdistribution.End.OTHER;
            x[i] = covariates[order[i]];
        }
        Subdistribution likelihood = new Subdistribution(age, weight, end, x, columns.size());
        if (!(likelihood.failures() > 0)) {
            return FineGrayFit.failed(columns, Status.NO_FAILURES, "no life ended by " + cause);
        }
        int p = columns.size();
        Optional<PositiveDefinite> zero =
                information(likelihood.at(new double[p]).hessian());
        if (zero.isEmpty()) {
            return FineGrayFit.failed(
                    columns,
                    Status.COLLINEAR,
                    "one of the columns is constant, or a combination of the others, among the lives at risk");
        }
        Maximum maximum = NewtonMaximizer.withDefaults().maximize(likelihood, new double[p]);
        Optional<PositiveDefinite> information = information(maximum.at().hessian());
        if (maximum.outcome() != Maximum.Outcome.CONVERGED || information.isEmpty()) {
            return FineGrayFit.failed(
                    columns,
                    Status.NOT_CONVERGED,
                    "the search ended " + maximum.outcome() + " after " + maximum.iterations() + " steps");
        }
        double[][] inverse = information.get().inverse();
        double[][] atZero = zero.get().inverse();
        for (int j = 0; j < p; j++) {
            if (inverse[j][j] > HOPELESS_GROWTH * atZero[j][j]) {
                return FineGrayFit.failed(
                        columns,
                        Status.FLAT_LIKELIHOOD,
                        "the data leave the coefficient of " + columns.get(j)
                                + " undetermined: it may tell every end by " + cause + " from the others");
            }
        }
        return FineGrayFit.of(columns, likelihood, maximum.point(), inverse);
    }

    private static <C> void check(List<String> columns, List<EndedLife<C>> lives, double[][] covariates) {
        if (columns.isEmpty() || covariates.length != lives.size()) {
            throw new IllegalArgumentException("a regression needs columns and one array of covariates per life, not "
                    + columns + " and " + covariates.length + " for " + lives.size() + " lives");
        }
        for (int i = 0; i < covariates.length; i++) {
            if (covariates[i].length != columns.size()) {
                throw new IllegalArgumentException(
                        "life " + i + " has " + covariates[i].length + " covariates for the columns " + columns);
            }
            for (int j = 0; j < columns.size(); j++) {
                if (!Double.isFinite(covariates[i][j])) {
                    throw new IllegalArgumentException(
                            "life " + i + ", column " + columns.get(j) + ": " + covariates[i][j] + " is no number");
                }
            }
            if (lives.get(i).entry() > 0) {
                throw new IllegalArgumentException("life " + i + " entered observation at age "
                        + lives.get(i).entry()
                        + "; this regression does not cover delayed entry, fit cause-specific hazards instead");
            }
        }
    }

    private static Optional<PositiveDefinite> information(double[][] hessian) {
        double[][] negated = new double[hessian.length][hessian.length];
        for (int j = 0; j < hessian.length; j++) {
            for (int k = 0; k < hessian.length; k++) {
                negated[j][k] = -hessian[j][k];
            }
            if (!(negated[j][j] > 1e-10)) {
                return Optional.empty();
            }
        }
        return PositiveDefinite.of(negated);
    }
}
