package sensorrounds.plausibility;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;

/** The log of one vehicle, written down by a test. */
final class Log {
    private final List<Visit> visits = new ArrayList<>();
    private long line = 1;

    List<Doubt> doubts() {
        return VehicleDoubts.of(visits);
    }

    /** A visit that is open to changes until it is closed. */
    Draft visit(String id, String at) {
        return new Draft(id, at);
    }

    /** Four wheels with nothing odd about them. */
    Log ordinary(String id, String at, double km) {
        Draft draft = visit(id, at);
        draft.km = km;
        return draft.wheel("1L", "0A1B2C01", 232, 18.0)
                .wheel("1R", "7F3D9922", 235, 19.0)
                .wheel("2L", "5534AE17", 251, 18.0)
                .wheel("2R", "C09B1D5E", 249, 20.0)
                .close();
    }

    /** One visit being written. */
    final class Draft {
        private final String id;
        private final LocalDateTime at;
        private final List<WheelReading> wheels = new ArrayList<>();
        Double km;
        Double air = 15.0;
        String vin;
        String plate;
        LocalDate warningSince;
        SortedMap<Integer, Double> placard = new TreeMap<>(java.util.Map.of(1, 240.0, 2, 260.0));

        Draft(String id, String at) {
            this.id = id;
            this.at = LocalDateTime.parse(at);
        }

        Draft wheel(String position, String sensor, double kpa, Double celsius) {
            return wheel(position, sensor, ReadOutcome.OK, kpa, null, celsius, null, null, null);
        }

        Draft wheel(
                String position,
                String sensor,
                ReadOutcome read,
                Double kpa,
                Double gauge,
                Double celsius,
                WheelWork work,
                String newSensor,
                LocalDate tyre) {
            wheels.add(new WheelReading(
                    WheelPosition.parse(position).orElseThrow(),
                    position,
                    sensor,
                    read,
                    1,
                    kpa,
                    gauge,
                    null,
                    celsius,
                    null,
                    null,
                    work,
                    null,
                    newSensor,
                    null,
                    null,
                    tyre));
            return this;
        }

        private VisitHeader header() {
            return new VisitHeader(
                    id,
                    0,
                    at,
                    null,
                    null,
                    "K7",
                    vin,
                    plate,
                    km,
                    air,
                    placard,
                    null,
                    null,
                    null,
                    warningSince,
                    null,
                    List.of(),
                    null,
                    null,
                    null,
                    null,
                    null,
                    null);
        }

        Log close() {
            VisitHeader header = header();
            visits.add(new Visit(
                    header,
                    wheels.stream()
                            .map(w -> new LoggedWheel(header, w, new Source("a.csv", ++line)))
                            .toList()));
            return Log.this;
        }

        /** Closes the visit with a first row whose odometer differs. */
        Log closeWithOtherFirstRow(double otherKm) {
            VisitHeader header = header();
            km = otherKm;
            VisitHeader other = header();
            List<LoggedWheel> rows = new ArrayList<>();
            for (WheelReading wheel : wheels) {
                rows.add(new LoggedWheel(rows.isEmpty() ? other : header, wheel, new Source("a.csv", ++line)));
            }
            visits.add(new Visit(header, rows));
            return Log.this;
        }
    }
}
