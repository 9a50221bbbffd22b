package sensorrounds.stock;

import java.io.Serializable;
import java.time.YearMonth;
import java.util.Comparator;

/**
 * What demand is added up for: a part at a depot over a stretch of time.
 *
 * @param depot null when not known
 * @param month the month; null for the stretch from the as-of day that an order placed now must cover: lead time and
 *     the days to the next ordering
 */
public record DemandKey(String partId, String depot, YearMonth month) implements Serializable, Comparable<DemandKey> {
    private static final Comparator<DemandKey> ORDER = Comparator.comparing(DemandKey::partId)
            .thenComparing(DemandKey::depot, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(DemandKey::month, Comparator.nullsFirst(Comparator.naturalOrder()));

    @Override
    public int compareTo(DemandKey other) {
        return ORDER.compare(this, other);
    }
}
