package sensorrounds.plausibility;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.visit.Visit;

/** The prescribed pressure is a property of the vehicle: it is in a narrow range, and does not change from visit to visit. */
final class PlacardDoubts {
    /** Below any road vehicle's; 140 kPa is the least that warnings are set to (common practice, no source). */
    private static final double LEAST_KPA = 120;
    /** Two load cases of one placard may differ by this much. */
    private static final double SAME = 0.35;

    private static final int VISITS_FOR_A_HABIT = 3;

    private PlacardDoubts() {}

    static void add(List<Visit> visits, List<Doubt> doubts) {
        Map<Integer, Double> usual = usual(visits);
        for (Visit visit : visits) {
            visit.header().placardKpa().forEach((axle, kpa) -> {
                Double habit = usual.get(axle);
                if (kpa < LEAST_KPA) {
                    doubts.add(Entry.ofVisit(
                            Doubt.Kind.PLACARD_UNLIKELY,
                            visit,
                            String.format(Locale.ROOT, "a placard of %.4g kPa on axle %d", kpa, axle)));
                } else if (habit != null && Math.abs(kpa - habit) > SAME * habit) {
                    doubts.add(Entry.ofVisit(
                            Doubt.Kind.PLACARD_UNLIKELY,
                            visit,
                            String.format(
                                    Locale.ROOT,
                                    "a placard of %.0f kPa on axle %d, %.0f kPa at most other visits",
                                    kpa,
                                    axle,
                                    habit)));
                }
            });
        }
    }

    /** For each axle the pressure that more than half of the visits give. */
    private static Map<Integer, Double> usual(List<Visit> visits) {
        Map<Integer, Map<Double, Integer>> counts = new TreeMap<>();
        Map<Integer, Integer> given = new HashMap<>();
        for (Visit visit : visits) {
            visit.header().placardKpa().forEach((axle, kpa) -> {
                counts.computeIfAbsent(axle, a -> new TreeMap<>()).merge(kpa, 1, Integer::sum);
                given.merge(axle, 1, Integer::sum);
            });
        }
        Map<Integer, Double> usual = new HashMap<>();
        counts.forEach((axle, values) -> values.forEach((kpa, times) -> {
            if (given.get(axle) >= VISITS_FOR_A_HABIT && 2 * times > given.get(axle)) {
                usual.put(axle, kpa);
            }
        }));
        return usual;
    }
}
