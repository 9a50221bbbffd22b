package sensorrounds.causes;

import java.io.Serializable;
import java.util.Set;
import sensorrounds.survival.Lifetime;

/**
 * A life that came under observation alive at {@code entry}, failed in {@code (lower, upper]}, and of whose failure some causes
 * are possible: one when it is known, several when it is masked, all of them when it is unknown.
 *
 * @param <C> type of the causes
 * @param upper equal to {@code lower} for an exact age; positive infinity when no failure was seen
 * @param candidates empty exactly when no failure was seen
 * @param weight that many equal lives
 */
public record MaskedLife<C>(double entry, double lower, double upper, Set<C> candidates, double weight)
        implements Serializable {
    public MaskedLife {
        candidates = Set.copyOf(candidates);
        boolean ordered =
                0 <= entry && entry <= lower && lower <= upper && entry < upper && lower < Double.POSITIVE_INFINITY;
        boolean failed = upper < Double.POSITIVE_INFINITY;
        if (!(ordered && weight > 0 && weight < Double.POSITIVE_INFINITY) || failed == candidates.isEmpty()) {
            throw new IllegalArgumentException(
                    "not a life with causes: entry " + entry + ", lower " + lower + ", upper "
                            + upper + ", causes " + candidates + ", weight " + weight
                            + "; needs 0 <= entry <= lower <= upper, entry < upper, weight > 0, and possible causes exactly when"
                            + " it failed");
        }
    }

    /**
     * A life known to days.
     *
     * @param candidates ignored when no failure was seen
     */
    public static <C> MaskedLife<C> of(Lifetime life, Set<C> candidates) {
        return new MaskedLife<>(
                life.entry(),
                life.lower(),
                life.failed() ? life.upper() : Double.POSITIVE_INFINITY,
                life.failed() ? candidates : Set.of(),
                life.weight());
    }

    boolean failed() {
        return upper < Double.POSITIVE_INFINITY;
    }
}
