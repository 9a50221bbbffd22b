package sensorrounds.replacement;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sensorrounds.outlook.SensorOutlook;

/** Order of the replacement list: greatest saving first, then by name, so that equal input always gives equal lists. */
public final class Ranker {
    private static final Comparator<String> TEXT = Comparator.nullsFirst(Comparator.naturalOrder());

    private Ranker() {}

    /**
     * Saving falling, lines without one (NaN) last; then vehicle, wheel set, position, and the life's key, which no two
     * lines share.
     */
    public static Comparator<RankedReplacement> order() {
        return Comparator.comparing((RankedReplacement r) -> Double.isNaN(r.saving()))
                .thenComparing(RankedReplacement::saving, Comparator.reverseOrder())
                .thenComparing(RankedReplacement::outlook, byName());
    }

    /** The list in order, numbered from 1. */
    public static List<RankedReplacement> rank(List<RankedReplacement> lines) {
        List<RankedReplacement> sorted = new ArrayList<>(lines);
        sorted.sort(order());
        for (int i = 0; i < sorted.size(); i++) {
            sorted.set(i, sorted.get(i).withRank(i + 1));
        }
        return sorted;
    }

    private static Comparator<SensorOutlook> byName() {
        return Comparator.comparing(SensorOutlook::vehicleId, TEXT)
                .thenComparing(SensorOutlook::wheelSet, TEXT)
                .thenComparing(SensorOutlook::position, Comparator.nullsLast(Comparator.naturalOrder()))
                .thenComparing(SensorOutlook::lifeId, TEXT);
    }
}
