package sensorrounds.coverage;

import java.util.SplittableRandom;

/** Seeds of simulated fleets, mixed: the random numbers of neighbouring seeds resemble each other at first. */
public final class FleetSeed {
    private FleetSeed() {}

    /**
     * The seed of one fleet of a study.
     *
     * @param study seed of the whole study
     * @param fleet its number
     * @param size tells designs of the study apart; below 10,000
     */
    public static long of(long study, int fleet, int size) {
        return new SplittableRandom(study + 10_000L * fleet + size).nextLong();
    }
}
