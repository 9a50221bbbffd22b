package sensorrounds.survival;

import java.io.Serializable;

/**
 * One observed life, or {@code weight} equal ones, in integer days of age. The unit came under observation alive at
 * {@code entry} (left truncation) and failed at an age in {@code (lower, upper]}; {@code upper = NEVER} means still
 * alive at {@code lower} (right-censored), {@code lower == upper} means failed exactly then.
 *
 * <p>Invariants: {@code 0 <= entry <= lower <= upper}, {@code entry < upper}, {@code weight > 0}. An exact failure or an
 * interval that begins at the entry is allowed; a life that was already over at its entry is not.
 */
public record Lifetime(int entry, int lower, int upper, double weight) implements Serializable {
    /** No failure seen: the upper end is infinite. */
    public static final int NEVER = Integer.MAX_VALUE;

    public Lifetime {
        if (!(entry >= 0 && entry <= lower && lower <= upper && entry < upper && weight > 0)) {
            throw new IllegalArgumentException("not a life: entry " + entry + ", lower " + lower + ", upper " + upper
                    + ", weight " + weight + "; needs 0 <= entry <= lower <= upper, entry < upper, weight > 0");
        }
    }

    public static Lifetime exact(int entry, int at) {
        return new Lifetime(entry, at, at, 1);
    }

    public static Lifetime censored(int entry, int lastSeenAlive) {
        return new Lifetime(entry, lastSeenAlive, NEVER, 1);
    }

    public static Lifetime interval(int entry, int lastKnownGood, int firstKnownFailed) {
        return new Lifetime(entry, lastKnownGood, firstKnownFailed, 1);
    }

    public boolean failed() {
        return upper != NEVER;
    }
}
