package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.numeric.StandardNormal;

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

    /** On which scale pointwise limits are symmetric. */
    public enum Band {
        /** On log(-log S): limits stay in (0, 1) and hold best in small samples. */
        LOG_LOG {
            @Override
            double limit(double survival, double greenwood, double z) {
                return Math.pow(survival, Math.exp(-z * Math.sqrt(greenwood) / Math.abs(Math.log(survival))));
            }
        },
        /** On log S. */
        LOG {
            @Override
            double limit(double survival, double greenwood, double z) {
                return survival * Math.exp(z * Math.sqrt(greenwood));
            }
        },
        /** On S itself, cut to [0, 1]. */
        PLAIN {
            @Override
            double limit(double survival, double greenwood, double z) {
                return survival + z * survival * Math.sqrt(greenwood);
            }
        };

        /** The limit z standard errors up (down when negative), before it is cut to [0, 1]. */
        abstract double limit(double survival, double greenwood, double z);
    }

    /** Log-log limits at 95 %, from age 0. */
    public static KaplanMeier withDefaults() {
        return new KaplanMeier(Band.LOG_LOG, 0.95, 0);
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
        double z = StandardNormal.quantile((1 + level) / 2);
        RiskSet riskSet = RiskSet.of(sample);
        List<KaplanMeierFit.Step> steps = new ArrayList<>();
        double survival = 1;
        double greenwood = 0;
        double hazard = 0;
        double hazardVariance = 0;
        double end = from;
        for (Map.Entry<Double, Leaving> leaving : leavingByAge(sample).entrySet()) {
            double age = leaving.getKey();
            end = Math.max(end, age);
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
            double spread = survival > 0 ? greenwood : Double.NaN;
            steps.add(new KaplanMeierFit.Step(
                    age,
                    atRisk,
                    failures,
                    leaving.getValue().censored,
                    survival,
                    survival * Math.sqrt(spread),
                    Math.max(0, band.limit(survival, spread, -z)),
                    Math.min(1, band.limit(survival, spread, z)),
                    hazard,
                    Math.sqrt(hazardVariance)));
        }
        return new KaplanMeierFit(from, end, steps, riskSet, level);
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
