package sensorrounds.survival;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.survival.CohortFit.LawInUse;
import sensorrounds.survival.CohortFit.Shares;

/**
 * A law of life for each cohort, from the most its data can carry: its own fit ({@link OwnLaw}: a Weibull, or wear-out
 * beside an early hazard where Akaike's criterion prefers it); else a Weibull of the shape common to all
 * cohorts ({@link CommonShapeFitter}) with its own scale, drawn towards that of the others as strongly as the cohorts are alike
 * ({@link CohortSpread}), or with a declared strength where they are fewer than four; else the pooled law;
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
    private final TwoHazardPrior twoHazards;

    private CohortLadder(Settings settings, Optional<WeakPrior> prior, TwoHazardPrior twoHazards) {
        this.settings = settings;
        this.prior = prior;
        this.twoHazards = twoHazards;
    }

    /** Which law is in use, from the most particular. */
    public enum Rung {
        OWN_FIT,
        /** The common shape; own scale drawn towards that of the typical cohort as strongly as cohorts are alike. */
        PARTLY_POOLED,
        /** The same with a declared strength, where the cohorts are too few to tell it. */
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
     * @param priorFailures how many failures' worth the pooled scale weighs against a cohort's own experience, where the
     *     cohorts are too few to tell
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
        return new CohortLadder(new Settings(20, 5, 5), Optional.empty(), TwoHazardPrior.declared());
    }

    public CohortLadder with(Settings newSettings) {
        return new CohortLadder(newSettings, prior, twoHazards);
    }

    /**
     * With a declared prior for a fleet whose lives are too few for a law: then there is an answer from the first day under observation, with
     * limits as wide as what is not known. Every cohort stands on the law of all lives. Without it such a fleet has no law.
     */
    public CohortLadder with(WeakPrior newPrior) {
        return new CohortLadder(settings, Optional.of(newPrior), twoHazards);
    }

    /** With other limits of the two hazards that cohorts of few failures borrow, {@link LentHazards}. */
    public CohortLadder with(TwoHazardPrior newPrior) {
        return new CohortLadder(settings, prior, newPrior);
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
        LifetimeSample all = LifetimeSample.pooled(ordered.values());
        OwnLaw ofAll = OwnLaw.of(all);
        Pool pool = pool(ordered, all, ofAll);
        SortedMap<String, CohortLife> result = new TreeMap<>();
        result.put(POOL, row(POOL, all, ofAll, pool.choice(), pool.searches(), preventiveShares));
        ordered.forEach((name, sample) -> {
            OwnLaw own = OwnLaw.of(sample);
            result.put(name, row(name, sample, own, choice(sample, own, pool), List.of(), preventiveShares));
        });
        return result;
    }

    /**
     * What all lives together give.
     *
     * @param choice their law
     * @param lent what cohorts borrow of a Weibull; null without a law of their own
     * @param hazards what they borrow of two hazards; empty where these are not to be told
     * @param searches what the fits for these say of themselves
     */
    private record Pool(Choice choice, Lent lent, Optional<LentHazards> hazards, List<FitLine> searches) {}

    private Pool pool(SortedMap<String, LifetimeSample> cohorts, LifetimeSample all, OwnLaw fit) {
        boolean enough = all.failures() >= settings.minPooledFailures();
        if (enough && fit.weibull().converged()) {
            CommonShapeFit shape = CommonShapeFitter.withDefaults().fit(cohorts.values());
            EarlyWearFit two = LentHazards.common(all, fit.weibull(), twoHazards);
            return new Pool(
                    Choice.own(fit, all),
                    Lent.of(cohorts, shape, all, fit.weibull().life(), settings),
                    two.law().map(law -> LentHazards.of(cohorts, law, settings)),
                    List.of(
                            new FitLine("shape common to all cohorts", POOL, shape.report()),
                            new FitLine("two hazards, declared prior", POOL, two.report())));
        }
        String reason = enough
                ? "the pooled fit failed: " + fit.weibull().cause()
                : "all cohorts together have " + Counted.failures(all.failures()) + "; a law of life needs "
                        + Counted.number(settings.minPooledFailures());
        if (prior.isEmpty()) {
            return new Pool(Choice.none(reason), null, Optional.empty(), List.of());
        }
        WeakPriorFit weak = WeakPriorFitter.of(prior.get()).fit(all);
        List<FitLine> searches = List.of(new FitLine("Weibull law of life, declared prior", POOL, weak.report()));
        // A prior alone says nothing of this fleet: without a life under observation there is no law.
        Choice choice = weak.report().converged()
                ? weak(weak, reason)
                : Choice.none(reason + "; " + weak.report().cause());
        return new Pool(choice, null, Optional.empty(), searches);
    }

    /** The law in use, and the Weibull law beside it: the same one unless the own fit is of another form. */
    private record Choice(
            Rung rung,
            Optional<LifeLaw> life,
            Optional<WeibullLife> weibull,
            WeibullLimits limits,
            Shares shares,
            String note) {
        static Choice none(String note) {
            return new Choice(Rung.NONE, Optional.empty(), Optional.empty(), WeibullLimits.NONE, Shares.NONE, note);
        }

        static Choice own(OwnLaw fit, LifetimeSample sample) {
            WeibullLimits limits = WeibullLimits.of(sample, fit.weibull());
            String open = limits.open();
            return new Choice(
                    Rung.OWN_FIT,
                    Optional.of(fit.law()),
                    Optional.of(fit.weibull().life()),
                    limits,
                    Shares.OWN,
                    open.isEmpty() || fit.note().isEmpty() ? fit.note() + open : fit.note() + "; " + open);
        }

        static Choice weibull(Rung rung, WeibullLife law, Shares shares, String note) {
            return new Choice(rung, Optional.of(law), Optional.of(law), WeibullLimits.normal(law), shares, note);
        }

        /** The same law for a cohort that has none of its own. */
        Choice lentTo(Rung newRung, Shares newShares, String newNote) {
            return new Choice(newRung, life, weibull, limits, newShares, newNote);
        }
    }

    private static Choice weak(WeakPriorFit fit, String reason) {
        double fromPrior = Math.min(1, fit.medianLife().fromPrior());
        return Choice.weibull(
                Rung.WEAK_PRIOR,
                fit.life(),
                new Shares(1 - fromPrior, 0, fromPrior),
                reason + "; " + WeakPriorWords.of(fit));
    }

    private Choice choice(LifetimeSample sample, OwnLaw own, Pool pool) {
        Choice pooled = pool.choice();
        Lent lent = pool.lent();
        Optional<LentHazards> hazards = pool.hazards();
        boolean enough = sample.failures() >= settings.minFailures();
        if (enough && own.weibull().converged()) {
            return Choice.own(own, sample);
        }
        String reason = enough
                ? "own fit failed: " + own.weibull().cause()
                : Counted.failures(sample.failures()) + ", an own fit needs " + Counted.number(settings.minFailures());
        if (pooled.life().isEmpty()) {
            return Choice.none(reason + "; " + pooled.note());
        }
        if (pooled.rung() == Rung.WEAK_PRIOR) {
            return pooled.lentTo(
                    Rung.WEAK_PRIOR,
                    new Shares(0, pooled.shares().own(), pooled.shares().prior()),
                    reason + "; the law of all cohorts together with the declared prior, which see");
        }
        ParametricFit scaled = lent.fit(sample);
        if (scaled.converged()) {
            Lent.Borrowed law = lent.law(scaled, sample);
            if (hazards.isPresent()) {
                LentHazards.Borrowed two = hazards.get().law(sample);
                return new Choice(
                        hazards.get().rung(),
                        Optional.of(two.life()),
                        Optional.of(law.life()),
                        law.limits(),
                        two.shares(),
                        reason + "; " + hazards.get().words() + words(two.shares()));
            }
            return new Choice(
                    lent.rung(),
                    Optional.of(law.life()),
                    Optional.of(law.life()),
                    law.limits(),
                    law.shares(),
                    reason + "; " + lent.shapeWords() + ", " + lent.scaleWords() + words(law.shares()));
        }
        return pooled.lentTo(Rung.POOLED, Shares.OTHERS, reason + "; own scale failed: " + scaled.cause());
    }

    private static String words(Shares shares) {
        return Double.isNaN(shares.own()) ? "" : ": " + Math.round(100 * shares.own()) + " % of it its own experience";
    }

    private static CohortLife row(
            String cohort,
            LifetimeSample sample,
            OwnLaw own,
            Choice choice,
            List<FitLine> more,
            Map<String, Double> shares) {
        Optional<WeibullLife> weibull = choice.weibull();
        WeibullLimits limits = choice.limits();
        ParametricFit plain = own.weibull();
        CohortFit fit = new CohortFit(
                cohort,
                choice.rung().name(),
                plain.status().name(),
                Math.round(sample.lives()),
                Math.round(sample.failures()),
                sample.exposure() / DAYS_PER_YEAR,
                weibull.map(WeibullLife::shape).orElse(Double.NaN),
                limits.shape()[0],
                limits.shape()[1],
                weibull.map(WeibullLife::scaleDays).orElse(Double.NaN),
                limits.scaleDays()[0],
                limits.scaleDays()[1],
                choice.life().map(l -> l.quantile(0.5)).orElse(Double.NaN),
                plain.converged() ? plain.logLikelihood() : Double.NaN,
                plain.iterations(),
                plain.gradientNorm(),
                shares.getOrDefault(cohort, Double.NaN),
                choice.note(),
                NpmleCheck.NOT_RUN,
                LawInUse.of(choice.life(), own.aicGain(), choice.shares()));
        List<FitLine> searches = new ArrayList<>();
        searches.add(new FitLine("Weibull law of life", cohort, plain.report()));
        searches.add(new FitLine("two hazards", cohort, own.twoHazards().report()));
        searches.addAll(more);
        return new CohortLife(choice.rung(), choice.life(), weibull, fit, List.copyOf(searches));
    }
}
