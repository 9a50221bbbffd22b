package sensorrounds.frailty;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Fleets of four-wheeled vehicles whose sensors share a gamma frailty; written apart from the estimators. */
final class SimulatedSets {
    static final double SHAPE = 2.5;
    static final double SCALE = 2500;

    private SimulatedSets() {}

    /** Sets met at an age up to 1500 days with all four alive, then visited about twice a year for four years. */
    static LifeSets of(long seed, int vehicles, double variance) {
        Random random = new Random(seed);
        List<List<SetMember>> all = new ArrayList<>();
        while (all.size() < vehicles) {
            double frailty = variance > 0 ? variance * gamma(random, 1 / variance) : 1;
            double entry = random.nextInt(1500);
            double[] lives = new double[4];
            double shortest = Double.POSITIVE_INFINITY;
            for (int i = 0; i < 4; i++) {
                double exponential = -Math.log(1 - random.nextDouble()) / frailty;
                lives[i] = SCALE * Math.pow(exponential, 1 / SHAPE);
                shortest = Math.min(shortest, lives[i]);
            }
            double[] visits = new double[9];
            visits[0] = entry;
            for (int v = 1; v < visits.length; v++) {
                visits[v] = visits[v - 1] + 120 + random.nextInt(120);
            }
            // The set is known of only because all were alive when it was first seen.
            if (shortest > entry) {
                all.add(seen(visits, lives));
            }
        }
        return LifeSets.of(all);
    }

    private static List<SetMember> seen(double[] visits, double[] lives) {
        List<SetMember> set = new ArrayList<>();
        for (double life : lives) {
            double lower = visits[0];
            double upper = Double.POSITIVE_INFINITY;
            for (int v = 1; v < visits.length && upper == Double.POSITIVE_INFINITY; v++) {
                if (life > visits[v]) {
                    lower = visits[v];
                } else {
                    upper = visits[v];
                }
            }
            set.add(SetMember.of(visits[0], lower, upper));
        }
        return set;
    }

    /** Marsaglia and Tsang (2000), ACM Trans. Math. Softw. 26:363-372. */
    static double gamma(Random random, double shape) {
        if (shape < 1) {
            return gamma(random, shape + 1) * Math.pow(random.nextDouble(), 1 / shape);
        }
        double d = shape - 1 / 3.0;
        double c = 1 / Math.sqrt(9 * d);
        while (true) {
            double x = random.nextGaussian();
            double v = Math.pow(1 + c * x, 3);
            if (v > 0 && Math.log(1 - random.nextDouble()) < 0.5 * x * x + d - d * v + d * Math.log(v)) {
                return d * v;
            }
        }
    }
}
