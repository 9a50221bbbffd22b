package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sensorrounds.visit.Source;

/** Collects what the logs contradict about one vehicle. */
final class FindingLog {
    private static final Comparator<Finding> IN_TIME = Comparator.comparing(Finding::day)
            .thenComparing(Finding::kind)
            .thenComparing(Finding::position, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(Finding::wheelSet, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(Finding::sensorId, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(Finding::what);

    private final String vehicleId;
    private final List<Finding> findings = new ArrayList<>();

    FindingLog(String vehicleId) {
        this.vehicleId = vehicleId;
    }

    void sensor(
            Finding.Kind kind,
            String sensorId,
            Place place,
            LocalDate day,
            String what,
            String done,
            List<Source> sources) {
        List<Source> seen = sources.stream().distinct().sorted().toList();
        findings.add(new Finding(
                kind,
                vehicleId,
                sensorId,
                place == null ? null : place.position(),
                place == null ? null : place.wheelSet(),
                day,
                what,
                done,
                seen));
    }

    void vehicle(Finding.Kind kind, LocalDate day, String what, String done, List<Source> sources) {
        sensor(kind, null, null, day, what, done, sources);
    }

    List<Finding> inTime() {
        return findings.stream().sorted(IN_TIME).toList();
    }
}
