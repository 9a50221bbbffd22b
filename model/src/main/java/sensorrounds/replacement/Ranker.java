package sensorrounds.replacement;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sensorrounds.outlook.SensorInService;

/**
 * Order of the replacement list: what is to be done now first, vehicle by vehicle, the stop that saves most leading; then
 * what can wait for a stop, sensors to watch and sensors to keep, each by what it saves. Names last, so that equal input
 * always gives equal lists.
 */
public final class Ranker {
    private static final Comparator<String> TEXT = Comparator.nullsFirst(Comparator.naturalOrder());

    private Ranker() {}

    /** Lines without a saving (NaN) stand last among their kind. No two lines share the life's key, the last criterion. */
    public static Comparator<RankedReplacement> order() {
        return Comparator.comparing((RankedReplacement r) -> r.advice().urgency())
                .thenComparing(Ranker::leading, Comparator.reverseOrder())
                .thenComparing(
                        r -> r.advice().urgency() == Advice.Urgency.NOW
                                ? r.outlook().sensor().vehicleId()
                                : null,
                        TEXT)
                .thenComparing(r -> Double.isNaN(r.saving()))
                .thenComparing(RankedReplacement::saving, Comparator.reverseOrder())
                .thenComparing(r -> r.outlook().sensor(), byName());
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

    /** Saving of the stop for lines that ask for one now, of the line itself for others; nothing when not known. */
    private static double leading(RankedReplacement r) {
        double saving = Double.isNaN(r.stopSaving()) ? r.saving() : r.stopSaving();
        return Double.isNaN(saving) ? Double.NEGATIVE_INFINITY : saving;
    }

    private static Comparator<SensorInService> byName() {
        return Comparator.comparing(SensorInService::vehicleId, TEXT)
                .thenComparing(SensorInService::wheelSet, TEXT)
                .thenComparing(SensorInService::position, Comparator.nullsLast(Comparator.naturalOrder()))
                .thenComparing(SensorInService::lifeId, TEXT);
    }
}
