package sensorrounds.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Mount;
import sensorrounds.visit.Side;
import sensorrounds.visit.Source;
import sensorrounds.visit.Visit;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;

/**
 * Settles which rows of one vehicle count, when logs are sent twice, visits are edited, or two wheels claim one place.
 * The result does not depend on the order of the rows given.
 *
 * <ol>
 *   <li>Of one visit, the highest revision counts as a whole; rows of lower ones are {@link Duplicate.Rule#REVISED}.
 *   <li>Rows left whose days are more than a week apart are two visits under one key: all of them go to quarantine.
 *   <li>Two rows for one place that cannot both be true go to quarantine together: different sensors in one file, or
 *       different wheels in one nested visit.
 *   <li>Of several rows left for one place, the content of the last source counts, and of the rows with that content the
 *       first is kept; the others with it are {@link Duplicate.Rule#EXACT}, the rest
 *       {@link Duplicate.Rule#SUPERSEDED}.
 * </ol>
 */
public final class VisitResolver {
    private static final Comparator<LoggedWheel> BY_SOURCE = Comparator.comparing(LoggedWheel::source);
    private static final Comparator<LoggedWheel> BY_PLACE = Comparator.comparingInt(VisitResolver::place);
    private static final Comparator<Visit> BY_TIME = Comparator.comparing(
                    (Visit v) -> v.header().visitedAt())
            .thenComparing(v -> v.header().visitId());

    /** A visit may be dated anew when it is edited, but not by more than this. */
    private static final long MOST_DAYS_OF_ONE_VISIT = 7;

    private final List<Visit> visits = new ArrayList<>();
    private final List<Duplicate> duplicates = new ArrayList<>();
    private final List<Rejection> rejections = new ArrayList<>();

    private VisitResolver() {}

    /**
     * @param rows all rows of one vehicle that were understood, in any order; left as they are
     * @throws IllegalArgumentException when the rows are of more than one vehicle
     */
    public static ResolvedVisits resolve(List<LoggedWheel> rows) {
        VisitResolver resolver = new VisitResolver();
        byVisit(rows).values().forEach(resolver::visit);
        resolver.visits.sort(BY_TIME);
        resolver.duplicates.sort(Comparator.comparing((Duplicate d) -> d.row().source())
                .thenComparing(Duplicate::row, BY_PLACE)
                .thenComparing(Duplicate::toString));
        resolver.rejections.sort(Comparator.comparing(Rejection::source).thenComparing(Rejection::rawText));
        List<LoggedWheel> accepted = new ArrayList<>(rows.size());
        resolver.visits.forEach(v -> accepted.addAll(v.rows()));
        return new ResolvedVisits(resolver.visits, accepted, resolver.duplicates, resolver.rejections);
    }

    private static Map<String, List<LoggedWheel>> byVisit(List<LoggedWheel> rows) {
        Map<String, List<LoggedWheel>> byVisit = new HashMap<>();
        for (LoggedWheel row : rows) {
            String vehicle = rows.get(0).visit().vehicleId();
            if (!row.visit().vehicleId().equals(vehicle)) {
                throw new IllegalArgumentException("rows of two vehicles, \"" + vehicle + "\" and \""
                        + row.visit().vehicleId() + "\"; expected the rows of one");
            }
            byVisit.computeIfAbsent(row.visit().visitId(), id -> new ArrayList<>(6))
                    .add(row);
        }
        return byVisit;
    }

    private void visit(List<LoggedWheel> rows) {
        List<LoggedWheel> latest = latestRevision(rows);
        if (isReusedKey(latest)) {
            latest.forEach(row -> rejections.add(reusedKey(row)));
            return;
        }
        List<LoggedWheel> kept = onePerPlace(latest);
        if (kept.isEmpty()) {
            return;
        }
        // Ordered by place, so that rows of one source give the same one whatever the input order.
        LoggedWheel last = kept.get(0);
        for (LoggedWheel row : kept) {
            last = BY_SOURCE.compare(row, last) >= 0 ? row : last;
        }
        visits.add(new Visit(last.visit(), kept));
    }

    private List<LoggedWheel> latestRevision(List<LoggedWheel> rows) {
        int highest = rows.stream().mapToInt(r -> r.visit().revision()).max().orElse(0);
        List<LoggedWheel> latest = new ArrayList<>(rows.size());
        List<LoggedWheel> older = new ArrayList<>(0);
        for (LoggedWheel row : rows) {
            (row.visit().revision() == highest ? latest : older).add(row);
        }
        if (!older.isEmpty()) {
            Source winner = latest.stream()
                    .map(LoggedWheel::source)
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
            older.forEach(row -> duplicates.add(new Duplicate(row, Duplicate.Rule.REVISED, winner)));
        }
        return latest;
    }

    private static boolean isReusedKey(List<LoggedWheel> rows) {
        LocalDate first = rows.get(0).visit().day();
        LocalDate last = first;
        for (LoggedWheel row : rows) {
            LocalDate day = row.visit().day();
            first = day.isBefore(first) ? day : first;
            last = day.isAfter(last) ? day : last;
        }
        return last.toEpochDay() - first.toEpochDay() > MOST_DAYS_OF_ONE_VISIT;
    }

    private List<LoggedWheel> onePerPlace(List<LoggedWheel> rows) {
        rows.sort(BY_PLACE);
        List<LoggedWheel> kept = new ArrayList<>(rows.size());
        for (int from = 0; from < rows.size(); ) {
            int to = from + 1;
            while (to < rows.size() && BY_PLACE.compare(rows.get(from), rows.get(to)) == 0) {
                to++;
            }
            if (to == from + 1) {
                kept.add(rows.get(from));
            } else {
                samePlace(rows.subList(from, to), kept);
            }
            from = to;
        }
        return kept;
    }

    private void samePlace(List<LoggedWheel> rows, List<LoggedWheel> kept) {
        List<LoggedWheel> left = new ArrayList<>();
        Map<String, List<LoggedWheel>> byFile = new TreeMap<>();
        rows.forEach(r -> byFile.computeIfAbsent(r.source().file(), f -> new ArrayList<>())
                .add(r));
        for (List<LoggedWheel> ofFile : byFile.values()) {
            if (contradictory(ofFile)) {
                ofFile.forEach(row -> rejections.add(twoWheels(row)));
            } else {
                left.addAll(ofFile);
            }
        }
        if (left.isEmpty()) {
            return;
        }
        left.sort(BY_SOURCE);
        LoggedWheel last = left.get(left.size() - 1);
        LoggedWheel first =
                left.stream().filter(r -> sameContent(r, last)).findFirst().orElseThrow();
        kept.add(first);
        for (LoggedWheel row : left) {
            if (row != first) {
                Duplicate.Rule rule = sameContent(row, last) ? Duplicate.Rule.EXACT : Duplicate.Rule.SUPERSEDED;
                duplicates.add(new Duplicate(row, rule, first.source()));
            }
        }
    }

    private static boolean contradictory(List<LoggedWheel> rows) {
        for (LoggedWheel a : rows) {
            for (LoggedWheel b : rows) {
                boolean oneNestedVisit = a != b && a.source().equals(b.source()) && !sameContent(a, b);
                if (oneNestedVisit || twoSensors(a.wheel(), b.wheel())) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean twoSensors(WheelReading a, WheelReading b) {
        return a != null
                && b != null
                && a.sensorId() != null
                && b.sensorId() != null
                && !a.sensorId().equals(b.sensorId());
    }

    /** Equal but for the word the log used for the place, so that one visit exported in two layouts is one visit. */
    private static boolean sameContent(LoggedWheel a, LoggedWheel b) {
        return a.visit().equals(b.visit()) && Objects.equals(withoutRawWord(a.wheel()), withoutRawWord(b.wheel()));
    }

    private static WheelReading withoutRawWord(WheelReading w) {
        return w == null
                ? null
                : new WheelReading(
                        w.position(),
                        null,
                        w.sensorId(),
                        w.read(),
                        w.wakeAttempts(),
                        w.pressureKpa(),
                        w.gaugePressureKpa(),
                        w.hot(),
                        w.temperatureCelsius(),
                        w.battery(),
                        w.part(),
                        w.work(),
                        w.workReason(),
                        w.newSensorId(),
                        w.newPart(),
                        w.cloned(),
                        w.tyreDate());
    }

    private static Rejection reusedKey(LoggedWheel row) {
        String visit = row.visit().visitId();
        return new Rejection(
                row.source(),
                visit,
                row.visit().vehicleId(),
                row.wheel() == null ? null : row.wheel().positionRaw(),
                Field.VISIT_ID.key(),
                visit,
                RejectionRule.VISIT_KEY_REUSED,
                "one visit for the key, within " + MOST_DAYS_OF_ONE_VISIT + " days",
                RejectionRule.VISIT_KEY_REUSED.remedy(),
                "visit " + visit + " of " + row.visit().day()
                        + (row.wheel() == null
                                ? ""
                                : ", " + row.wheel().position().code()));
    }

    private static Rejection twoWheels(LoggedWheel row) {
        WheelReading wheel = row.wheel();
        String sensor = wheel.sensorId() == null ? "none" : wheel.sensorId();
        return new Rejection(
                row.source(),
                row.visit().visitId(),
                row.visit().vehicleId(),
                wheel.positionRaw(),
                Field.POSITION.key(),
                wheel.positionRaw(),
                RejectionRule.TWO_WHEELS_ONE_PLACE,
                "one wheel per place and visit",
                RejectionRule.TWO_WHEELS_ONE_PLACE.remedy(),
                "visit " + row.visit().visitId() + ", " + wheel.position().code() + " (" + wheel.positionRaw()
                        + "), sensor " + sensor + ", read " + Words.word(wheel.read()));
    }

    /** A number that orders as {@link WheelPosition#compareTo} does, without building codes; a row without wheel first. */
    private static int place(LoggedWheel row) {
        if (row.wheel() == null) {
            return -1;
        }
        WheelPosition p = row.wheel().position();
        int axle = p.isSpare() ? WheelPosition.MAX_AXLE + 1 : p.axle();
        int side = p.side() == Side.RIGHT ? 1 : 0;
        return (axle * Side.values().length + side) * Mount.values().length
                + p.mount().ordinal();
    }
}
