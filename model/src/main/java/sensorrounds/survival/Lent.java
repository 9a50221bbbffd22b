package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.survival.CohortFit.Shares;
import sensorrounds.survival.CohortLadder.Rung;
import sensorrounds.survival.ParametricFitter.ScalePrior;

/**
 * What a cohort without a fit of its own borrows: a shape, a scale towards which its own is drawn, and how strongly. With enough
 * cohorts that strength comes from how much they differ ({@link CohortSpread}), else it is declared.
 *
 * @param rung {@link Rung#PARTLY_POOLED} or {@link Rung#POOLED_SHAPE}
 * @param slope by how much the log of the scale lent moves with the log of the shape
 * @param priorFailures failures' worth that the scale lent weighs
 * @param varLogHazard variance of the log of the hazard lent, where it was estimated
 * @param cohorts how many the strength was estimated from; 0 where it is declared
 * @param open what the cohorts leave open of that strength, where it was estimated
 */
record Lent(
        Rung rung,
        double shape,
        double varLogShape,
        double scaleDays,
        double slope,
        double priorFailures,
        double varLogHazard,
        int cohorts,
        String shapeWords,
        String scaleWords,
        Optional<Open> open) {
    /**
     * What is left open of how much cohorts differ.
     *
     * @param scaleDays the scale by which failures were expected
     */
    record Open(SpreadPosterior spread, double scaleDays) {}

    private static final double Z = StandardNormal.quantile(0.975);

    /** Fewer cohorts do not tell how much cohorts differ: shrinkage to an estimated mean needs four (Efron and Morris 1975). */
    static final int LEAST_COHORTS = 4;

    /** A law with what its scale rests on. */
    record Borrowed(WeibullLife life, WeibullLimits limits, Shares shares) {}

    /** The scale lent is that of all lives at the shape lent, so that failures expected and seen agree in all. */
    static Lent of(
            SortedMap<String, LifetimeSample> cohorts,
            CommonShapeFit common,
            LifetimeSample pool,
            WeibullLife merged,
            CohortLadder.Settings settings) {
        if (common.converged()) {
            ParametricFit scale = ParametricFitter.of(Family.WEIBULL)
                    .withShape(common.shape(), common.varLogShape())
                    .fit(pool);
            if (scale.converged()) {
                return declared(
                                common.shape(),
                                common.varLogShape(),
                                scale.scale().value(),
                                scale.life().covLogs() / common.varLogShape(),
                                settings,
                                "the shape common to " + Counted.cohorts(common.cohorts()))
                        .estimated(cohorts);
            }
        }
        return declared(
                merged.shape(),
                merged.varLogShape(),
                merged.scaleDays(),
                0,
                settings,
                "the shape of all lives merged, since there is no common one ("
                        + common.report().cause() + ")");
    }

    private static Lent declared(
            double shape,
            double varLogShape,
            double scaleDays,
            double slope,
            CohortLadder.Settings settings,
            String shapeWords) {
        return new Lent(
                Rung.POOLED_SHAPE,
                shape,
                varLogShape,
                scaleDays,
                slope,
                settings.priorFailures(),
                0,
                0,
                shapeWords,
                "own scale shrunk towards the pooled one with the weight of "
                        + Counted.failures(settings.priorFailures()),
                Optional.empty());
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
        double[] failures = told.stream().mapToDouble(c -> c[0]).toArray();
        double[] expected = told.stream().mapToDouble(c -> c[1]).toArray();
        CohortSpread spread = CohortSpread.of(failures, expected, CohortSpread.Criterion.KEPT_FROM_ZERO);
        return new Lent(
                Rung.PARTLY_POOLED,
                shape,
                varLogShape,
                scaleDays * Math.exp(-Math.log(spread.mean()) / shape),
                slope,
                spread.shape(),
                spread.varLogMean(),
                spread.cohorts(),
                shapeWords,
                "own scale drawn towards that of the typical of " + Counted.cohorts(told.size())
                        + " as strongly as they are alike",
                Optional.of(new Open(CohortSpread.posterior(failures, expected), scaleDays)));
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
        WeibullLife fitted = withLentSlope(fit.life(), others);
        WeibullLife life = new WeibullLife(
                fitted.shape(),
                fitted.scaleDays(),
                fitted.varLogShape(),
                fitted.varLogScale() + variance / (shape * shape),
                fitted.covLogs());
        WeibullLimits limits = open.filter(o -> expected > 0)
                .map(o -> new WeibullLimits(life.shapeLimits(), scaleLimits(o, fitted, sample.failures(), expected)))
                .orElse(WeibullLimits.normal(life));
        return new Borrowed(life, limits, new Shares(own, 1 - own, 0));
    }

    /** The fit takes the scale lent for fixed; it moves with the shape as well, and with it the share that is drawn to it. */
    private WeibullLife withLentSlope(WeibullLife fit, double others) {
        double covLogs = fit.covLogs() + others * slope * varLogShape;
        double more = varLogShape > 0 ? (covLogs * covLogs - fit.covLogs() * fit.covLogs()) / varLogShape : 0;
        return new WeibullLife(fit.shape(), fit.scaleDays(), fit.varLogShape(), fit.varLogScale() + more, covLogs);
    }

    /**
     * Limits of a scale by the law of its hazard with the spread left open. What the scale does not know because the shape is
     * not, beside the 1 / (failures and their worth) of a hazard, is added to each side, squares with squares.
     */
    private double[] scaleLimits(Open open, WeibullLife fitted, double failures, double expected) {
        double atOpen = expected * Math.exp(shape * Math.log(scaleDays / open.scaleDays()));
        double ofShape = Math.max(0, fitted.varLogScale() - 1 / (priorFailures + failures) / (shape * shape));
        double[] limits = new double[2];
        for (int side = 0; side < 2; side++) {
            double hazard = open.spread().quantile(side == 0 ? 0.975 : 0.025, failures, atOpen);
            double step = Math.log(open.scaleDays()) - Math.log(hazard) / shape - Math.log(fitted.scaleDays());
            double wider = Math.hypot(step, Z * Math.sqrt(ofShape));
            limits[side] = fitted.scaleDays() * Math.exp(side == 0 ? -wider : wider);
        }
        return limits;
    }
}
