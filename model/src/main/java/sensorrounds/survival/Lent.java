package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import sensorrounds.survival.CohortFit.Shares;
import sensorrounds.survival.CohortLadder.Rung;
import sensorrounds.survival.ParametricFitter.ScalePrior;

/**
 * What a cohort without a fit of its own borrows: a shape, a scale towards which its own is drawn, and how strongly. With enough
 * cohorts that strength comes from how much they differ ({@link CohortSpread}), else it is declared.
 *
 * @param rung {@link Rung#PARTLY_POOLED} or {@link Rung#POOLED_SHAPE}
 * @param priorFailures failures' worth that the scale lent weighs
 * @param varLogHazard variance of the log of the hazard lent, where it was estimated
 * @param cohorts how many the strength was estimated from; 0 where it is declared
 */
record Lent(
        Rung rung,
        double shape,
        double varLogShape,
        double scaleDays,
        double priorFailures,
        double varLogHazard,
        int cohorts,
        String shapeWords,
        String scaleWords) {
    /** Fewer cohorts do not tell how much cohorts differ: shrinkage to an estimated mean needs four (Efron and Morris 1975). */
    static final int LEAST_COHORTS = 4;

    /** A law with what its scale rests on. */
    record Borrowed(WeibullLife life, Shares shares) {}

    /** The scale lent is that of all lives at the shape lent, so that failures expected and seen agree in all. */
    static Lent of(
            SortedMap<String, LifetimeSample> cohorts,
            LifetimeSample pool,
            WeibullLife merged,
            CohortLadder.Settings settings) {
        CommonShapeFit common = CommonShapeFitter.withDefaults().fit(cohorts.values());
        if (common.converged()) {
            ParametricFit scale = ParametricFitter.of(Family.WEIBULL)
                    .withShape(common.shape(), common.varLogShape())
                    .fit(pool);
            if (scale.converged()) {
                return declared(
                                common.shape(),
                                common.varLogShape(),
                                scale.scale().value(),
                                settings,
                                "the shape common to " + Counted.cohorts(common.cohorts()))
                        .estimated(cohorts);
            }
        }
        return declared(
                merged.shape(),
                merged.varLogShape(),
                merged.scaleDays(),
                settings,
                "the shape of all lives merged, since there is no common one (" + common.cause() + ")");
    }

    private static Lent declared(
            double shape, double varLogShape, double scaleDays, CohortLadder.Settings settings, String shapeWords) {
        return new Lent(
                Rung.POOLED_SHAPE,
                shape,
                varLogShape,
                scaleDays,
                settings.priorFailures(),
                0,
                0,
                shapeWords,
                "own scale shrunk towards the pooled one with the weight of "
                        + Counted.failures(settings.priorFailures()));
    }

    /** With the strength that the cohorts themselves call for; this where they are too few. */
    private Lent estimated(SortedMap<String, LifetimeSample> cohorts) {
        List<double[]> told = new ArrayList<>();
        for (LifetimeSample sample : cohorts.values()) {
            double expected = expected(sample);
            if (expected > 0) {
                told.add(new double[] {sample.failures(), expected});
            }
        }
        if (told.size() < LEAST_COHORTS) {
            return this;
        }
        CohortSpread spread = CohortSpread.of(
                told.stream().mapToDouble(c -> c[0]).toArray(),
                told.stream().mapToDouble(c -> c[1]).toArray(),
                CohortSpread.Criterion.KEPT_FROM_ZERO);
        return new Lent(
                Rung.PARTLY_POOLED,
                shape,
                varLogShape,
                scaleDays * Math.exp(-Math.log(spread.mean()) / shape),
                spread.shape(),
                spread.varLogMean(),
                spread.cohorts(),
                shapeWords,
                "own scale drawn towards that of the typical of " + Counted.cohorts(told.size())
                        + " as strongly as they are alike");
    }

    /**
     * Failures expected of a cohort by the hazard lent, over the time it was watched. Where failures are known to intervals that
     * time rests on when they failed: then it is such that failures over expected is the cohort's own estimate, which is what an
     * EM algorithm ends with. NaN where the cohort has failures and no estimate of its own.
     */
    double expected(LifetimeSample sample) {
        if (sample.failures() > 0) {
            ParametricFit own =
                    ParametricFitter.of(Family.WEIBULL).withShape(shape, 0).fit(sample);
            return own.converged()
                    ? sample.failures() * Math.exp(shape * Math.log(own.scale().value() / scaleDays))
                    : Double.NaN;
        }
        WeibullLife law = new WeibullLife(shape, scaleDays, 0, 0, 0);
        double sum = 0;
        for (int i = 0; i < sample.size(); i++) {
            sum += sample.weight(i) * (law.cumulativeHazard(sample.lower(i)) - law.cumulativeHazard(sample.entry(i)));
        }
        return sum;
    }

    /** A cohort's own scale with what is lent it. */
    ParametricFit fit(LifetimeSample sample) {
        return ParametricFitter.of(Family.WEIBULL)
                .withShape(shape, varLogShape)
                .with(new ScalePrior(scaleDays, priorFailures))
                .fit(sample);
    }

    /**
     * The law of such a fit, which has converged. The error of the hazard lent counts with its weight, and that of the weight with
     * the distance between the two hazards: variance 2 B^2 / (k - 3) of a share B drawn from k cohorts, Morris (1983), JASA
     * 78:47-55, eq. 1.15 (from memory), here on the log of the hazard.
     */
    Borrowed law(ParametricFit fit, LifetimeSample sample) {
        double expected = expected(sample);
        double own = expected / (priorFailures + expected);
        double others = Double.isNaN(own) ? 1 : 1 - own;
        double variance = others * others * varLogHazard;
        if (rung == Rung.PARTLY_POOLED && own > 0) {
            double ratio = sample.failures() / expected;
            double apart = (ratio - 1) / (own * ratio + others);
            variance += 2 * others * others / (cohorts - 3) * apart * apart;
        }
        WeibullLife life = fit.life();
        return new Borrowed(
                new WeibullLife(
                        life.shape(),
                        life.scaleDays(),
                        life.varLogShape(),
                        life.varLogScale() + variance / (shape * shape),
                        life.covLogs()),
                new Shares(own, 1 - own, 0));
    }
}
