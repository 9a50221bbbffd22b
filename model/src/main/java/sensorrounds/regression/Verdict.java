package sensorrounds.regression;

import java.util.List;
import java.util.Optional;
import sensorrounds.numeric.Maximum;
import sensorrounds.survival.Counted;

/** Says what came of a regression, and in words why. */
final class Verdict {
    /** Share of a column's variance that others must leave unexplained. */
    private static final double LEAST_TOLERANCE = 1e-10;

    private final LifeFamily family;
    private final List<String> names;
    private final LifeSummary summary;

    Verdict(LifeFamily family, List<String> names, LifeSummary summary) {
        this.family = family;
        this.names = names;
        this.summary = summary;
    }

    /** Where a search ended. */
    record Search(int iterations, double gradientNorm, double condition) {
        static final Search NONE = new Search(0, Double.NaN, Double.NaN);
    }

    /** What can be told without a search. */
    Optional<RegressionFit> beforeTheFit(int shapeColumns) {
        if (!(summary.lives() > 0)) {
            return refused(RegressionStatus.NO_LIVES, "", "there are no lives");
        }
        if (!(summary.observed() > 0 && summary.exposure() > 0)) {
            return refused(
                    RegressionStatus.EMPTY_WINDOWS,
                    "",
                    "none of " + Counted.lives(summary.lives()) + " was under observation for any time;"
                            + " each left on the day it entered");
        }
        if (!(summary.failures() > 0)) {
            return refused(RegressionStatus.NO_FAILURES, "", Counted.noFailures(summary.lives()));
        }
        int parameters = 1 + names.size() + (family.hasShape() ? 1 + shapeColumns : 0);
        if (summary.failures() <= 1 && parameters > 1) {
            return refused(
                    RegressionStatus.ONE_FAILURE, "", "a single failure cannot tell " + parameters + " parameters");
        }
        Optional<RegressionFit> collinear = collinear();
        return collinear.isPresent() ? collinear : separated();
    }

    /** Cholesky on the correlations: what a pivot leaves is the share of the column that others do not explain. */
    private Optional<RegressionFit> collinear() {
        int p = names.size();
        double[][] l = new double[p][p];
        for (int i = 0; i < p; i++) {
            double size = Math.max(Math.abs(summary.lowest(i)), Math.abs(summary.highest(i)));
            double deviation = Math.sqrt(summary.covariance(i, i));
            if (!(deviation > 1e-12 * size)) {
                return refused(
                        RegressionStatus.COLLINEAR_COLUMN,
                        names.get(i),
                        "'" + names.get(i) + "' is " + summary.mean(i) + " for all lives under observation,"
                                + " which the constant covers already; leave it out");
            }
            double left = 1;
            for (int j = 0; j < i; j++) {
                double sum = summary.covariance(i, j) / deviation / Math.sqrt(summary.covariance(j, j));
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                l[i][j] = sum / l[j][j];
                left -= l[i][j] * l[i][j];
            }
            if (!(left > LEAST_TOLERANCE)) {
                return refused(
                        RegressionStatus.COLLINEAR_COLUMN,
                        names.get(i),
                        "'" + names.get(i) + "' follows from " + names.subList(0, i) + "; leave one of them out");
            }
            l[i][i] = Math.sqrt(left);
        }
        return Optional.empty();
    }

    private Optional<RegressionFit> separated() {
        for (int i = 0; i < names.size(); i++) {
            if (summary.separates(i)) {
                return refused(
                        RegressionStatus.SEPARATED_COLUMN,
                        names.get(i),
                        "'" + names.get(i) + "' separates: lives with one end of its range never failed, or never"
                                + " survived, under observation, so that its effect has no finite estimate; leave it"
                                + " out or merge the group with another");
            }
        }
        return Optional.empty();
    }

    private Optional<RegressionFit> refused(RegressionStatus status, String column, String cause) {
        return Optional.of(RegressionFit.failed(family, status, column, cause, summary, Search.NONE));
    }

    /** Names the parameter least determined: largest variance, or furthest away where there is none. */
    RegressionFit flat(Search search, Design design, Optional<double[][]> inverse, double[] point) {
        int worst = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < point.length; i++) {
            double loose = inverse.isPresent() ? inverse.get()[i][i] : Math.abs(point[i]);
            if (loose > most) {
                most = loose;
                worst = i;
            }
        }
        String name = design.name(worst);
        return RegressionFit.failed(
                family,
                RegressionStatus.FLAT_LIKELIHOOD,
                name.equals(Coefficient.CONSTANT) ? "" : name,
                "the likelihood of " + Counted.failures(summary.failures()) + " among "
                        + Counted.lives(summary.lives()) + " has no finite maximum, or does not determine " + name
                        + " of "
                        + design.part(worst)
                        + "; failure ages that nearly coincide, or a group without failures, are the usual cause",
                summary,
                search);
    }

    /** Names the parameter that the lives of one cluster alone determine. */
    RegressionFit onOneCluster(Search search, Design design, int parameter) {
        String name = design.name(parameter);
        return RegressionFit.failed(
                family,
                RegressionStatus.ONE_CLUSTER,
                name.equals(Coefficient.CONSTANT) ? "" : name,
                "without the lives of one cluster the others do not determine " + name + " of " + design.part(parameter)
                        + ", so that nothing tells its error where lives of a cluster are alike; leave it out or merge the"
                        + " group with another",
                summary,
                search);
    }

    RegressionFit notConverged(Search search, Maximum.Outcome outcome) {
        return RegressionFit.failed(
                family,
                RegressionStatus.NOT_CONVERGED,
                "",
                "the search ended with " + outcome + " after " + search.iterations() + " steps, scaled gradient "
                        + search.gradientNorm(),
                summary,
                search);
    }

    RegressionFit converged(
            Search search,
            Design design,
            double[] point,
            double logLikelihood,
            double[][] covariance,
            double level,
            double degrees) {
        return new RegressionFit(
                family,
                RegressionStatus.CONVERGED,
                "",
                "",
                summary.lives(),
                summary.failures(),
                summary.exposure(),
                search,
                new RegressionFit.Solution(
                        design,
                        point,
                        logLikelihood,
                        Design.sandwich(design.toOwnUnits(), covariance),
                        level,
                        degrees));
    }
}
