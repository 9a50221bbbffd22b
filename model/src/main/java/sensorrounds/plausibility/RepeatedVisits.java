package sensorrounds.plausibility;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;

/** The same visit under two keys, as when a log is entered twice by hand or synced under a new key. */
final class RepeatedVisits {
    private static final int WHEELS_THAT_PROVE = 2;
    /** More visits on a day than one vehicle has. */
    private static final int MOST_IN_A_DAY = 20;

    private RepeatedVisits() {}

    static void add(List<Visit> visits, List<Doubt> doubts) {
        for (int i = 1; i < visits.size(); i++) {
            Visit visit = visits.get(i);
            int end = Math.max(0, i - MOST_IN_A_DAY);
            for (int j = i - 1; j >= end && visits.get(j).day().equals(visit.day()); j--) {
                Visit other = visits.get(j);
                String same = same(other, visit);
                if (same != null) {
                    List<Source> sources = new ArrayList<>(Entry.sources(other));
                    sources.addAll(Entry.sources(visit));
                    doubts.add(Entry.ofVisit(
                            Doubt.Kind.VISIT_TWICE,
                            visit,
                            "visits " + other.header().visitId() + " and "
                                    + visit.header().visitId() + " have the same " + same,
                            sources));
                    break;
                }
            }
        }
    }

    private static String same(Visit a, Visit b) {
        boolean minute = a.header().visitedAt().equals(b.header().visitedAt())
                && !a.header().visitedAt().toLocalTime().equals(LocalTime.MIDNIGHT);
        if (minute) {
            return "minute";
        }
        return a.rows().size() >= WHEELS_THAT_PROVE && a.wheels().equals(b.wheels()) ? "wheels in every figure" : null;
    }
}
