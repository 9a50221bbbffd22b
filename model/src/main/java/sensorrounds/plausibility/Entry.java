package sensorrounds.plausibility;

import java.util.List;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;

/** Shapes doubts about a visit or one of its wheels. */
final class Entry {
    private Entry() {}

    static Doubt ofWheel(Doubt.Kind kind, LoggedWheel row, String what) {
        return ofWheel(kind, row, what, List.of(row.source()));
    }

    static Doubt ofWheel(Doubt.Kind kind, LoggedWheel row, String what, List<Source> sources) {
        return new Doubt(
                kind,
                row.visit().vehicleId(),
                row.wheel().sensorId(),
                row.wheel().position(),
                row.visit().wheelSet(),
                row.visit().day(),
                what,
                sources);
    }

    static Doubt ofVisit(Doubt.Kind kind, Visit visit, String what) {
        return ofVisit(kind, visit, what, sources(visit));
    }

    static Doubt ofVisit(Doubt.Kind kind, Visit visit, String what, List<Source> sources) {
        return new Doubt(kind, visit.header().vehicleId(), null, null, null, visit.day(), what, sources);
    }

    static List<Source> sources(Visit visit) {
        return visit.rows().stream().map(LoggedWheel::source).toList();
    }
}
