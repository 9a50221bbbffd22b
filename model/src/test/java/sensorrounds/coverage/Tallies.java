package sensorrounds.coverage;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import sensorrounds.survival.Estimate;

/** Where the truth fell, by quantity, over simulated fleets. */
final class Tallies {
    private final Map<String, Tally> tallies = new LinkedHashMap<>();

    private static final class Tally {
        int held;
        /** Limits wholly below the truth. */
        int tooLow;

        int tooHigh;
        /** No limits: the quantity was undefined in that fleet. */
        int none;
    }

    /** Random numbers of one fleet: {@link FleetSeed}. */
    static Random random(long seed, int fleet, int size) {
        return new Random(FleetSeed.of(seed, fleet, size));
    }

    void add(String quantity, double truth, Estimate limits) {
        add(quantity, truth, limits.lower(), limits.upper());
    }

    void add(String quantity, double truth, double lower, double upper) {
        Tally tally = tallies.computeIfAbsent(quantity, q -> new Tally());
        if (Double.isNaN(lower) || Double.isNaN(upper)) {
            tally.none++;
        } else if (upper < truth) {
            tally.tooLow++;
        } else if (lower > truth) {
            tally.tooHigh++;
        } else {
            tally.held++;
        }
    }

    /** Share of fleets with limits in which these held the truth. */
    double share(String quantity) {
        Tally t = tallies.get(quantity);
        return (double) t.held / (t.held + t.tooLow + t.tooHigh);
    }

    /** One row of a table each: share that held, too low, too high, none. */
    void print(String heading) {
        System.out.printf("%n%s%n", heading);
        tallies.forEach((quantity, t) -> System.out.printf(
                Locale.ROOT,
                "| %s | %.1f %% | %d | %d | %d |%n",
                quantity,
                100 * share(quantity),
                t.tooLow,
                t.tooHigh,
                t.none));
    }
}
