package sensorrounds.stock;

import java.io.Serializable;
import java.time.YearMonth;
import java.util.Comparator;
import java.util.Objects;

/**
 * What demand is added up for: a part at a depot over a stretch of time.
 *
 * @param depot null when not known
 * @param month the month; null unless the stretch is one
 */
public record DemandKey(String partId, String depot, Stretch stretch, YearMonth month)
        implements Serializable, Comparable<DemandKey> {
    private static final Comparator<DemandKey> ORDER = Comparator.comparing(DemandKey::partId)
            .thenComparing(DemandKey::depot, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(DemandKey::stretch)
            .thenComparing(DemandKey::month, Comparator.nullsFirst(Comparator.naturalOrder()));

    /** Kind of stretch. */
    public enum Stretch {
        /** From the as-of day what an order placed now must cover: lead time and the days to the next ordering. */
        COVER,
        /** Before the as-of day: failed since the last answer, and nobody has found out. */
        ALREADY_FAILED,
        /** A month, or what is left of it after the as-of day. */
        MONTH
    }

    public DemandKey {
        if ((stretch == Stretch.MONTH) != (month != null)) {
            throw new IllegalArgumentException(
                    "a month goes with the stretch MONTH only; got " + stretch + ", " + month);
        }
    }

    static DemandKey of(String partId, String depot, Stretch stretch) {
        return new DemandKey(partId, depot, stretch, null);
    }

    static DemandKey of(String partId, String depot, YearMonth month) {
        return new DemandKey(partId, depot, Stretch.MONTH, month);
    }

    /**
     * The same in every JVM. An enum's own hash is its place in memory: keyed by it, equal keys of two executors would go
     * to two places of a shuffle and never meet.
     */
    @Override
    public int hashCode() {
        return Objects.hash(partId, depot, stretch.name(), month);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DemandKey key
                && partId.equals(key.partId)
                && Objects.equals(depot, key.depot)
                && stretch == key.stretch
                && Objects.equals(month, key.month);
    }

    @Override
    public int compareTo(DemandKey other) {
        return ORDER.compare(this, other);
    }
}
