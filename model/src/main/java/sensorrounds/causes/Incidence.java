package sensorrounds.causes;

import java.util.List;
import java.util.function.ToDoubleFunction;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.RiskSet;
import sensorrounds.survival.StepCurve;

/**
 * Incidence of each cause by age, and the share still without any end. The curves stop at the last age under observation
 * and refuse to answer beyond. Under delayed entry the same warnings hold as for a survival curve: small early risk sets,
 * and a share of 0 event-free that stays 0 once a risk set empties.
 *
 * @param <C> type of the causes
 */
public final class Incidence<C> {
    private final List<C> causes;
    private final List<Step> steps;
    private final double to;
    private final double z;
    private final RiskSet riskSet;

    Incidence(List<C> causes, List<Step> steps, double to, double z, RiskSet riskSet) {
        this.causes = causes;
        this.steps = List.copyOf(steps);
        this.to = to;
        this.z = z;
        this.riskSet = riskSet;
    }

    /**
     * State at an age with ends. Arrays follow the declared order of the causes.
     *
     * @param atRisk weight under observation just before
     * @param ends weight ending at this age, by cause
     * @param eventFree share not ended by any cause
     * @param eventFreeError its standard error; 0 once the share is 0
     * @param incidence share ended by each cause
     * @param error standard errors of these
     * @param hazard cumulative cause-specific hazard, sum d_k / Y
     * @param hazardError its standard error, root of sum d_k / Y^2
     */
    public record Step(
            double age,
            double atRisk,
            double[] ends,
            double eventFree,
            double eventFreeError,
            double[] incidence,
            double[] error,
            double[] hazard,
            double[] hazardError) {}

    public List<C> causes() {
        return causes;
    }

    /** One row per age with ends, in order. */
    public List<Step> steps() {
        return steps;
    }

    /** Share not ended by any cause. */
    public StepCurve eventFree() {
        return curve(1, Step::eventFree);
    }

    public StepCurve eventFreeError() {
        return curve(0, Step::eventFreeError);
    }

    /** Share ended by this cause. */
    public StepCurve of(C cause) {
        int k = index(cause);
        return curve(0, step -> step.incidence()[k]);
    }

    /** Standard error of {@link #of}. */
    public StepCurve errorOf(C cause) {
        int k = index(cause);
        return curve(0, step -> step.error()[k]);
    }

    /** Cumulative hazard of this cause while the others are at work too. */
    public StepCurve hazardOf(C cause) {
        int k = index(cause);
        return curve(0, step -> step.hazard()[k]);
    }

    /** Standard error of {@link #hazardOf}. */
    public StepCurve hazardErrorOf(C cause) {
        int k = index(cause);
        return curve(0, step -> step.hazardError()[k]);
    }

    /** Share ended by this cause at an age, limits on log(-log F); NaN limits where the share is 0 or 1. */
    public Estimate at(C cause, double age) {
        return withLimits(of(cause).at(age), errorOf(cause).at(age));
    }

    /** {@link #at} for each of these ages, in one pass over the steps for all of them. */
    public List<Estimate> at(C cause, List<Integer> ages) {
        StepCurve share = of(cause);
        StepCurve error = errorOf(cause);
        return ages.stream()
                .map(age -> withLimits(share.at(age), error.at(age)))
                .toList();
    }

    private Estimate withLimits(double share, double error) {
        if (!(share > 0 && share < 1)) {
            return new Estimate(share, Double.NaN, Double.NaN);
        }
        double log = Math.log(share);
        double spread = Math.exp(z * error / (share * Math.abs(log)));
        return new Estimate(share, Math.exp(log * spread), Math.exp(log / spread));
    }

    /** Mean time lost to this cause within the first ages up to tau: the area under its incidence. */
    public double meanTimeLost(C cause, double tau) {
        return of(cause).areaTo(tau);
    }

    /** Mean time without any end within the first ages up to tau. */
    public double meanTimeFree(double tau) {
        return eventFree().areaTo(tau);
    }

    /** Units under observation at any age. */
    public RiskSet riskSet() {
        return riskSet;
    }

    /** Last age under observation. */
    public double to() {
        return to;
    }

    private int index(C cause) {
        int k = causes.indexOf(cause);
        if (k < 0) {
            throw new IllegalArgumentException(cause + " is not among the causes " + causes);
        }
        return k;
    }

    private StepCurve curve(double start, ToDoubleFunction<Step> value) {
        return new StepCurve(
                0,
                to,
                start,
                steps.stream().mapToDouble(Step::age).toArray(),
                steps.stream().mapToDouble(value).toArray());
    }
}
