package sensorrounds.plausibility;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;

/** An odometer goes forward, and no faster than the vehicle drives. */
final class OdometerDoubts {
    /** Rounding between miles and kilometres. */
    private static final double ROUNDING_KM = 1;
    /** No vehicle keeps up more than this over weeks (common practice, no source). */
    private static final double MOST_KM_A_DAY = 1200;

    private static final double TIMES_ITS_OWN_PACE = 6;
    private static final double LEAST_JUMP_KM = 20_000;
    private static final double KM_PER_MILE = 1.609344;

    private OdometerDoubts() {}

    static void add(List<Visit> visits, List<Doubt> doubts) {
        List<Visit> read =
                visits.stream().filter(v -> v.header().odometerKm() != null).toList();
        for (int i = 1; i < read.size(); i++) {
            Visit before = read.get(i - 1);
            Visit visit = read.get(i);
            double step = km(visit) - km(before);
            if (step < -ROUNDING_KM) {
                doubts.add(doubt(
                        Doubt.Kind.ODOMETER_BACK,
                        before,
                        visit,
                        "the odometer shows %.0f km after %.0f km on %s%s",
                        km(visit),
                        km(before),
                        before.day(),
                        reason(read, i)));
            } else if (isJump(read, i, step)) {
                doubts.add(doubt(
                        Doubt.Kind.ODOMETER_JUMP,
                        before,
                        visit,
                        "the odometer shows %.0f km, %.0f km more than on %s%s",
                        km(visit),
                        step,
                        before.day(),
                        reason(read, i)));
            }
        }
    }

    private static boolean isJump(List<Visit> read, int i, double step) {
        double days = days(read.get(i - 1), read.get(i)) + 1;
        double pace = step / days;
        if (pace > MOST_KM_A_DAY) {
            return true;
        }
        Visit first = read.get(0);
        double daysBefore = days(first, read.get(i - 1));
        double before = daysBefore == 0 ? 0 : (km(read.get(i - 1)) - km(first)) / daysBefore;
        return step > LEAST_JUMP_KM && before > 0 && pace > TIMES_ITS_OWN_PACE * before;
    }

    /** What would put the two readings in order, if one slip does. */
    private static String reason(List<Visit> read, int i) {
        double before = km(read.get(i - 1));
        double now = km(read.get(i));
        double next = i + 1 < read.size() ? km(read.get(i + 1)) : Double.POSITIVE_INFINITY;
        double earlier = i > 1 ? km(read.get(i - 2)) : 0;
        if (now > before) {
            return now / 10 >= before && now / 10 <= next
                    ? ": a digit too many would explain it"
                    : now / KM_PER_MILE >= before ? ": kilometres taken for miles would explain it" : "";
        }
        return now * KM_PER_MILE >= before && now * KM_PER_MILE <= next
                ? ": miles taken for kilometres would explain it"
                : before / 10 >= earlier && before / 10 <= now ? ": a digit too many before would explain it" : "";
    }

    private static double km(Visit visit) {
        return visit.header().odometerKm();
    }

    private static long days(Visit a, Visit b) {
        return ChronoUnit.DAYS.between(a.day(), b.day());
    }

    private static Doubt doubt(Doubt.Kind kind, Visit before, Visit visit, String form, Object... values) {
        List<Source> sources = new ArrayList<>(Entry.sources(before));
        sources.addAll(Entry.sources(visit));
        return Entry.ofVisit(kind, visit, String.format(Locale.ROOT, form, values), sources);
    }
}
