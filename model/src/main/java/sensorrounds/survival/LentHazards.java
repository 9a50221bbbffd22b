package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import sensorrounds.survival.CohortFit.Shares;
import sensorrounds.survival.CohortLadder.Rung;
import sensorrounds.survival.EarlyWearFitter.Early;

/**
 * What cohorts with few failures borrow: the two hazards of all lives together, an early and constant one and wear-out, fitted
 * with a declared prior; each cohort has a level of its own on both, drawn towards that of the typical cohort. A single Weibull
 * between the two hazards is too high for young sensors and too flat for the old, and few failures cannot tell that it is.
 *
 * @param rung {@link Rung#PARTLY_POOLED}, or {@link Rung#POOLED_SHAPE} where the cohorts are too few to tell how alike they are
 * @param typical the typical cohort's law
 * @param priorFailures failures' worth that its level weighs
 * @param varLogLevel variance of the log of that level, where it was estimated
 * @param cohorts how many the weight was estimated from; 0 where it is declared
 */
record LentHazards(Rung rung, EarlyWearLife typical, double priorFailures, double varLogLevel, int cohorts) {
    /** A law with what its level rests on. */
    record Borrowed(EarlyWearLife life, Shares shares) {}

    /** The two hazards of all lives together, as far as these and the declared prior tell them. */
    static EarlyWearFit common(LifetimeSample pool, ParametricFit plain, TwoHazardPrior prior) {
        return EarlyWearFitter.of(Early.CONSTANT).with(prior).fit(pool, plain);
    }

    /** @param law of all lives together, see {@link #common} */
    static LentHazards of(
            SortedMap<String, LifetimeSample> cohorts, EarlyWearLife law, CohortLadder.Settings settings) {
        List<double[]> told = new ArrayList<>();
        for (LifetimeSample sample : cohorts.values()) {
            double expected = new HazardLevel(sample, law).expected();
            if (expected > 0) {
                told.add(new double[] {sample.failures(), expected});
            }
        }
        if (told.size() < Lent.LEAST_COHORTS) {
            return new LentHazards(Rung.POOLED_SHAPE, law, settings.priorFailures(), 0, 0);
        }
        CohortSpread spread = CohortSpread.of(
                told.stream().mapToDouble(c -> c[0]).toArray(),
                told.stream().mapToDouble(c -> c[1]).toArray(),
                CohortSpread.Criterion.KEPT_FROM_ZERO);
        return new LentHazards(
                Rung.PARTLY_POOLED, law.times(spread.mean(), 0), spread.shape(), spread.varLogMean(), spread.cohorts());
    }

    /**
     * The law of a cohort. The variance of its level is that of the gamma posterior, with the error of the typical level as far
     * as it leans on it and that of the weight: 2 B^2 / (k - 3) of a share B drawn from k cohorts, Morris (1983), JASA 78:47-55
     * (from memory).
     */
    Borrowed law(LifetimeSample sample) {
        HazardLevel level = new HazardLevel(sample, typical);
        double expected = level.expected();
        double own = priorFailures == Double.POSITIVE_INFINITY ? 0 : expected / (priorFailures + expected);
        double others = 1 - own;
        double estimate = own == 0 ? 1 : level.estimate(priorFailures);
        double variance = others * others * varLogLevel;
        if (own > 0) {
            variance += 1 / (priorFailures + sample.failures());
            if (rung == Rung.PARTLY_POOLED) {
                double ratio = sample.failures() / expected;
                double apart = (ratio - 1) / (own * ratio + others);
                variance += 2 * others * others / Math.max(1, cohorts - 3) * apart * apart;
            }
        }
        return new Borrowed(typical.times(estimate, variance), new Shares(own, others, 0));
    }

    String words() {
        return "an early hazard and wear-out common to all, with the declared prior; own level drawn towards that of "
                + (cohorts > 0
                        ? "the typical of " + Counted.cohorts(cohorts) + " as strongly as they are alike"
                        : "all with the weight of " + Counted.failures(priorFailures));
    }
}
