package sensorrounds.turnbull;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;

/** Fleets of known truth seen at visits, ages on a grid of days. Written apart from the estimators. */
public final class Rounds {
    static final double YEAR = 365.25;

    private Rounds() {}

    /**
     * Weibull lives of shape 2.5, known from an entry age on only if alive then, visited every 0.5 to 1 years.
     *
     * @param scaleYears scale of the law
     * @param latestEntryYears entries are uniform from 0 to this
     */
    public static List<Lifetime> simulate(
            long seed, int units, int gridDays, double scaleYears, double latestEntryYears, double followUpYears) {
        Random random = new Random(seed);
        List<Lifetime> lives = new ArrayList<>();
        while (lives.size() < units) {
            double life = YEAR * scaleYears * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 2.5);
            int entry = onGrid(YEAR * latestEntryYears * random.nextDouble(), gridDays);
            if (life > entry) {
                lives.add(seen(random, entry, life, entry + YEAR * followUpYears, gridDays));
            }
        }
        return lives;
    }

    static LifetimeSample sample(long seed, int units, int gridDays, double latestEntryYears, double followUpYears) {
        return LifetimeSample.of(simulate(seed, units, gridDays, 7, latestEntryYears, followUpYears));
    }

    private static Lifetime seen(Random random, int entry, double life, double end, int gridDays) {
        int lastGood = entry;
        double age = entry;
        while (true) {
            age += YEAR * (0.5 + 0.5 * random.nextDouble());
            int visit = Math.max(lastGood + gridDays, onGrid(age, gridDays));
            if (visit > end) {
                return Lifetime.censored(entry, lastGood);
            }
            if (life <= visit) {
                return Lifetime.interval(entry, lastGood, visit);
            }
            lastGood = visit;
        }
    }

    private static int onGrid(double age, int gridDays) {
        return (int) Math.round(age / gridDays) * gridDays;
    }
}
