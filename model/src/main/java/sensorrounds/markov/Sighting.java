package sensorrounds.markov;

import java.util.List;

/**
 * One observation of a process.
 *
 * @param time in the unit of the intensities, any origin
 * @param state state seen, counted from 0
 * @param kind what the sighting tells
 * @param covariates values that hold from this time until the next sighting; empty for a model without covariates
 */
public record Sighting(double time, int state, Kind kind, List<Double> covariates) {
    /** What a sighting tells: the observation schemes of Jackson (2011), J. Stat. Software 38(8), section 2.3. */
    public enum Kind {
        /** The state at that time, seen through the errors of the emission matrix if there is one. */
        SNAPSHOT,
        /** The state at that time, seen without error even in a model with errors. */
        CERTAIN,
        /** The state was entered at exactly that time; the state just before is unknown (dates of death). */
        EXACT_ENTRY,
        /** Exactly then the state was entered, or is still held; that of the last sighting was held in between. */
        EXACT_MOVE
    }

    public Sighting {
        if (!Double.isFinite(time) || state < 0) {
            throw new IllegalArgumentException("sighting of state " + state + " at time " + time
                    + "; expected a state from 0 up and a finite time");
        }
        covariates = List.copyOf(covariates);
    }

    public static Sighting of(double time, int state, Kind kind) {
        return new Sighting(time, state, kind, List.of());
    }
}
