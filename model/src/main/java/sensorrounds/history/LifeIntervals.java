package sensorrounds.history;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * Checks intervals of time, each in one state, for contradictions: a subject under observation must be somewhere, cannot
 * be in two places at once, and cannot be elsewhere without having gone there. The terms and their definitions are those
 * of R survival's survcheck (its manual page; survival 3.5-3).
 *
 * <p>Intervals are (from, to], in any integer unit of time.
 */
public final class LifeIntervals {
    private static final Comparator<Interval> IN_TIME = Comparator.comparing(Interval::subject)
            .thenComparingLong(Interval::to)
            .thenComparingLong(Interval::from)
            .thenComparing(Interval::state)
            .thenComparing(Interval::next, Comparator.nullsFirst(Comparator.naturalOrder()));

    private LifeIntervals() {}

    /** Kind of contradiction between an interval and the one before it of the same subject. */
    public enum Kind {
        /** It ends no later than it begins. */
        EMPTY,
        /** It begins before the other ends: at two places at once. */
        OVERLAP,
        /** It begins later than the other ends, in the state the other left it in. */
        GAP,
        /** It begins later than the other ends, in another state. */
        JUMP,
        /** It begins when the other ends, in another state than the other left it in: a change in no time. */
        TELEPORT
    }

    /**
     * A subject in one state over a time.
     *
     * @param state state during the interval
     * @param next state entered at its end; null when nothing changes there
     */
    public record Interval(String subject, long from, long to, String state, String next) {
        private String left() {
            return next == null ? state : next;
        }
    }

    /** @param earlier null for an empty interval, which contradicts itself */
    public record Contradiction(Kind kind, Interval earlier, Interval later) {}

    /**
     * @param intervals in any order
     * @return at most one contradiction for each interval, by subject and time. After one, the later interval is believed,
     *     so that one fault is told once
     */
    public static List<Contradiction> check(Collection<Interval> intervals) {
        List<Contradiction> found = new ArrayList<>();
        Interval before = null;
        for (Interval each : intervals.stream().sorted(IN_TIME).toList()) {
            if (each.to() <= each.from()) {
                found.add(new Contradiction(Kind.EMPTY, null, each));
                continue;
            }
            if (before != null && before.subject().equals(each.subject())) {
                Kind kind = kind(before, each);
                if (kind != null) {
                    found.add(new Contradiction(kind, before, each));
                }
            }
            before = each;
        }
        return found;
    }

    private static Kind kind(Interval before, Interval each) {
        boolean same = Objects.equals(before.left(), each.state());
        if (each.from() < before.to()) {
            return Kind.OVERLAP;
        }
        if (each.from() > before.to()) {
            return same ? Kind.GAP : Kind.JUMP;
        }
        return same ? null : Kind.TELEPORT;
    }
}
