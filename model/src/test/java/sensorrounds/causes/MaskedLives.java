package sensorrounds.causes;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;

/** Fleets whose sensors fail by battery, stem or tyre change, some causes unwritten; written apart from the estimators. */
final class MaskedLives {
    static final List<String> CAUSES = List.of("battery", "stem", "tyre change");
    static final double[] SHAPE = {3, 1, 0.8};
    static final double[] SCALE = {2500, 9000, 15000};

    private MaskedLives() {}

    /**
     * Half met at a fitting, half at an age up to 1200 days, visited every 150 to 400 days for four years.
     *
     * @param unknown share of failures whose cause nobody wrote down
     * @param narrowed share of which one cause is ruled out
     */
    static MaskedSample<String> of(long seed, int lives, double unknown, double narrowed, boolean exact) {
        Random random = new Random(seed);
        List<MaskedLife<String>> all = new ArrayList<>();
        while (all.size() < lives) {
            double entry = random.nextBoolean() ? 0 : random.nextInt(1200);
            double life = Double.POSITIVE_INFINITY;
            int by = -1;
            for (int k = 0; k < SHAPE.length; k++) {
                double own = SCALE[k] * Math.pow(-Math.log(1 - random.nextDouble()), 1 / SHAPE[k]);
                by = own < life ? k : by;
                life = Math.min(life, own);
            }
            if (life > entry) {
                all.add(seen(random, entry, life, by, unknown, narrowed, exact));
            }
        }
        return MaskedSample.of(CAUSES, all);
    }

    private static MaskedLife<String> seen(
            Random random, double entry, double life, int by, double unknown, double narrowed, boolean exact) {
        double u = random.nextDouble();
        Set<String> candidates = u < unknown
                ? Set.copyOf(CAUSES)
                : u < unknown + narrowed ? Set.of(CAUSES.get(by), CAUSES.get((by + 1) % 3)) : Set.of(CAUSES.get(by));
        double end = entry + 1460;
        if (exact) {
            return life <= end
                    ? new MaskedLife<>(entry, life, life, candidates, 1)
                    : new MaskedLife<>(entry, end, Double.POSITIVE_INFINITY, Set.of(), 1);
        }
        double lower = entry;
        for (double visit = entry + 150 + random.nextInt(250); visit <= end; visit += 150 + random.nextInt(250)) {
            if (life <= visit) {
                return new MaskedLife<>(entry, lower, visit, candidates, 1);
            }
            lower = visit;
        }
        return new MaskedLife<>(entry, lower, Double.POSITIVE_INFINITY, Set.of(), 1);
    }
}
