package sensorrounds.condition;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.condition.CrossedTries.Pair;
import sensorrounds.numeric.StandardNormal;

/**
 * What technicians add to the log odds of waking a sensor, over and above the readers they use: crossed random effects of
 * readers and technicians on the logit of one try, fitted by the Laplace approximation with the spread of technicians by EM
 * (Breslow and Clayton 1993, J. Am. Stat. Assoc. 88:9; Searle, Casella and McCulloch 1992, Variance Components, ch. 7 for
 * crossed effects). Only technicians who share a reader with a colleague have an effect; the others are one with their
 * readers, see {@link CrossedTries}.
 */
final class TechnicianEffects implements Serializable {
    private static final int STEPS = 100;
    private static final double MOVED = 1e-6;
    /** Technicians that the declared spread weighs as many as. */
    private static final double PRIOR_TECHNICIANS = 4;
    /** The work grows with the cube of a pool: beyond this its technicians are left as they are, and the note says so. */
    private static final int LARGEST_POOL = 500;

    /**
     * One technician.
     *
     * @param logOdds added to the log odds of one try, from the mean of the colleagues in the pool, shrunk to 0
     * @param deviation posterior standard deviation
     * @param behind how far it lies over the effects of the colleagues on the same readers, as they share the reads
     * @param behindDeviation of that
     */
    record Effect(double logOdds, double deviation, double behind, double behindDeviation) implements Serializable {
        /** Whether both the effect and its distance to colleagues with the same readers lie below 0 for sure. */
        boolean slow() {
            double z = StandardNormal.quantile(0.975);
            return logOdds + z * deviation < 0 && behind + z * behindDeviation < 0;
        }
    }

    private final SortedMap<String, Effect> effects = new TreeMap<>();
    private final Map<String, CrossedPool> pools = new HashMap<>();
    private double deviation = Double.NaN;
    private String note = "";

    private TechnicianEffects() {}

    /**
     * @param inner log odds of an inner wheel over another
     * @param cold log odds of the cold over other weather
     * @param readers the law of readers' chances
     */
    static TechnicianEffects fit(
            CrossedTries crossed,
            WakeCells cells,
            double inner,
            double cold,
            BetaDistribution readers,
            ConditionSettings settings) {
        TechnicianEffects result = new TechnicianEffects();
        List<CrossedPool> pools = new ArrayList<>();
        for (List<Pair> pairs : crossed.pools()) {
            CrossedPool pool = new CrossedPool(readers);
            for (Pair pair : pairs) {
                for (WakeCells.Key key : crossed.keys(pair)) {
                    double shift = (key.inner() ? inner : 0) + (key.cold() ? cold : 0);
                    pool.add(pair, shift, cells.tries(key, settings.triesCounted()));
                }
            }
            if (pool.size() <= LARGEST_POOL) {
                pools.add(pool);
            } else {
                result.note = "a pool of " + pool.size() + " readers and technicians is too large to tell them apart";
            }
        }
        if (pools.isEmpty()) {
            return result;
        }
        double variance = settings.technicianDeviation() * settings.technicianDeviation();
        double declared = variance;
        for (int i = 0; i < STEPS; i++) {
            double squares = PRIOR_TECHNICIANS * declared;
            double technicians = PRIOR_TECHNICIANS;
            for (CrossedPool pool : pools) {
                pool.fit(variance);
                squares += pool.expectedSquares();
                technicians += pool.technicians().size();
            }
            double next = squares / technicians;
            boolean still = Math.abs(next - variance) < MOVED * variance;
            variance = next;
            if (still) {
                break;
            }
        }
        result.deviation = Math.sqrt(variance);
        for (CrossedPool pool : pools) {
            pool.fit(variance);
            for (String technician : pool.technicians()) {
                result.effects.put(technician, pool.effect(technician));
                result.pools.put(technician, pool);
            }
        }
        return result;
    }

    /** Technicians who can be told apart from their readers, in order. */
    SortedMap<String, Effect> effects() {
        return effects;
    }

    /** Added to the log odds of one try; 0 for one who is not told apart. */
    double of(String technicianId) {
        Effect effect = effects.get(technicianId);
        return effect == null ? 0 : effect.logOdds();
    }

    /** Standard deviation of technicians' log odds; NaN when none is told apart. */
    double deviation() {
        return deviation;
    }

    /** What to know about the fit, empty when nothing. */
    String note() {
        return note;
    }

    /** Variance of the mean effect of technicians who share a reader's reads like this. */
    double varianceOfMean(SortedMap<String, Double> shares) {
        return shares.keySet().stream()
                .map(pools::get)
                .filter(Objects::nonNull)
                .distinct()
                .mapToDouble(pool -> pool.varianceOfMean(shares))
                .sum();
    }
}
