package sensorrounds.simulate;

import java.util.List;
import java.util.SplittableRandom;

/**
 * A stream of chance named by its keys: equal keys, equal stream, whatever else is simulated. Only 64-bit draws are
 * taken from the JDK, and all functions are {@link StrictMath}, so that the numbers do not depend on the JDK, its
 * version or the processor.
 */
final class Dice {
    private static final double UNIT = 0x1.0p-53;

    private final SplittableRandom source;

    private Dice(long seed) {
        source = new SplittableRandom(seed);
    }

    static Dice of(long seed, long... keys) {
        long s = mix(seed);
        for (long k : keys) {
            s = mix(s ^ mix(k + 0x9E3779B97F4A7C15L));
        }
        return new Dice(s);
    }

    /** Number strictly between 0 and 1. */
    double uniform() {
        return ((source.nextLong() >>> 11) + 0.5) * UNIT;
    }

    boolean chance(double probability) {
        return uniform() < probability;
    }

    /** Whole number from {@code low} to {@code high}, both included. */
    int between(int low, int high) {
        return low + (int) (uniform() * (high - low + 1));
    }

    double between(double low, double high) {
        return low + uniform() * (high - low);
    }

    /** Standard normal number (Box and Muller 1958). */
    double normal() {
        double radius = StrictMath.sqrt(-2 * StrictMath.log(uniform()));
        return radius * StrictMath.cos(2 * StrictMath.PI * uniform());
    }

    double exponential(double mean) {
        return -mean * StrictMath.log(uniform());
    }

    <T> T pick(List<T> choices) {
        return choices.get(between(0, choices.size() - 1));
    }

    /** Finaliser of SplitMix64 (Steele, Lea and Flood 2014). */
    private static long mix(long z) {
        long a = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        long b = (a ^ (a >>> 27)) * 0x94D049BB133111EBL;
        return b ^ (b >>> 31);
    }
}
