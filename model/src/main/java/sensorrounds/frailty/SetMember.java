package sensorrounds.frailty;

import java.io.Serializable;
import java.util.List;
import sensorrounds.survival.Lifetime;

/**
 * The life of one sensor of a vehicle: alive at {@code entry}, failed at an age in {@code (lower, upper]}; equal for an
 * exact age, {@code upper} infinite when no failure was seen. Ages in any one unit.
 *
 * @param covariates values in the order of the columns; empty when there are none
 */
public record SetMember(double entry, double lower, double upper, List<Double> covariates) implements Serializable {
    public SetMember {
        boolean ordered = 0 <= entry && entry <= lower && lower <= upper && entry < upper;
        if (!(ordered && lower < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("not a life: entry " + entry + ", lower " + lower + ", upper " + upper
                    + "; needs 0 <= entry <= lower <= upper, entry < upper, finite lower");
        }
        covariates = List.copyOf(covariates);
        for (double value : covariates) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("covariates " + covariates
                        + " hold no finite number; leave the life out or give the covariate a value");
            }
        }
    }

    /** Without covariates. */
    public static SetMember of(double entry, double lower, double upper) {
        return new SetMember(entry, lower, upper, List.of());
    }

    /**
     * One life in days.
     *
     * @throws IllegalArgumentException if it stands for more than one: which of them share a vehicle is not in it
     */
    public static SetMember of(Lifetime life) {
        if (life.weight() != 1) {
            throw new IllegalArgumentException("a life of weight " + life.weight()
                    + " is not one sensor of one vehicle; pass each life with its vehicle");
        }
        return of(life.entry(), life.lower(), life.failed() ? life.upper() : Double.POSITIVE_INFINITY);
    }

    public boolean failed() {
        return upper < Double.POSITIVE_INFINITY;
    }

    /** Whether the age at failure is known exactly. */
    public boolean exact() {
        return lower == upper;
    }

    /** Middle of the failure interval, or the age last known alive. */
    double exit() {
        return failed() ? lower + (upper - lower) / 2 : lower;
    }
}
