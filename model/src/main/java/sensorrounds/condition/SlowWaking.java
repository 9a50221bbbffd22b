package sensorrounds.condition;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.visit.ReadOutcome;

/**
 * Whether a sensor wakes worse than its readers explain: Bayes' rule over two hypotheses. A sound sensor answers each
 * try with the chance p of that reader, wheel and weather; a slow one has its odds multiplied by a declared factor,
 * which gives q. An answer at try k has likelihood p (1-p)^(k-1), giving up after k tries (1-p)^k, both the censored
 * geometric law (Weinberg and Gladen 1986, Biometrics 42:547). A read without a count of tries says nothing. Only the
 * newest reads count, so that a sensor that answers at once again leaves the suspicion behind.
 */
public final class SlowWaking {
    private SlowWaking() {}

    /** Judges a sensor by its readings up to and including {@code asOf}. */
    public static SensorCondition of(SensorLife life, WakeModel model, ConditionSettings settings, LocalDate asOf) {
        return of(countedReadings(life, settings, asOf, Set.of()), model, settings);
    }

    /** Judges a sensor by these readings, oldest first. */
    public static SensorCondition of(List<LifeReading> readings, WakeModel model, ConditionSettings settings) {
        double logRatio = 0;
        int reads = 0;
        double expected = Double.NaN;
        Integer last = null;
        for (LifeReading r : readings) {
            double p = model.chance(r);
            if (r.attempts() != null && !Double.isNaN(p)) {
                logRatio += logRatio(r, model, settings);
                reads++;
                expected = 1 / p;
                last = r.attempts();
            }
        }
        double slow = Odds.chance(Odds.log(settings.slowPrior()) + logRatio);
        return new SensorCondition(slow, reads, expected, last);
    }

    /** log of P(these tries | slow) / P(these tries | sound); 0 where tries or chance are not known. */
    public static double logRatio(LifeReading reading, WakeModel model, ConditionSettings settings) {
        double p = model.chance(reading);
        if (reading.attempts() == null || Double.isNaN(p) || !tried(reading)) {
            return 0;
        }
        double sound = Odds.log(p);
        double slow = sound + Math.log(settings.slowOddsFactor());
        double perMiss = Odds.logChance(-slow) - Odds.logChance(-sound);
        return reading.answered()
                ? Odds.logChance(slow) - Odds.logChance(sound) + (reading.attempts() - 1) * perMiss
                : reading.attempts() * perMiss;
    }

    /**
     * The newest reads with a count of tries, oldest first.
     *
     * @param unheard days at which the reader heard nothing at all, left out
     */
    public static List<LifeReading> countedReadings(
            SensorLife life, ConditionSettings settings, LocalDate asOf, Set<LocalDate> unheard) {
        List<LifeReading> newest = new ArrayList<>();
        for (int i = life.readings().size() - 1; i >= 0 && newest.size() < settings.recentReadings(); i--) {
            LifeReading r = life.readings().get(i);
            if (!r.day().isAfter(asOf) && tried(r) && r.attempts() != null && !unheard.contains(r.day())) {
                newest.add(r);
            }
        }
        Collections.reverse(newest);
        return newest;
    }

    static boolean tried(LifeReading r) {
        return r.outcome() == ReadOutcome.OK || r.outcome() == ReadOutcome.NO_ANSWER;
    }
}
