package sensorrounds.survival;

import java.io.Serializable;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.survival.CohortFit.LawInUse;
import sensorrounds.survival.ParametricFitter.ScalePrior;

/**
 * A law of life for each cohort, from the most its data can carry: its own fit ({@link OwnLaw}: a Weibull, or wear-out
 * beside an early hazard where Akaike's criterion prefers it); else a Weibull of the shape common to all
 * cohorts ({@link CommonShapeFitter}) with its own scale, shrunk weakly towards the pooled scale; else the pooled law;
 * else, where a prior was declared, the law of all lives with it ({@link WeakPriorFitter}); else none, with the reason. The row of {@link #POOL} is the fit of all lives merged, for reference. The same cohorts always give the same answer, in whatever order they come.
 *
 * <p>Why a common shape: cohorts that fail by the same mechanism tend to share the shape while their scales differ
 * (Meeker and Escobar 1998, ch. 8, Weibull with a given shape; Nelson 1985, J. Quality Technology 17:140-146).
 */
public final class CohortLadder {
    /** Name of the pool of all cohorts; no cohort may bear it. */
    public static final String POOL = "all";

    private static final double DAYS_PER_YEAR = 365.25;

    private final Settings settings;
    private final Optional<WeakPrior> prior;

    private CohortLadder(Settings settings, Optional<WeakPrior> prior) {
        this.settings = settings;
        this.prior = prior;
    }

    /** Which law is in use, from the most particular. */
    public enum Rung {
        OWN_FIT,
        POOLED_SHAPE,
        POOLED,
        /** All lives together with a declared prior, where they are too few for a law of their own. */
        WEAK_PRIOR,
        NONE
    }

    /**
     * The declared assumptions.
     *
     * @param minFailures failures a cohort needs to go by its own fit
     * @param minPooledFailures failures all cohorts together need for the pooled law
     * @param priorFailures how many failures' worth the pooled scale weighs against a cohort's own experience
     */
    public record Settings(double minFailures, double minPooledFailures, double priorFailures) implements Serializable {
        public Settings {
            if (!(minFailures >= 2 && minPooledFailures >= 2 && priorFailures > 0)) {
                throw new IllegalArgumentException("a cohort ladder needs at least 2 failures for a fit and a positive"
                        + " prior weight, not " + minFailures + ", " + minPooledFailures + ", " + priorFailures);
            }
        }
    }

    /**
     * Own fit from 20 failures, pooled law from 5, prior worth 5 failures: our choices, no source. At 20 failures the
     * limits, which are normal on the log scale, are still rough: Jeng and Meeker (2000), Technometrics 42:135-148 (seen
     * as an abstract only), want more than 50-100 for that kind. The limits are shown, so that nobody takes them for tight.
     */
    public static CohortLadder withDefaults() {
        return new CohortLadder(new Settings(20, 5, 5), Optional.empty());
    }

    public CohortLadder with(Settings newSettings) {
        return new CohortLadder(newSettings, prior);
    }

    /**
     * With a declared prior for a fleet whose lives are too few for a law: then there is an answer from the first life on, with
     * limits as wide as what is not known. Every cohort stands on the law of all lives. Without it such a fleet has no law.
     */
    public CohortLadder with(WeakPrior newPrior) {
        return new CohortLadder(settings, Optional.of(newPrior));
    }

    /** {@link #fit(Map, Map)} where preventive replacements were not counted. */
    public SortedMap<String, CohortLife> fit(Map<String, LifetimeSample> cohorts) {
        return fit(cohorts, Map.of());
    }

    /**
     * The ladder for every cohort and for {@link #POOL}.
     *
     * @param cohorts lives in days of age, by cohort
     * @param preventiveShares share of preventive replacements by cohort and for the pool, passed on to the
     *     tables; NaN there where missing
     * @throws IllegalArgumentException if a cohort bears the name of the pool
     */
    public SortedMap<String, CohortLife> fit(
            Map<String, LifetimeSample> cohorts, Map<String, Double> preventiveShares) {
        if (cohorts.containsKey(POOL)) {
            throw new IllegalArgumentException(
                    "'" + POOL + "' names all cohorts together; give the cohort another name");
        }
        SortedMap<String, LifetimeSample> ordered = new TreeMap<>(cohorts);
        LifetimeSample pool = LifetimeSample.pooled(ordered.values());
        OwnLaw pooledFit = OwnLaw.of(pool);
        Choice pooled = poolChoice(pool, pooledFit);
        Lent lent = pooled.rung() == Rung.WEAK_PRIOR
                ? null
                : pooled.weibull().map(law -> lent(ordered, pool, law)).orElse(null);
        SortedMap<String, CohortLife> result = new TreeMap<>();
        result.put(POOL, row(POOL, pool, pooledFit, pooled, preventiveShares));
        ordered.forEach((name, sample) -> {
            OwnLaw own = OwnLaw.of(sample);
            result.put(name, row(name, sample, own, choice(sample, own, pooled, lent), preventiveShares));
        });
        return result;
    }

    /** The law in use, and the Weibull law beside it: the same one unless the own fit is of another form. */
    private record Choice(Rung rung, Optional<LifeLaw> life, Optional<WeibullLife> weibull, String note) {
        static Choice none(String note) {
            return new Choice(Rung.NONE, Optional.empty(), Optional.empty(), note);
        }

        static Choice own(OwnLaw fit) {
            return new Choice(
                    Rung.OWN_FIT,
                    Optional.of(fit.law()),
                    Optional.of(fit.weibull().life()),
                    fit.note());
        }

        static Choice weibull(Rung rung, WeibullLife law, String note) {
            return new Choice(rung, Optional.of(law), Optional.of(law), note);
        }
    }

    /** What a cohort without a fit of its own borrows: a shape, and the scale its own is shrunk towards. */
    private record Lent(double shape, double varLogShape, double scaleDays, String words) {}

    /** The scale lent is that of all lives at the shape lent, so that failures expected and seen agree in all. */
    private static Lent lent(SortedMap<String, LifetimeSample> cohorts, LifetimeSample pool, WeibullLife merged) {
        CommonShapeFit common = CommonShapeFitter.withDefaults().fit(cohorts.values());
        if (common.converged()) {
            ParametricFit scale = ParametricFitter.of(Family.WEIBULL)
                    .withShape(common.shape(), common.varLogShape())
                    .fit(pool);
            if (scale.converged()) {
                return new Lent(
                        common.shape(),
                        common.varLogShape(),
                        scale.scale().value(),
                        "the shape common to " + Counted.cohorts(common.cohorts()));
            }
        }
        return new Lent(
                merged.shape(),
                merged.varLogShape(),
                merged.scaleDays(),
                "the shape of all lives merged, since there is no common one (" + common.cause() + ")");
    }

    private Choice poolChoice(LifetimeSample pool, OwnLaw fit) {
        boolean enough = pool.failures() >= settings.minPooledFailures();
        if (enough && fit.weibull().converged()) {
            return Choice.own(fit);
        }
        String reason = enough
                ? "the pooled fit failed: " + fit.weibull().cause()
                : "all cohorts together have " + Counted.failures(pool.failures()) + "; a law of life needs "
                        + Counted.number(settings.minPooledFailures());
        return prior.map(p -> weak(pool, p, reason)).orElse(Choice.none(reason));
    }

    private static Choice weak(LifetimeSample pool, WeakPrior prior, String reason) {
        WeakPriorFit fit = WeakPriorFitter.of(prior).fit(pool);
        return Choice.weibull(Rung.WEAK_PRIOR, fit.life(), reason + "; " + WeakPriorWords.of(fit));
    }

    private Choice choice(LifetimeSample sample, OwnLaw own, Choice pooled, Lent lent) {
        boolean enough = sample.failures() >= settings.minFailures();
        if (enough && own.weibull().converged()) {
            return Choice.own(own);
        }
        String reason = enough
                ? "own fit failed: " + own.weibull().cause()
                : Counted.failures(sample.failures()) + ", an own fit needs " + Counted.number(settings.minFailures());
        if (pooled.life().isEmpty()) {
            return Choice.none(reason + "; " + pooled.note());
        }
        if (pooled.rung() == Rung.WEAK_PRIOR) {
            return new Choice(
                    Rung.WEAK_PRIOR,
                    pooled.life(),
                    pooled.weibull(),
                    reason + "; the law of all cohorts together: " + pooled.note());
        }
        ParametricFit scaled = ParametricFitter.of(Family.WEIBULL)
                .withShape(lent.shape(), lent.varLogShape())
                .with(new ScalePrior(lent.scaleDays(), settings.priorFailures()))
                .fit(sample);
        if (scaled.converged()) {
            return Choice.weibull(
                    Rung.POOLED_SHAPE,
                    scaled.life(),
                    reason
                            + "; " + lent.words() + ", own scale shrunk towards the pooled one with the weight of "
                            + Counted.failures(settings.priorFailures()));
        }
        return new Choice(
                Rung.POOLED, pooled.life(), pooled.weibull(), reason + "; own scale failed: " + scaled.cause());
    }

    private static CohortLife row(
            String cohort, LifetimeSample sample, OwnLaw own, Choice choice, Map<String, Double> shares) {
        Optional<WeibullLife> weibull = choice.weibull();
        double[] none = {Double.NaN, Double.NaN};
        double[] shape = weibull.map(WeibullLife::shapeLimits).orElse(none);
        double[] scale = weibull.map(WeibullLife::scaleLimits).orElse(none);
        ParametricFit plain = own.weibull();
        CohortFit fit = new CohortFit(
                cohort,
                choice.rung().name(),
                plain.status().name(),
                Math.round(sample.lives()),
                Math.round(sample.failures()),
                sample.exposure() / DAYS_PER_YEAR,
                weibull.map(WeibullLife::shape).orElse(Double.NaN),
                shape[0],
                shape[1],
                weibull.map(WeibullLife::scaleDays).orElse(Double.NaN),
                scale[0],
                scale[1],
                choice.life().map(l -> l.quantile(0.5)).orElse(Double.NaN),
                plain.converged() ? plain.logLikelihood() : Double.NaN,
                plain.iterations(),
                plain.gradientNorm(),
                shares.getOrDefault(cohort, Double.NaN),
                choice.note(),
                NpmleCheck.NOT_RUN,
                LawInUse.of(choice.life(), own.aicGain()));
        return new CohortLife(choice.rung(), choice.life(), weibull, fit);
    }
}
