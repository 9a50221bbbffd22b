package sensorrounds.survival;

import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.SplittableRandom;
import sensorrounds.survival.CohortLadder.Rung;

/**
 * How often the limits of the scale of a small part hold the truth when it is drawn towards the scales of seven others. Arguments:
 * fleets (default 1000), seed. Results are in docs/coverage.md.
 */
public final class LentCoverage {
    private LentCoverage() {}

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 61_000_000;
        int held = 0;
        int low = 0;
        int high = 0;
        for (int fleet = 0; fleet < fleets; fleet++) {
            double[] scales = new double[8];
            Random random = new Random(new SplittableRandom(seed + fleet).nextLong());
            Map<String, LifetimeSample> cohorts = CohortSpreadTest.fleet(random, scales);
            SortedMap<String, CohortLife> fits = CohortLadder.withDefaults().fit(cohorts);
            for (int part = 2; part < scales.length; part++) {
                CohortLife life = fits.get("part " + (char) ('A' + part));
                if (life.rung() == Rung.PARTLY_POOLED) {
                    low += life.fit().scaleUpper() < scales[part] ? 1 : 0;
                    high += life.fit().scaleLower() > scales[part] ? 1 : 0;
                    held += life.fit().scaleLower() <= scales[part]
                                    && scales[part] <= life.fit().scaleUpper()
                            ? 1
                            : 0;
                }
            }
        }
        int limits = held + low + high;
        System.out.printf(
                Locale.ROOT,
                "%d fleets, %d small parts: held %.1f %%, too low %d, too high %d%n",
                fleets,
                limits,
                100.0 * held / limits,
                low,
                high);
    }
}
