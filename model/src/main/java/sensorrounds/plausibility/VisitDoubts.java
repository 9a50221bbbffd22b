package sensorrounds.plausibility;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;

/** What one visit contradicts in itself. */
final class VisitDoubts {
    private VisitDoubts() {}

    static void add(Visit visit, List<Doubt> doubts) {
        fieldsDiffer(visit, doubts);
        afterVisit(visit, doubts);
        twoPlaces(visit, doubts);
        for (LoggedWheel row : visit.rows()) {
            if (row.wheel() != null) {
                wheel(row, doubts);
            }
        }
    }

    private static void fieldsDiffer(Visit visit, List<Doubt> doubts) {
        List<Source> other = visit.rows().stream()
                .filter(r -> r.visit() != visit.header() && !r.visit().equals(visit.header()))
                .map(LoggedWheel::source)
                .toList();
        if (!other.isEmpty()) {
            doubts.add(Entry.ofVisit(
                    Doubt.Kind.VISIT_FIELDS_DIFFER,
                    visit,
                    "visit " + visit.header().visitId() + ": " + other.size() + " of "
                            + visit.rows().size() + " rows give other values for the visit than its last row",
                    Entry.sources(visit)));
        }
    }

    private static void afterVisit(Visit visit, List<Doubt> doubts) {
        LocalDate since = visit.header().warningSince();
        if (since != null && since.isAfter(visit.day())) {
            doubts.add(Entry.ofVisit(
                    Doubt.Kind.DATE_AFTER_VISIT,
                    visit,
                    "the warning is said to have come on " + since + ", after the visit on " + visit.day()));
        }
    }

    private static void twoPlaces(Visit visit, List<Doubt> doubts) {
        Map<String, LoggedWheel> seen = new HashMap<>();
        for (LoggedWheel row : visit.rows()) {
            String id = row.wheel() == null ? null : row.wheel().sensorId();
            LoggedWheel other = id == null ? null : seen.putIfAbsent(id, row);
            if (other != null) {
                doubts.add(Entry.ofWheel(
                        Doubt.Kind.SENSOR_AT_TWO_PLACES,
                        row,
                        "sensor " + id + " is at " + other.wheel().position() + " and at "
                                + row.wheel().position() + " of one visit",
                        List.of(other.source(), row.source())));
            }
        }
    }

    private static void wheel(LoggedWheel row, List<Doubt> doubts) {
        WheelReading w = row.wheel();
        if (w.tyreDate() != null && w.tyreDate().isAfter(row.visit().day())) {
            doubts.add(Entry.ofWheel(
                    Doubt.Kind.DATE_AFTER_VISIT,
                    row,
                    "the tyre was made in the week of " + w.tyreDate() + ", after the visit on "
                            + row.visit().day()));
        }
        boolean sent = w.pressureKpa() != null || w.temperatureCelsius() != null;
        if (w.read() != ReadOutcome.OK && sent) {
            doubts.add(Entry.ofWheel(
                    Doubt.Kind.READ_CONTRADICTED,
                    row,
                    "the sensor did not answer, yet its " + (w.pressureKpa() != null ? "pressure" : "temperature")
                            + " is written down"));
        }
        boolean newOne = w.newSensorId() != null || w.newPart() != null;
        if (newOne && w.work() != WheelWork.SENSOR_REPLACED) {
            doubts.add(Entry.ofWheel(
                    Doubt.Kind.WORK_CONTRADICTED,
                    row,
                    "a new sensor is named, but the work is not said to be its replacement"));
        }
    }
}
