package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.numeric.StandardNormal;
import sensorrounds.numeric.WeightedCount;

/**
 * Kaplan-Meier (product-limit) estimate of survival and the Nelson-Aalen cumulative hazard, with delayed entry: a life
 * counts at ages in (entry, exit], so that one failing at t is at risk at t and one entering at t is not. Weights are
 * counts: a weight of 3 gives the same as the life three times. Failures must be known to the day; for lives known to an
 * interval pass {@link LifetimeSample#atMidpoints()} and take the curve as a diagnostic.
 *
 * <p>Sources: Kaplan and Meier (1958), JASA 53:457-481; Greenwood's variance and the transformed limits: Klein and
 * Moeschberger (2003), Survival Analysis, 2nd ed., eqs. 4.2.1-4.2.4, 4.3.1-4.3.2, and 4.6 for delayed entry; variance of
 * the cumulative hazard sum d/Y^2: Aalen (1978), Ann. Stat. 6:701-726.
 */
public final class KaplanMeier {
    private final Band band;
    private final double level;
    private final double from;

    private KaplanMeier(Band band, double level, double from) {
        this.band = band;
        this.level = level;
        this.from = from;
    }

    /** How pointwise limits are drawn. */
    public enum Band {
        /**
         * As of a weighted count of failures: mid-P gamma limits of -log S with Greenwood's variance ({@link WeightedCount},
         * {@link TimeWatched}). They hold where few are watched early, as under delayed entry.
         */
        COUNTS {
            @Override
            double limit(Spread at, Side side) {
                return at.greenwood() < Double.POSITIVE_INFINITY
                        ? Math.exp(-at.count().limit(1 - side.p()))
                        : Double.NaN;
            }
        },
        /** On log(-log S): limits stay in (0, 1). */
        LOG_LOG {
            @Override
            double limit(Spread at, Side side) {
                double log = Math.abs(Math.log(at.survival()));
                return Math.pow(at.survival(), Math.exp(-side.z() * Math.sqrt(at.greenwood()) / log));
            }
        },
        /** On log S. */
        LOG {
            @Override
            double limit(Spread at, Side side) {
                return at.survival() * Math.exp(side.z() * Math.sqrt(at.greenwood()));
            }
        },
        /** On S itself, cut to [0, 1]. */
        PLAIN {
            @Override
            double limit(Spread at, Side side) {
                return at.survival() + side.z() * at.survival() * Math.sqrt(at.greenwood());
            }
        };

        /** The limit on one side, before it is cut to [0, 1]. */
        abstract double limit(Spread at, Side side);
    }

    /** A limit's probability below it, and the normal quantile of that. */
    record Side(double p, double z) {
        static Side of(double p) {
            return new Side(p, StandardNormal.quantile(p));
        }
    }

    /**
     * What limits at an age are drawn from.
     *
     * @param greenwood variance of log S; NaN once S is 0
     * @param weight of a further failure in -log S, as {@link TimeWatched#meanWeight}, and its square
     */
    record Spread(double survival, double greenwood, double weight, double weightSquare) {
        WeightedCount count() {
            return new WeightedCount(-Math.log(survival), greenwood, weight, weightSquare);
        }
    }

    /** Limits as of a weighted count at 95 %, from age 0. */
    public static KaplanMeier withDefaults() {
        return new KaplanMeier(Band.COUNTS, 0.95, 0);
    }

    public KaplanMeier with(Band newBand) {
        return new KaplanMeier(newBand, level, from);
    }

    /** Coverage of the pointwise limits, in (0, 1). */
    public KaplanMeier withLevel(double newLevel) {
        if (!(newLevel > 0 && newLevel < 1)) {
            throw new IllegalArgumentException("coverage of limits must lie between 0 and 1, not " + newLevel);
        }
        return new KaplanMeier(band, newLevel, from);
    }

    /**
     * Survival given alive at this age: only failures after it count, with the same risk sets. The remedy where small
     * early risk sets make the curve from 0 worthless.
     */
    public KaplanMeier givenAliveAt(double age) {
        if (!(age >= 0 && age < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a curve starts at a finite age from 0 up, not at " + age);
        }
        return new KaplanMeier(band, level, age);
    }

    /**
     * The estimate; without lives a curve whose domain is the single starting age.
     *
     * @throws IllegalArgumentException if a failure is known only to an interval
     */
    public KaplanMeierFit fit(LifetimeSample sample) {
        if (!sample.exactFailures()) {
            throw new IllegalArgumentException(
                    "Kaplan-Meier needs exact failure ages and this sample has failures known"
                            + " to an interval; pass sample.atMidpoints() for a diagnostic, or fit a law of life instead");
        }
        Side lower = Side.of((1 - level) / 2);
        Side upper = Side.of((1 + level) / 2);
        RiskSet riskSet = RiskSet.of(sample);
        List<KaplanMeierFit.Step> steps = new ArrayList<>();
        double survival = 1;
        double greenwood = 0;
        double hazard = 0;
        double hazardVariance = 0;
        double end = from;
        SortedMap<Double, Leaving> byAge = leavingByAge(sample);
        if (!byAge.isEmpty()) {
            end = Math.max(from, byAge.lastKey());
        }
        TimeWatched time = TimeWatched.of(riskSet, from, end);
        for (Map.Entry<Double, Leaving> leaving : byAge.entrySet()) {
            double age = leaving.getKey();
            double failures = leaving.getValue().failures;
            if (!(age > from && failures > 0)) {
                continue;
            }
            double atRisk = riskSet.at(age);
            double left = atRisk - failures > 1e-12 * atRisk ? atRisk - failures : 0;
            survival *= left / atRisk;
            greenwood += left > 0 ? failures / (atRisk * left) : Double.POSITIVE_INFINITY;
            hazard += failures / atRisk;
            hazardVariance += failures / (atRisk * atRisk);
            // With S = 0 the variance and every limit built on it are undefined; NaN says so.
            double variance = survival > 0 ? greenwood : Double.NaN;
            Spread spread = new Spread(survival, variance, time.meanWeight(age), time.meanSquare(age));
            steps.add(new KaplanMeierFit.Step(
                    age,
                    atRisk,
                    failures,
                    leaving.getValue().censored,
                    survival,
                    survival * Math.sqrt(variance),
                    Math.max(0, band.limit(spread, lower)),
                    Math.min(1, band.limit(spread, upper)),
                    hazard,
                    Math.sqrt(hazardVariance)));
        }
        return new KaplanMeierFit(from, end, steps, riskSet, time, level);
    }

    private static SortedMap<Double, Leaving> leavingByAge(LifetimeSample sample) {
        SortedMap<Double, Leaving> byAge = new TreeMap<>();
        for (int i = 0; i < sample.size(); i++) {
            if (sample.entry(i) < sample.exit(i)) {
                Leaving leaving = byAge.computeIfAbsent(sample.exit(i), age -> new Leaving());
                if (sample.failed(i)) {
                    leaving.failures += sample.weight(i);
                } else {
                    leaving.censored += sample.weight(i);
                }
            }
        }
        return byAge;
    }

    private static final class Leaving {
        private double failures;
        private double censored;
    }
}
