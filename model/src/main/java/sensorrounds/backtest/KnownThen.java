package sensorrounds.backtest;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.WheelPosition;

/**
 * Logs and register as they may have stood on a day gone by: whatever might have been learnt later is left out.
 *
 * <p>Logs do not say when a row was written, only when its visit was. So of a visit up to that day the form of its lowest
 * revision counts, and of rows for one place the one from the first file: a correction may have come later, and none is
 * taken. Of the register, whose lines carry no date, booked stops are left out, and dates that lay ahead.
 */
public final class KnownThen {
    private KnownThen() {}

    private record Place(String visitId, WheelPosition position) {}

    /**
     * @param rows all understood rows of one vehicle, duplicates and superseded ones among them
     * @return those that count, in the order given; none for a vehicle that had no visit yet
     */
    public static List<LoggedWheel> rows(List<LoggedWheel> rows, LocalDate day) {
        Map<String, Integer> firstForms = new HashMap<>();
        for (LoggedWheel row : rows) {
            firstForms.merge(row.visit().visitId(), row.visit().revision(), Math::min);
        }
        Map<Place, LoggedWheel> first = new HashMap<>();
        for (LoggedWheel row : rows) {
            if (counts(row, firstForms, day)) {
                first.merge(place(row), row, KnownThen::earlier);
            }
        }
        List<LoggedWheel> known = new ArrayList<>();
        for (LoggedWheel row : rows) {
            if (counts(row, firstForms, day) && ofTheFile(row, first.get(place(row)))) {
                known.add(row);
            }
        }
        return known;
    }

    private static boolean counts(LoggedWheel row, Map<String, Integer> firstForms, LocalDate day) {
        return !row.visit().day().isAfter(day)
                && row.visit().revision() == firstForms.get(row.visit().visitId());
    }

    private static Place place(LoggedWheel row) {
        return new Place(
                row.visit().visitId(), row.wheel() == null ? null : row.wheel().position());
    }

    private static LoggedWheel earlier(LoggedWheel a, LoggedWheel b) {
        return a.source().compareTo(b.source()) <= 0 ? a : b;
    }

    /** What one file says twice stands as it is: which of it counts is for the resolver of visits to settle. */
    private static boolean ofTheFile(LoggedWheel row, LoggedWheel first) {
        return row.source().file().equals(first.source().file());
    }

    /** A register line as it may have stood that day. */
    public static Vehicle vehicle(Vehicle v, LocalDate day) {
        return new Vehicle(
                v.vehicleId(),
                v.vehicleClass(),
                v.modelGroup(),
                unlessAhead(v.firstUsed(), day),
                v.depot(),
                v.drivingSide(),
                v.system(),
                v.axles(),
                v.originalPart(),
                v.annualKm(),
                null,
                unlessAhead(v.leftFleet(), day));
    }

    private static LocalDate unlessAhead(LocalDate date, LocalDate day) {
        return date == null || date.isAfter(day) ? null : date;
    }
}
