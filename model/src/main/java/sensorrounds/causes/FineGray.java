package sensorrounds.causes;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import sensorrounds.numeric.Maximum;
import sensorrounds.numeric.NewtonMaximizer;
import sensorrounds.numeric.PositiveDefinite;
import sensorrounds.numeric.ScaledCurvature;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.FitStatus;

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
        Ended all = Ended.of(lives);
        if (lives.isEmpty()) {
            return FineGrayFit.failed(columns, all.refused(FitStatus.NO_LIVES, "there are no lives", ""));
        }
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
            return FineGrayFit.failed(columns, all.refused(FitStatus.NO_FAILURES, "no life ended by " + cause, ""));
        }
        int p = columns.size();
        double[][] start = likelihood.at(new double[p]).hessian();
        Optional<PositiveDefinite> zero = information(start);
        if (zero.isEmpty()) {
            String column = columns.get(follower(start));
            String why = column + " is constant, or follows from the columns before it, among the lives at risk";
            return FineGrayFit.failed(columns, all.refused(FitStatus.COLLINEAR_COLUMN, why, column));
        }
        Maximum maximum = NewtonMaximizer.withDefaults().maximize(likelihood, new double[p]);
        Optional<PositiveDefinite> information = information(maximum.at().hessian());
        Search search = new Search(all, likelihood.failures(), maximum);
        int runaway = runaway(maximum.point(), information, zero.get().inverse());
        if (runaway >= 0) {
            String column = columns.get(runaway);
            String why = column + " tells the ends by " + cause
                    + " from the others, and the likelihood rises without end along it";
            return FineGrayFit.failed(columns, search.report(FitStatus.SEPARATED_COLUMN, why, column));
        }
        if (maximum.outcome() != Maximum.Outcome.CONVERGED) {
            return FineGrayFit.failed(
                    columns,
                    search.report(
                            FitStatus.NOT_CONVERGED,
                            "the search ended " + maximum.outcome() + " after " + maximum.iterations() + " steps",
                            ""));
        }
        return FineGrayFit.of(
                columns,
                search.report(FitStatus.CONVERGED, "", ""),
                likelihood,
                maximum.point(),
                information.get().inverse());
    }

    /** What every report says of the lives. */
    private record Ended(double lives, double failures, double exposure) {
        static <C> Ended of(List<EndedLife<C>> lives) {
            double count = 0;
            double failures = 0;
            double exposure = 0;
            for (EndedLife<C> life : lives) {
                count += life.weight();
                failures += life.cause() == null ? 0 : life.weight();
                exposure += life.weight() * life.exit();
            }
            return new Ended(count, failures, exposure);
        }

        FitReport refused(FitStatus status, String why, String column) {
            return FitReport.refused(status, why, column, lives, failures, exposure);
        }
    }

    /** Where a search ended; covariates are in standard units already. */
    private record Search(Ended all, double ends, Maximum maximum) {
        FitReport report(FitStatus status, String why, String column) {
            double[] unit = new double[maximum.point().length];
            Arrays.fill(unit, 1);
            ScaledCurvature end = ScaledCurvature.of(maximum.at(), unit);
            return new FitReport(
                    status,
                    why,
                    column,
                    all.lives(),
                    all.failures(),
                    all.exposure(),
                    maximum.iterations(),
                    end.largestSlope() / ends,
                    end.condition());
        }
    }

    /**
     * The column along which there is no maximum; -1 if there is none such. The partial likelihood is concave: what is curved
     * without any effect and level where the search ended rises without end.
     */
    private static int runaway(double[] point, Optional<PositiveDefinite> information, double[][] atZero) {
        int farthest = 0;
        for (int j = 0; j < point.length; j++) {
            if (information.isPresent() && information.get().inverse()[j][j] > HOPELESS_GROWTH * atZero[j][j]) {
                return j;
            }
            farthest = Math.abs(point[j]) > Math.abs(point[farthest]) ? j : farthest;
        }
        return information.isPresent() ? -1 : farthest;
    }

    /** First column that says nothing beside those before it. */
    private static int follower(double[][] hessian) {
        int column = 0;
        while (information(leading(hessian, column + 1)).isPresent()) {
            column++;
        }
        return column;
    }

    private static double[][] leading(double[][] matrix, int size) {
        double[][] part = new double[size][];
        for (int i = 0; i < size; i++) {
            part[i] = Arrays.copyOf(matrix[i], size);
        }
        return part;
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
