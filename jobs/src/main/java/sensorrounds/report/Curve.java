package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.CurvePoint.Method;

/**
 * One survival curve of a cohort, read off its points. It knows where it ends and gives nothing beyond.
 *
 * @param points by age
 */
record Curve(Method method, List<CurvePoint> points) {
    Curve {
        points = points.stream()
                .sorted(Comparator.comparingInt(CurvePoint::ageDays))
                .toList();
    }

    static Curve of(List<CurvePoint> all, String cohort, Method method) {
        return new Curve(
                method,
                all.stream()
                        .filter(p -> p.cohort().equals(cohort) && p.method() == method)
                        .toList());
    }

    boolean isEmpty() {
        return points.isEmpty();
    }

    int lastAge() {
        return isEmpty() ? 0 : points.get(points.size() - 1).ageDays();
    }

    /** The curve at an age: the step in force for a curve of steps, between neighbours for others. */
    Optional<CurvePoint> at(int ageDays) {
        if (isEmpty() || ageDays < points.get(0).ageDays() || ageDays > lastAge()) {
            return Optional.empty();
        }
        int after = 0;
        while (after < points.size() && points.get(after).ageDays() <= ageDays) {
            after++;
        }
        CurvePoint before = points.get(after - 1);
        if (steps() || after == points.size() || before.ageDays() == ageDays) {
            return Optional.of(before);
        }
        return Optional.of(between(before, points.get(after), ageDays));
    }

    private boolean steps() {
        return method == Method.KAPLAN_MEIER || method == Method.PESSIMISTIC;
    }

    private static CurvePoint between(CurvePoint a, CurvePoint b, int ageDays) {
        double w = (ageDays - a.ageDays()) / (double) (b.ageDays() - a.ageDays());
        return new CurvePoint(
                a.cohort(),
                a.method(),
                ageDays,
                a.survival() + w * (b.survival() - a.survival()),
                a.lower() + w * (b.lower() - a.lower()),
                a.upper() + w * (b.upper() - a.upper()),
                a.atRisk(),
                a.failures());
    }
}
