package sensorrounds.causes;

/**
 * A unit's stay in one state at ages in (entry, exit], and where it went.
 *
 * @param <S> type of the states
 * @param unit number of the unit; its stays follow each other
 * @param next state entered at {@code exit}; null when it was last seen, unchanged, there
 */
public record Stay<S>(long unit, S state, double entry, double exit, S next) {
    public Stay {
        if (!(0 <= entry && entry < exit && exit < Double.POSITIVE_INFINITY) || state == null || state.equals(next)) {
            throw new IllegalArgumentException("not a stay: unit " + unit + ", state " + state + ", entry " + entry
                    + ", exit " + exit + ", next " + next
                    + "; needs 0 <= entry < exit, finite, and a next state other than its own, or none");
        }
    }
}
