package sensorrounds.review;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.causes.CauseSample;
import sensorrounds.causes.EndedLife;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;

/**
 * Lives of one cohort with what ended them, identical ones counted: a mergeable state of whole numbers. Not thread safe.
 */
public final class LifeCells implements Serializable {
    private static final long serialVersionUID = 1;

    private final Map<Cell, Long> counts = new HashMap<>();

    /** @param cause null where the life is censored */
    private record Cell(Lifetime life, EndCause cause) implements Serializable {}

    /**
     * Counts {@code n} lives.
     *
     * @param cause null where the life is censored, or ended by what says nothing about the sensor
     * @throws IllegalArgumentException if a failed life has no cause of failure, or another life has one
     */
    LifeCells add(Lifetime life, EndCause cause, long n) {
        boolean failure = cause != null && cause != EndCause.PREVENTIVE;
        if (life.failed() != failure) {
            throw new IllegalArgumentException("a life ends by a cause of failure exactly when it failed; " + life
                    + " cannot have ended by " + cause);
        }
        counts.merge(new Cell(life, cause), n, Long::sum);
        return this;
    }

    /** Takes in the lives of another part of the fleet. */
    LifeCells merge(LifeCells o) {
        o.counts.forEach((cell, n) -> counts.merge(cell, n, Long::sum));
        return this;
    }

    static LifeCells pooled(Collection<LifeCells> cohorts) {
        LifeCells pool = new LifeCells();
        cohorts.forEach(pool::merge);
        return pool;
    }

    /** Number of distinct lives. */
    public int size() {
        return counts.size();
    }

    /** Number of lives. */
    public long lives() {
        return counts.values().stream().mapToLong(n -> n).sum();
    }

    /** The same lives on a coarser grid of ages, without those that were under observation for no step of it. */
    LifeCells on(AgeGrid grid) {
        if (grid == AgeGrid.DAYS) {
            return this;
        }
        LifeCells coarse = new LifeCells();
        counts.forEach((cell, n) -> {
            Lifetime life = grid.coarse(cell.life);
            if (observed(life)) {
                coarse.add(life, cell.cause, n);
            }
        });
        return coarse;
    }

    /** The lives as a survival estimator takes them: all ends but failures censor. */
    public LifetimeSample sample() {
        List<Lifetime> weighted = new ArrayList<>(counts.size());
        counts.forEach((cell, n) -> weighted.add(weighted(cell.life, n)));
        return LifetimeSample.of(weighted);
    }

    /**
     * The lives as competing causes: a failure in the middle of its interval, a preventive replacement at the last age
     * the sensor was known good. Lives under observation for no time are left out.
     */
    public CauseSample<EndCause> causes() {
        List<EndedLife<EndCause>> lives = new ArrayList<>(counts.size());
        counts.forEach((cell, n) -> {
            if (observed(cell.life)) {
                lives.add(EndedLife.of(weighted(cell.life, n), cell.cause));
            }
        });
        return CauseSample.of(List.of(EndCause.values()), lives);
    }

    /** Preventive replacements among these and the failures; NaN without either. */
    public double preventiveShare() {
        long preventive = 0;
        long ends = 0;
        for (Map.Entry<Cell, Long> e : counts.entrySet()) {
            EndCause cause = e.getKey().cause;
            preventive += cause == EndCause.PREVENTIVE ? e.getValue() : 0;
            ends += cause == null ? 0 : e.getValue();
        }
        return ends == 0 ? Double.NaN : (double) preventive / ends;
    }

    private static boolean observed(Lifetime life) {
        return life.failed() || life.entry() < life.lower();
    }

    private static Lifetime weighted(Lifetime life, long n) {
        return new Lifetime(life.entry(), life.lower(), life.upper(), n * life.weight());
    }
}
