package sensorrounds.story;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeSet;
import sensorrounds.history.Finding;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Visit;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;

/** For each visit and wheel the tries, the battery as reported and the pressure; then what that says of the sensors. */
final class WheelGrid {
    /** Behind a wheel that is counted as another vehicle's. */
    private static final String ANOTHERS = "another's";

    private static final String LEGEND =
            " “" + ANOTHERS + "” stands where the answer, or the whole wheel, is taken to be"
                    + " another vehicle's and is not counted here: see the contradictions in its logs.";

    private WheelGrid() {}

    /** Findings name the rows they rest on as file:line, separated by blanks. */
    private static boolean isAnothers(LoggedWheel row, List<StoredRow> strangers) {
        String source = " " + row.source() + " ";
        return strangers.stream().anyMatch(f -> (" " + f.orEmpty("sources") + " ").contains(source));
    }

    static Page.Part part(VehicleFacts facts) {
        List<Visit> visits = facts.visits();
        TreeSet<WheelPosition> places = new TreeSet<>();
        visits.forEach(v -> v.wheels().forEach(w -> places.add(w.position())));
        if (places.isEmpty()) {
            return new Page.Part("wheels", "", List.of());
        }
        boolean sets = visits.stream().anyMatch(v -> v.header().wheelSet() != null);
        List<String> heads = new ArrayList<>(List.of("day"));
        if (sets) {
            heads.add("set");
        }
        places.forEach(p -> heads.add(p.code()));
        List<StoredRow> strangers = facts.rows("findings").stream()
                .filter(f -> f.is("kind", Finding.Kind.WHEEL_OF_ANOTHER_VEHICLE.name()))
                .toList();
        List<List<String>> rows = new ArrayList<>();
        for (Visit v : visits) {
            List<String> row = new ArrayList<>(List.of(v.day().toString()));
            if (sets) {
                row.add(v.header().wheelSet() == null ? "" : v.header().wheelSet());
            }
            for (WheelPosition p : places) {
                row.add(v.rows().stream()
                        .filter(r -> r.wheel() != null && r.wheel().position().equals(p))
                        .findFirst()
                        .map(r -> cell(r.wheel()) + (isAnothers(r, strangers) ? " " + ANOTHERS : ""))
                        .orElse(""));
            }
            rows.add(row);
        }
        List<Block> blocks = new ArrayList<>(List.of(
                new Block.Prose("Tries until the sensor answered (a cross and the tries when it stayed silent),"
                        + " battery as reported, pressure it sent in kPa; * where a new sensor was fitted."
                        + (strangers.isEmpty() ? "" : LEGEND)
                        + placard(visits)),
                new Block.Grid("Wheel by wheel", heads, rows)));
        blocks.addAll(ConditionGrid.blocks(facts));
        return new Page.Part("wheels", "Wheel by wheel: condition over time", blocks);
    }

    private static String cell(WheelReading w) {
        String heard = switch (w.read() == null ? ReadOutcome.NOT_TRIED : w.read()) {
            case OK -> w.wakeAttempts() == null ? "ok" : w.wakeAttempts().toString();
            case NO_ANSWER -> w.wakeAttempts() == null ? "×" : "×" + w.wakeAttempts();
            case NOT_TRIED -> Say.NONE;
            case NOT_PRESENT -> "none";
        };
        return Say.joined(
                        " ",
                        heard,
                        w.battery() == null ? null : w.battery().words().replace(" ", ""),
                        w.pressureKpa() == null ? null : Say.figure(w.pressureKpa(), 0))
                + (w.work() == WheelWork.SENSOR_REPLACED ? " *" : "");
    }

    private static String placard(List<Visit> visits) {
        Optional<SortedMap<Integer, Double>> last = visits.stream()
                .map(v -> v.header().placardKpa())
                .filter(p -> !p.isEmpty())
                .reduce((a, b) -> b);
        if (last.isEmpty()) {
            return "";
        }
        List<String> axles = new ArrayList<>();
        last.get().forEach((axle, kpa) -> axles.add("axle " + axle + " " + Say.figure(kpa, 0)));
        return " Placard: " + Say.and(axles) + " kPa.";
    }
}
