package sensorrounds.analyst;

import java.io.Serializable;
import sensorrounds.analyst.CovariateCode.CodedLife;

/** Lives and failures at each level that is compared: a mergeable state of whole numbers. Not thread safe. */
public final class LevelCounts implements Serializable {
    private static final long serialVersionUID = 1;

    private final CovariateCode code;
    private final long[] lives;
    private final long[] failures;
    private long allLives;
    private long allFailures;

    public LevelCounts(CovariateCode code) {
        this.code = code;
        lives = new long[code.levels()];
        failures = new long[code.levels()];
    }

    /** Counts one vehicle. */
    public LevelCounts add(SampledVehicle vehicle) {
        for (CodedLife life : code.of(vehicle)) {
            int failed = life.life().failed() ? 1 : 0;
            allLives++;
            allFailures += failed;
            for (int place : life.levels()) {
                lives[place]++;
                failures[place] += failed;
            }
        }
        return this;
    }

    /** Takes in the vehicles of another part of the fleet, counted by the same code. */
    public LevelCounts merge(LevelCounts other) {
        allLives += other.allLives;
        allFailures += other.allFailures;
        for (int i = 0; i < lives.length; i++) {
            lives[i] += other.lives[i];
            failures[i] += other.failures[i];
        }
        return this;
    }

    /** Lives that take part. */
    long lives() {
        return allLives;
    }

    /** Those of them that failed. */
    long failures() {
        return allFailures;
    }

    long livesAt(Factor factor, String level) {
        return lives[code.place(factor, level)];
    }

    long failuresAt(Factor factor, String level) {
        return failures[code.place(factor, level)];
    }
}
