package sensorrounds.landmark;

import sensorrounds.survival.Family;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.KaplanMeierFit;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.ParametricFit;
import sensorrounds.survival.ParametricFitter;

/**
 * Life still to come from a landmark on, time in days from it.
 *
 * @param lives number of lives
 * @param failures those that failed
 * @param curve Kaplan-Meier with failures at the middle of their interval, a diagnostic whose limits leave out that the
 *     day is not known
 * @param law Weibull by the interval likelihood, the figures of record; ask whether it converged
 */
public record LifeAhead(double lives, double failures, KaplanMeierFit curve, ParametricFit law) {
    public static LifeAhead of(LifetimeSample sample) {
        return new LifeAhead(
                sample.lives(),
                sample.failures(),
                KaplanMeier.withDefaults().fit(sample.atMidpoints()),
                ParametricFitter.of(Family.WEIBULL).fit(sample));
    }
}
