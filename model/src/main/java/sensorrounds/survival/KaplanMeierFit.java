package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import sensorrounds.numeric.WeightedCount;

/**
 * A Kaplan-Meier curve with all it stands on. It ends at the last age under observation and refuses to answer beyond.
 * Two warnings belong beside it: {@link #collapsedAt()} and {@link #unobserved()}.
 */
public final class KaplanMeierFit {
    /** Share of ages without anybody watched beyond which nothing is said of survival before the first failure. */
    private static final double MOST_BLIND = 0.1;

    private final double from;
    private final double to;
    private final List<Step> steps;
    private final RiskSet riskSet;
    private final TimeWatched time;
    private final double level;

    KaplanMeierFit(double from, double to, List<Step> steps, RiskSet riskSet, TimeWatched time, double level) {
        this.from = from;
        this.to = to;
        this.steps = List.copyOf(steps);
        this.riskSet = riskSet;
        this.time = time;
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
     * Lower limit before the first failure, where Greenwood's variance is 0 and limits built on it are 1: none failed in the time
     * watched up to the first failure, or to the end, of which the mid-P limit of H is that of {@link WeightedCount} without events;
     * of n watched throughout S is (1 - level)^(1/n). Or the limit at the first failure where that is higher: what S surely is
     * there it surely is before. 0 where nobody was under observation for more than a tenth of those ages.
     */
    public double lowerBeforeFailures() {
        double first = steps.isEmpty() ? to : steps.get(0).age();
        double blind = 0;
        for (Span gap : unobserved()) {
            blind += Math.max(0, Math.min(first, gap.to()) - gap.from());
        }
        double none = blind > MOST_BLIND * (first - from) || !(time.exposure(first) > 0)
                ? 0
                : Math.exp(-cumulativeHazardLimits(first, 0, 0).upper());
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

    /**
     * The cumulative hazard at an age with limits as of a weighted count of failures, each of weight 1/Y ({@link WeightedCount}). NaN
     * where nobody was watched before.
     */
    public Estimate cumulativeHazardLimits(double age) {
        double hazard = cumulativeHazard().at(age);
        double error = curve(0, Step::cumulativeHazardError).at(age);
        return cumulativeHazardLimits(age, hazard, error * error);
    }

    private Estimate cumulativeHazardLimits(double age, double hazard, double variance) {
        return time.exposure(age) > 0
                ? limits(new WeightedCount(hazard, variance, time.meanWeight(age), time.meanSquare(age)), level)
                : new Estimate(hazard, Double.NaN, Double.NaN);
    }

    private static Estimate limits(WeightedCount count, double level) {
        return new Estimate(count.sum(), count.limit((1 - level) / 2), count.limit((1 + level) / 2));
    }

    /** Greenwood's standard error of survival. */
    public StepCurve standardError() {
        return curve(0, Step::standardError);
    }

    /**
     * Age by which the share p has failed: the first age with S <= 1 - p, or the midpoint of the flat stretch where S
     * equals 1 - p; NaN where the curve does not come down that far. Its limits are the same quantile of the limit curves
     * (Brookmeyer and Crowley 1982, Biometrics 38:29-41): infinite above where the upper curve does not come down, since nothing
     * speaks against any later age; the end of the curve below where the lower one does not, since it lies beyond.
     */
    public Estimate quantile(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a quantile needs 0 < p < 1, not " + p);
        }
        // The quantile's limits are those of the formula, which are 1 before the first failure. Once S is 0 its lower
        // limit is too.
        double lower = curve(1, step -> step.survival() > 0 ? step.lower() : 0).firstAtOrBelow(1 - p);
        double upper = upper().firstAtOrBelow(1 - p);
        return new Estimate(
                survival().firstAtOrBelow(1 - p),
                Double.isNaN(lower) ? to : lower,
                Double.isNaN(upper) ? Double.POSITIVE_INFINITY : upper);
    }

    public Estimate median() {
        return quantile(0.5);
    }

    /** Mean life within the first ages up to tau, the area under the curve: Klein and Moeschberger (2003), eq. 4.5.1. */
    public double restrictedMean(double tau) {
        return survival().areaTo(tau);
    }

    /** {@link #restrictedMean} with the limits of {@link #meanResidualLifeLimits}. */
    public Estimate restrictedMeanLimits(double tau, double coverage) {
        return meanResidualLifeLimits(from, tau, coverage);
    }

    /**
     * {@link #meanResidualLife} with limits as of a weighted count ({@link WeightedCount}): to first order a failure at an age t adds
     * A(t) / Y(t) to the mean time lost by tau, A(t) the area under the curve from t to tau over S at the first age, and an event met
     * at random in the time watched the mean of that. NaN limits where the curve came down to 0 at its first failure, or nobody was
     * watched in between.
     *
     * @param coverage of the limits, in (0, 1)
     */
    public Estimate meanResidualLifeLimits(double age, double tau, double coverage) {
        double mean = meanResidualLife(age, tau);
        boolean none = steps.stream().noneMatch(step -> step.age() > age && step.age() < tau);
        double lost = none ? 0 : tau - age - mean;
        double error = meanResidualLifeError(age, tau);
        StepCurve survival = survival();
        double alive = survival.at(age);
        double beyond = 0;
        double exposure = 0;
        double weight = 0;
        double square = 0;
        for (int i = time.stretches() - 1; i >= 0; i--) {
            double start = Math.max(age, time.stretch(i).from());
            double end = Math.min(tau, time.stretch(i).to());
            if (end > start && time.watched(i) > 0) {
                // The curve is level within a stretch, so that the area beyond falls in a line.
                double area = survival.at(start) / alive * (end - start);
                double middle = beyond + area / 2;
                exposure += time.watched(i) * (end - start);
                weight += middle * (end - start);
                square += (middle * middle + area * area / 12) * (end - start) / time.watched(i);
            }
            beyond += end > start ? survival.at(start) / alive * (end - start) : 0;
        }
        if (!(mean >= 0 && exposure > 0 && (lost > 0) == (error > 0))) {
            return new Estimate(mean, Double.NaN, Double.NaN);
        }
        Estimate loss = limits(new WeightedCount(lost, error * error, weight / exposure, square / exposure), coverage);
        return new Estimate(mean, Math.max(0, tau - age - loss.upper()), tau - age - loss.lower());
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
