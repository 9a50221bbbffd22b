package sensorrounds.survival;

import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.SplittableRandom;
import sensorrounds.survival.CohortLadder.Rung;

/**
 * How often the limits of the scale of a small part hold the truth when it is drawn towards the scales of the others, and those of
 * the shape common to all. Arguments: fleets (default 1000), seed. Results are in docs/coverage.md.
 */
public final class LentCoverage {
    private LentCoverage() {}

    /**
     * Parts of a fleet.
     *
     * @param parts two of them large
     * @param spread standard deviation of the log of their hazards
     */
    private record Scene(int parts, double spread) {}

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 61_000_000;
        Scene[] scenes = {new Scene(8, 0.5), new Scene(8, 0.25), new Scene(8, 0.8), new Scene(24, 0.5)};
        for (int i = 0; i < scenes.length; i++) {
            study(fleets, seed + 100_000 * i, scenes[i]);
        }
    }

    private static void study(int fleets, long seed, Scene scene) {
        int[] ofScale = new int[3];
        int[] ofShape = new int[3];
        double shapeError = 0;
        for (int fleet = 0; fleet < fleets; fleet++) {
            double[] scales = new double[scene.parts()];
            Random random = new Random(new SplittableRandom(seed + fleet).nextLong());
            Map<String, LifetimeSample> cohorts = CohortSpreadTest.fleet(random, scales, scene.spread());
            SortedMap<String, CohortLife> fits = CohortLadder.withDefaults().fit(cohorts);
            for (int part = 2; part < scales.length; part++) {
                CohortLife life = fits.get("part " + (char) ('A' + part));
                if (life.rung() == Rung.PARTLY_POOLED) {
                    count(ofScale, life.fit().scaleLower(), life.fit().scaleUpper(), scales[part]);
                }
            }
            CommonShapeFit common = CommonShapeFitter.withDefaults().fit(cohorts.values());
            double half = 1.959963984540054 * Math.sqrt(common.varLogShape());
            count(ofShape, common.shape() * Math.exp(-half), common.shape() * Math.exp(half), 2.5);
            shapeError += Math.log(common.shape() / 2.5) / fleets;
        }
        System.out.printf(
                Locale.ROOT,
                "%d fleets, %s: scales of %d small parts held in %.1f %%, too low %d, too high %d; common shape %.1f %%, too low %d, "
                        + "too high %d, on average %.1f %% too high%n",
                fleets,
                scene,
                ofScale[0] + ofScale[1] + ofScale[2],
                share(ofScale),
                ofScale[1],
                ofScale[2],
                share(ofShape),
                ofShape[1],
                ofShape[2],
                100 * shapeError);
    }

    private static void count(int[] heldLowHigh, double lower, double upper, double truth) {
        heldLowHigh[upper < truth ? 1 : lower > truth ? 2 : 0]++;
    }

    private static double share(int[] heldLowHigh) {
        return 100.0 * heldLowHigh[0] / (heldLowHigh[0] + heldLowHigh[1] + heldLowHigh[2]);
    }
}
