package sensorrounds.causes;

import java.io.Serializable;
import java.util.Objects;
import sensorrounds.survival.Lifetime;

/**
 * A life under observation at ages in (entry, exit], and what ended it there.
 *
 * @param <C> type of the causes
 * @param cause null when none: still alive when last seen, or lost from sight
 * @param weight that many equal lives
 */
public record EndedLife<C>(double entry, double exit, C cause, double weight) implements Serializable {
    public EndedLife {
        boolean ordered = 0 <= entry && entry < exit && exit < Double.POSITIVE_INFINITY;
        if (!(ordered && weight > 0 && weight < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("not an ended life: entry " + entry + ", exit " + exit + ", weight "
                    + weight + "; needs 0 <= entry < exit, finite, weight > 0");
        }
    }

    /** Ended by this cause. */
    public static <C> EndedLife<C> by(C cause, double entry, double exit) {
        return new EndedLife<>(entry, exit, Objects.requireNonNull(cause, "a life ends by a cause"), 1);
    }

    /** Last seen alive. */
    public static <C> EndedLife<C> censored(double entry, double exit) {
        return new EndedLife<>(entry, exit, null, 1);
    }

    /**
     * A life known to an interval, its end in the middle of it: as for a Kaplan-Meier curve, usable up to visit gaps of
     * about 1.5 years, with limits that are too narrow.
     *
     * @param cause of its end, null when it was last seen alive at {@code life.lower()} and is taken as censored there
     */
    public static <C> EndedLife<C> of(Lifetime life, C cause) {
        double exit = life.failed() ? life.lower() + (life.upper() - life.lower()) / 2.0 : life.lower();
        return new EndedLife<>(life.entry(), exit, cause, life.weight());
    }
}
