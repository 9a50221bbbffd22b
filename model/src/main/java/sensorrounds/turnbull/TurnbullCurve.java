package sensorrounds.turnbull;

import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import sensorrounds.survival.Span;

/**
 * A survival curve that steps down somewhere within each of its innermost intervals, on the stretch [from, to] of ages
 * that the lives tell something about. It answers {@link #at} where it is determined, {@link #lower} and {@link #upper}
 * also within a step, and nothing beyond its stretch: what lies there is unknown, not flat.
 */
public final class TurnbullCurve implements Serializable {
    private final double from;
    private final double to;
    private final double[] lower;
    private final double[] upper;
    private final double[] after;

    /** @param steps intervals with mass within [from, to]; survival in them relative to 1 at from */
    TurnbullCurve(double from, double to, List<InnermostInterval> steps) {
        this.from = from;
        this.to = to;
        lower = steps.stream().mapToDouble(InnermostInterval::lower).toArray();
        upper = steps.stream().mapToDouble(InnermostInterval::upper).toArray();
        after = steps.stream().mapToDouble(InnermostInterval::survivalAfter).toArray();
    }

    /** Lowest age at which a life came under observation (or the age given alive at): S is 1 there. */
    public double from() {
        return from;
    }

    /** Last age the curve is known at. */
    public double to() {
        return to;
    }

    public boolean covers(double age) {
        return age >= from && age <= to;
    }

    /** Whether the age is covered and does not lie inside a step. */
    public boolean determinedAt(double age) {
        return covers(age) && lower(age) == upper(age);
    }

    /**
     * S(age).
     *
     * @throws IllegalArgumentException beyond the domain, or inside a step, where only {@link #lower} and {@link #upper}
     *     are known
     */
    public double at(double age) {
        double low = lower(age);
        double high = upper(age);
        if (low != high) {
            int step = stepsDoneAt(age);
            throw new IllegalArgumentException("survival at age " + age + " lies between " + low + " and " + high
                    + ": when failures happened between " + lower[step] + " and " + upper[step]
                    + " is not known; ask for lower and upper");
        }
        return low;
    }

    /** Least value S(age) can have: all of a step's failures lie before the age. */
    public double lower(double age) {
        requireCovered(age);
        int done = stepsDoneAt(age);
        boolean inside = done < lower.length && lower[done] < age;
        return survivalAfter(inside ? done + 1 : done);
    }

    /** Greatest value S(age) can have: all of a step's failures lie after the age. */
    public double upper(double age) {
        requireCovered(age);
        return survivalAfter(stepsDoneAt(age));
    }

    /**
     * The stretch in which the share p has failed: the first step that takes S to 1 - p or below; empty if the curve does
     * not come down that far.
     */
    public Optional<Span> quantile(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a quantile needs 0 < p < 1, not " + p);
        }
        for (int i = 0; i < after.length; i++) {
            // Sums of masses round: a curve that is to end on the level must be seen to reach it.
            if (after[i] <= (1 - p) * (1 + 1e-9)) {
                return Optional.of(new Span(lower[i], upper[i]));
            }
        }
        return Optional.empty();
    }

    private void requireCovered(double age) {
        if (!covers(age)) {
            throw new IllegalArgumentException("the curve is known from age " + from + " to " + to + ", not at " + age
                    + "; use a fitted law of life to go beyond the data");
        }
    }

    private double survivalAfter(int steps) {
        return steps == 0 ? 1 : after[steps - 1];
    }

    /** Number of steps that end at or before the age. */
    private int stepsDoneAt(double age) {
        int low = 0;
        int high = upper.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (upper[middle] <= age) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
