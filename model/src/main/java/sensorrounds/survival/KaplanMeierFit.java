package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import sensorrounds.numeric.StandardNormal;

/**
 * A Kaplan-Meier curve with all it stands on. It ends at the last age under observation and refuses to answer beyond.
 * Two warnings belong beside it: {@link #collapsedAt()} and {@link #unobserved()}.
 */
public final class KaplanMeierFit {
    private final double from;
    private final double to;
    private final List<Step> steps;
    private final RiskSet riskSet;
    private final double level;

    KaplanMeierFit(double from, double to, List<Step> steps, RiskSet riskSet, double level) {
        this.from = from;
        this.to = to;
        this.steps = List.copyOf(steps);
        this.riskSet = riskSet;
        this.level = level;
    }

    /**
     * The curve at an age with failures.
     *
     * @param atRisk weight under observation just before, those entering at this very age not among them
     * @param failures weight failing at it
     * @param censored weight last seen alive at it
     * @param standardError Greenwood's; NaN once S is 0
     * @param lower lower limit; NaN once S is 0
     * @param upper upper limit; NaN once S is 0
     * @param cumulativeHazard Nelson-Aalen, one jump d/Y per age
     * @param cumulativeHazardError its standard error
     */
    public record Step(
            double age,
            double atRisk,
            double failures,
            double censored,
            double survival,
            double standardError,
            double lower,
            double upper,
            double cumulativeHazard,
            double cumulativeHazardError) {}

    /** One row per age with failures, in order. */
    public List<Step> steps() {
        return steps;
    }

    public StepCurve survival() {
        return curve(1, Step::survival);
    }

    /** Lower limits; {@link #lowerBeforeFailures} before the first failure, NaN once S is 0. */
    public StepCurve lower() {
        return curve(lowerBeforeFailures(), Step::lower);
    }

    /**
     * Lower limit before the first failure, where Greenwood's variance is 0 and the limits of the formula are 1: with n the fewest
     * units under observation at an age up to it, none of n failing is seen with probability (1 - level) / 2 when S is
     * ((1 - level) / 2)^(1/n) (Clopper and Pearson 1934, Biometrika 26:404-413; the same is the limit of Fay, Brittain and
     * Proschan 2013, Biostatistics 14:723-736, both from memory). Or the limit at the first failure where that is higher: what S
     * surely is there it surely is before. 0 where for a while nobody was under observation.
     */
    public double lowerBeforeFailures() {
        double first = steps.isEmpty() ? to : steps.get(0).age();
        double none = Math.exp(Math.log((1 - level) / 2) / riskSet.least(from, first));
        double there = steps.isEmpty() ? Double.NaN : steps.get(0).lower();
        return there > none ? there : none;
    }

    /** Upper limits; 1 before the first failure, NaN once S is 0. */
    public StepCurve upper() {
        return curve(1, Step::upper);
    }

    public StepCurve cumulativeHazard() {
        return curve(0, Step::cumulativeHazard);
    }

    /** Greenwood's standard error of survival. */
    public StepCurve standardError() {
        return curve(0, Step::standardError);
    }

    /**
     * Age by which the share p has failed: the first age with S <= 1 - p, or the midpoint of the flat stretch where S
     * equals 1 - p; its limits are the same quantile of the limit curves (Brookmeyer and Crowley 1982, Biometrics
     * 38:29-41). NaN where a curve does not come down that far.
     */
    public Estimate quantile(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a quantile needs 0 < p < 1, not " + p);
        }
        // The quantile's limits are those of the formula, which are 1 before the first failure.
        return new Estimate(
                survival().firstAtOrBelow(1 - p),
                curve(1, Step::lower).firstAtOrBelow(1 - p),
                upper().firstAtOrBelow(1 - p));
    }

    public Estimate median() {
        return quantile(0.5);
    }

    /** Mean life within the first ages up to tau, the area under the curve: Klein and Moeschberger (2003), eq. 4.5.1. */
    public double restrictedMean(double tau) {
        return survival().areaTo(tau);
    }

    /**
     * {@link #restrictedMean} with limits symmetric on the log of the mean time lost by tau, tau less the mean, by the delta method:
     * like the limits on log(-log S) they stay within 0 and tau and allow for the skewness of few failures. NaN limits without a
     * failure by tau.
     *
     * @param level coverage, in (0, 1)
     */
    public Estimate restrictedMeanLimits(double tau, double level) {
        double mean = restrictedMean(tau);
        double lost = tau - from - mean;
        double factor = Math.exp(StandardNormal.quantile((1 + level) / 2) * restrictedMeanError(tau) / lost);
        return new Estimate(
                mean, Math.max(0, tau - from - lost * factor), lost > 0 ? tau - from - lost / factor : Double.NaN);
    }

    /** Standard error of {@link #restrictedMean}, Klein and Moeschberger (2003), eq. 4.5.2 cut at tau. */
    public double restrictedMeanError(double tau) {
        StepCurve survival = survival();
        double whole = survival.areaTo(tau);
        double variance = 0;
        for (Step step : steps) {
            double left = step.atRisk() - step.failures();
            if (step.age() < tau && step.survival() > 0) {
                double beyond = whole - survival.areaTo(step.age());
                variance += beyond * beyond * step.failures() / (step.atRisk() * left);
            }
        }
        return Math.sqrt(variance);
    }

    /**
     * Mean life still to come by age tau for those alive at an age, the area under the curve from there to tau over S at
     * the age: Klein and Moeschberger (2003), eq. 2.4.1 cut at tau. Where the curve comes down to 0 by tau this is the
     * whole mean residual life. NaN once S is 0.
     */
    public double meanResidualLife(double age, double tau) {
        requireOrdered(age, tau);
        StepCurve survival = survival();
        double alive = survival.at(age);
        return alive > 0 ? (survival.areaTo(tau) - survival.areaTo(age)) / alive : Double.NaN;
    }

    /** Standard error of {@link #meanResidualLife}: that of the restricted mean, given alive at the age. */
    public double meanResidualLifeError(double age, double tau) {
        requireOrdered(age, tau);
        StepCurve survival = survival();
        double alive = survival.at(age);
        if (!(alive > 0)) {
            return Double.NaN;
        }
        double whole = survival.areaTo(tau);
        double variance = 0;
        for (Step step : steps) {
            if (step.age() > age && step.age() < tau && step.survival() > 0) {
                double beyond = (whole - survival.areaTo(step.age())) / alive;
                variance += beyond * beyond * step.failures() / (step.atRisk() * (step.atRisk() - step.failures()));
            }
        }
        return Math.sqrt(variance);
    }

    private static void requireOrdered(double age, double tau) {
        if (!(age <= tau)) {
            throw new IllegalArgumentException(
                    "life still to come runs from an age to a later one, not from " + age + " to " + tau);
        }
    }

    /** Units under observation at any age. */
    public RiskSet riskSet() {
        return riskSet;
    }

    /**
     * The age at which everybody then under observation failed although others entered later or lived on: the curve is 0
     * from there and stays so, which says nothing about those others. Condition on a later age, or fit a law of life.
     */
    public OptionalDouble collapsedAt() {
        return steps.stream()
                .filter(step -> step.survival() == 0 && step.age() < to)
                .mapToDouble(Step::age)
                .findFirst();
    }

    /** Stretches of age before the end of the curve with nobody under observation: there it is flat for want of data. */
    public List<Span> unobserved() {
        List<Span> gaps = new ArrayList<>();
        double covered = from;
        for (Span span : riskSet.observed()) {
            if (span.from() > covered) {
                gaps.add(new Span(covered, span.from()));
            }
            covered = Math.max(covered, span.to());
        }
        return gaps;
    }

    private StepCurve curve(double start, ToDoubleFunction<Step> value) {
        double[] ages = steps.stream().mapToDouble(Step::age).toArray();
        return new StepCurve(
                from, to, start, ages, steps.stream().mapToDouble(value).toArray());
    }
}
