package sensorrounds.turnbull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.FitStatus;
import sensorrounds.survival.LifetimeSample;

/**
 * What came of {@link Turnbull}: the innermost intervals with their masses, how sure it is that they are the maximum, or
 * the reason why there is no curve. Asking a failed fit for figures throws.
 */
public final class TurnbullFit {
    private final Status status;
    private final List<InnermostInterval> intervals;
    private final double firstEntry;
    private final List<Double> collapses;
    private final Uniqueness uniqueness;
    private final HazardProblem problem;
    private final HazardMaximizer.Solution solution;
    private final Support support;

    /** What came of a fit. */
    public enum Status {
        CONVERGED,
        /** The sample is empty. */
        NO_LIVES,
        /**
         * The maximum is reached only in the limit of a curve that falls to 0 while lives that entered later live on: no
         * curve from the first entry exists. One given alive at a later age may.
         */
        COLLAPSED,
        /** The gap to the maximum could not be brought down to the tolerance. */
        NOT_CONVERGED
    }

    TurnbullFit(
            Status status,
            List<InnermostInterval> intervals,
            double firstEntry,
            List<Double> collapses,
            Uniqueness uniqueness,
            HazardProblem problem,
            HazardMaximizer.Solution solution,
            Support support) {
        this.status = status;
        this.intervals = List.copyOf(intervals);
        this.firstEntry = firstEntry;
        this.collapses = List.copyOf(collapses);
        this.uniqueness = uniqueness;
        this.problem = problem;
        this.solution = solution;
        this.support = support;
    }

    static TurnbullFit withoutLives() {
        return new TurnbullFit(
                Status.NO_LIVES, List.of(), Double.NaN, List.of(), Uniqueness.NOT_UNIQUE, null, null, null);
    }

    public Status status() {
        return status;
    }

    public boolean converged() {
        return status == Status.CONVERGED;
    }

    /**
     * What it says of itself, as every fit does. What certifies its maximum is the gap, so it has neither gradient nor condition.
     *
     * @param sample the lives it was fitted to
     */
    public FitReport report(LifetimeSample sample) {
        return new FitReport(
                FitStatus.valueOf(status.name()),
                cause(),
                "",
                sample.lives(),
                sample.failures(),
                sample.exposure(),
                iterations(),
                Double.NaN,
                Double.NaN);
    }

    /** Why there is no curve, in words; empty when there is one. */
    public String cause() {
        return switch (status) {
            case CONVERGED -> "";
            case NO_LIVES -> "the sample is empty";
            case COLLAPSED ->
                "every life under observation before age " + collapses.get(0)
                        + " may have failed by then, while others entered later; ask for survival given alive at an age"
                        + " from " + collapses.get(collapses.size() - 1) + " up, or fit a law of life";
            case NOT_CONVERGED ->
                "after " + solution.iterations() + " iterations the log-likelihood may still be " + solution.gap()
                        + " below its maximum";
        };
    }

    /**
     * Every innermost interval in order, those without mass among them. After a collapse masses are 0, but the hazards
     * still hold for those who entered later.
     *
     * @throws IllegalStateException without lives or convergence
     */
    public List<InnermostInterval> intervals() {
        requireMaximum();
        return intervals;
    }

    /** The intervals that carry mass. */
    public List<InnermostInterval> masses() {
        requireMaximum();
        return intervals.stream().filter(interval -> interval.mass() > 0).toList();
    }

    /** Of the intervals observed, given alive at entry; an exact failure counts by the mass on its age. */
    public double logLikelihood() {
        requireMaximum();
        return problem.value(solution.hazard(), problem.reach(solution.hazard()));
    }

    /** Upper bound, by the KKT conditions, on how far the log-likelihood lies below its maximum; NaN without lives. */
    public double gap() {
        return solution == null ? Double.NaN : solution.gap();
    }

    public int iterations() {
        return solution == null ? 0 : solution.iterations();
    }

    public Uniqueness uniqueness() {
        requireMaximum();
        return uniqueness;
    }

    /** As {@link #uniqueness()}, of the hazards of those intervals alone that somebody is known to have outlived. */
    public Uniqueness uniquenessWhereOutlived() {
        requireMaximum();
        return Uniqueness.of(problem, solution.hazard());
    }

    /** Lowest age at which the data can place a failure; before it the curve is 1 because nobody was there to fail. */
    public double firstSupportedAge() {
        requireMaximum();
        return intervals.get(0).lower();
    }

    /** First age by which all then under observation may have failed although others entered later; empty if none. */
    public OptionalDouble collapsedAt() {
        return collapses.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(collapses.get(0));
    }

    /**
     * Survival given alive at the first entry, which is survival from new when somebody was observed from age 0.
     *
     * @throws IllegalStateException unless the fit converged; after a collapse ask for {@link #survivalGivenAliveAt}
     */
    public TurnbullCurve survival() {
        if (!converged()) {
            throw new IllegalStateException("no survival curve: " + status + ", " + cause());
        }
        return curveFrom(firstEntry);
    }

    /**
     * Survival of those alive at an age, the remedy where early ages stand on few lives.
     *
     * @throws IllegalStateException if the curve collapses after that age, or the fit has no maximum
     * @throws IllegalArgumentException if the age lies outside the curve or inside an interval with hazard
     */
    public TurnbullCurve survivalGivenAliveAt(double age) {
        requireMaximum();
        if (!collapses.isEmpty() && collapses.get(collapses.size() - 1) > age) {
            throw new IllegalStateException("no survival curve given alive at " + age + ": " + status + ", " + cause());
        }
        if (!(age >= firstEntry && age < end())) {
            throw new IllegalArgumentException("survival given alive is known from age " + firstEntry + " to below "
                    + end() + ", not from " + age);
        }
        for (InnermostInterval interval : intervals) {
            if (interval.hazard() > 0 && interval.lower() < age && age < interval.upper()) {
                throw new IllegalArgumentException("age " + age + " lies inside a step from " + interval.lower()
                        + " to " + interval.upper() + "; take one of its ends");
            }
        }
        return curveFrom(age);
    }

    /**
     * Standard error of survival after the interval with this index, from the observed information on the intervals that
     * carry mass. Exact theory stands behind it where ages fall on a fixed grid with many lives to each interval (then
     * it is Greenwood's); on fine or scattered ages it is a rough guide only. NaN where survival is 0.
     */
    public double standardErrorAfter(int interval) {
        if (!converged()) {
            throw new IllegalStateException("no standard error: " + status + ", " + cause());
        }
        if (!(intervals.get(interval).survivalAfter() > 0)) {
            return Double.NaN;
        }
        double[] upTo = new double[intervals.size()];
        Arrays.fill(upTo, 0, interval + 1, 1);
        double[] solved = solveInformation(upTo);
        double variance = 0;
        for (int k = 0; k <= interval; k++) {
            variance += solved[k];
        }
        return intervals.get(interval).survivalAfter() * Math.sqrt(Math.max(0, variance));
    }

    /**
     * x with I x = b, I the observed information of the hazards of those intervals that carry some finite hazard; 0 for
     * the others. One value per interval.
     */
    public double[] solveInformation(double[] b) {
        requireMaximum();
        double[] hazard = solution.hazard();
        double[] curvature = problem.curvature(problem.reach(hazard));
        double[] compact = new double[problem.size()];
        int next = 0;
        for (int k = 0; k < intervals.size(); k++) {
            if (intervals.get(k).outlived() > 0) {
                compact[next++] = b[k];
            }
        }
        double[] solved = new InformationSolver(
                        problem, curvature, problem.diagonal(curvature), InformationSolver.positive(hazard), 0)
                .solve(compact, 1e-13, 20 * problem.size() + 100);
        double[] x = new double[intervals.size()];
        next = 0;
        for (int k = 0; k < x.length; k++) {
            x[k] = intervals.get(k).outlived() > 0 ? solved[next++] : 0;
        }
        return x;
    }

    /** Intervals in which a life that ended in (lower, upper], or exactly at lower = upper, may have ended. */
    public IntervalRange within(double lower, double upper) {
        requireMaximum();
        return support.within(lower, upper);
    }

    /** Intervals that a life under observation from entry and ended in (lower, upper] has outlived. */
    public IntervalRange outlived(double entry, double lower, double upper) {
        requireMaximum();
        return new IntervalRange(
                support.firstAfter(entry), support.within(lower, upper).from());
    }

    private double end() {
        InnermostInterval last = intervals.get(intervals.size() - 1);
        return last.beyondData() ? last.lower() : last.upper();
    }

    private TurnbullCurve curveFrom(double age) {
        List<InnermostInterval> steps = new ArrayList<>();
        double survival = 1;
        for (InnermostInterval interval : intervals) {
            boolean after = interval.lower() > age || interval.lower() == age && !interval.exact();
            if (after && interval.hazard() > 0 && !interval.beyondData()) {
                double before = survival;
                survival *= Math.exp(-interval.hazard());
                steps.add(new InnermostInterval(
                        interval.lower(),
                        interval.upper(),
                        interval.hazard(),
                        before - survival,
                        survival,
                        interval.outlived()));
            }
        }
        return new TurnbullCurve(age, end(), steps);
    }

    private void requireMaximum() {
        if (status == Status.NO_LIVES || status == Status.NOT_CONVERGED) {
            throw new IllegalStateException("no estimate: " + status + ", " + cause());
        }
    }
}
