package sensorrounds.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Lives as a fleet under periodic visits shows them: Weibull life, known from an entry age on only if alive then, seen
 * at visits, followed for some years. Written apart from the estimators.
 */
final class SimulatedRounds {
    private static final double YEAR = 365.25;

    private SimulatedRounds() {}

    static List<Lifetime> simulate(
            long seed, int units, double shape, double scaleYears, double latestEntryYears, double followUpYears) {
        Random random = new Random(seed);
        List<Lifetime> lives = new ArrayList<>();
        for (int i = 0; i < units; i++) {
            double life = YEAR * scaleYears * Math.pow(-Math.log(1 - random.nextDouble()), 1 / shape);
            int entry = (int) Math.round(YEAR * latestEntryYears * random.nextDouble());
            List<Integer> visits = new ArrayList<>();
            double age = entry;
            while (true) {
                age += YEAR * (0.5 + 0.5 * random.nextDouble());
                if (age > entry + YEAR * followUpYears) {
                    break;
                }
                visits.add((int) Math.round(age));
            }
            if (life > entry) {
                lives.add(seen(entry, visits, life));
            }
        }
        return lives;
    }

    private static Lifetime seen(int entry, List<Integer> visits, double life) {
        int lastGood = entry;
        for (int visit : visits) {
            if (life <= visit) {
                return Lifetime.interval(entry, lastGood, visit);
            }
            lastGood = visit;
        }
        return Lifetime.censored(entry, lastGood);
    }
}
