package sensorrounds.simulate;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.simulate.LogEntry.Expected;
import sensorrounds.simulate.LogEntry.Mishap;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelReading;

/** Makes the ordinary mess of logs, and keeps count of it. At most one mishap befalls a visit as a whole. */
final class Mess {
    private final MessRates rates;
    private final long seed;
    private final Crew.Export export;

    /**
     * What becomes of one visit.
     *
     * @param here entries where the visit belongs
     * @param later entry at the end of the same file or of the next one, or null
     * @param nextFile true when the later entry stands in the next file
     */
    record Outcome(List<LogEntry> here, LogEntry later, boolean nextFile) {}

    Mess(MessRates rates, long seed, Crew.Export export) {
        this.rates = rates;
        this.seed = seed;
        this.export = export;
    }

    Outcome befall(SimulatedVisit visit) {
        LogEntry clean = LogEntry.clean(visit);
        if (visit.partOfStory()) {
            return new Outcome(List.of(clean), null, false);
        }
        Dice dice = Dice.of(seed, 'M', visit.header().visitId().hashCode());
        double at = dice.uniform();
        if ((at -= rates.duplicate()) < 0) {
            Mishap m = new Mishap("sent-twice", -1, visit.rows(), Expected.DUPLICATE);
            return new Outcome(List.of(clean), new LogEntry(visit, Slips.NONE, false, List.of(m)), dice.chance(0.5));
        }
        if ((at -= rates.revised()) < 0) {
            return edited(visit, dice);
        }
        if ((at -= rates.truncated()) < 0 && export == Crew.Export.JSON_LINES) {
            Mishap m = new Mishap("line-cut-off", -1, 1, Expected.QUARANTINED);
            return new Outcome(List.of(new LogEntry(visit, Slips.NONE, true, List.of(m)), clean), null, false);
        }
        return new Outcome(List.of(slipped(visit, at, dice)), null, false);
    }

    /** The first form has a digit too many in the odometer and lacks the drive; the second is the truth. */
    private static Outcome edited(SimulatedVisit visit, Dice dice) {
        VisitHeader h = visit.header();
        Double odometer = h.odometerKm() == null || dice.chance(0.5) ? h.odometerKm() : (Double) (h.odometerKm() * 10);
        SimulatedVisit first = with(visit, 0, odometer, false);
        SimulatedVisit second = with(visit, 1, h.odometerKm(), true);
        Mishap old = new Mishap("edited-later", -1, visit.rows(), Expected.SUPERSEDED);
        Mishap edit = new Mishap("edit", -1, visit.rows(), Expected.ACCEPTED);
        return new Outcome(
                List.of(new LogEntry(first, Slips.NONE, false, List.of(old))),
                new LogEntry(second, Slips.NONE, false, List.of(edit)),
                false);
    }

    private LogEntry slipped(SimulatedVisit visit, double chance, Dice dice) {
        Slips slips = Slips.fresh();
        List<Mishap> mishaps = new ArrayList<>();
        double at = chance;
        int rows = visit.rows();
        if (at < 0) {
            return LogEntry.clean(visit);
        }
        if ((at -= rates.badDate()) < 0) {
            slips.visit("visitedAt", noDate());
            mishaps.add(new Mishap("bad-date", -1, rows, Expected.QUARANTINED));
        } else if ((at -= rates.missingVehicle()) < 0) {
            slips.visit("vehicleId", "");
            mishaps.add(new Mishap("vehicle-missing", -1, rows, Expected.QUARANTINED));
        } else if (at - rates.sharedPlace() < 0 && visit.wheels().size() > 3) {
            slips.wheel(
                    1,
                    "position",
                    Layouts.vocabulary(export).place(visit.wheels().get(0).position(), visit.axles()));
            mishaps.add(new Mishap("place-twice", 1, 2, Expected.QUARANTINED));
        } else {
            for (int i = 0; i < visit.wheels().size(); i++) {
                wheelSlip(visit.wheels().get(i), i, slips, mishaps, dice);
            }
        }
        return mishaps.isEmpty() ? LogEntry.clean(visit) : new LogEntry(visit, slips, false, mishaps);
    }

    private void wheelSlip(WheelReading w, int i, Slips slips, List<Mishap> mishaps, Dice dice) {
        double at = dice.uniform();
        if ((at -= rates.blankBattery()) < 0) {
            if (w.battery() != null) {
                slips.wheel(i, "battery", "");
                mishaps.add(new Mishap("battery-blank", i, 1, Expected.ACCEPTED));
            }
        } else if ((at -= rates.impossiblePressure()) < 0) {
            slips.wheel(i, "pressure", noPressure());
            mishaps.add(new Mishap("pressure-impossible", i, 1, Expected.QUARANTINED));
        } else if ((at -= rates.unknownPosition()) < 0) {
            slips.wheel(i, "position", noPlace());
            mishaps.add(new Mishap("place-unknown", i, 1, Expected.QUARANTINED));
        } else if ((at -= rates.idNotHex()) < 0) {
            if (w.sensorId() != null) {
                String id = w.sensorId();
                slips.wheel(i, "sensorId", id.contains("0") ? id.replaceFirst("0", "O") : id.substring(0, 7) + "O");
                mishaps.add(new Mishap("id-letter-o", i, 1, Expected.QUARANTINED));
            }
        } else if (at - rates.idMistyped() < 0 && w.sensorId() != null) {
            String id = w.sensorId();
            int wrong = (Character.digit(id.charAt(6), 16) + 3) % 16;
            slips.wheel(i, "sensorId", id.substring(0, 6) + "0123456789ABCDEF".charAt(wrong) + id.charAt(7));
            mishaps.add(new Mishap("id-mistyped", i, 1, Expected.ACCEPTED));
        }
    }

    private String noDate() {
        return switch (export) {
            case JSON_LINES, CANONICAL_CSV -> "2024-02-30T09:00";
            case TRADE_CSV -> "31/02/2024 09:00";
            case DECIMAL_COMMA_CSV -> "31.02.2024 09:00";
        };
    }

    private String noPressure() {
        return switch (export) {
            case JSON_LINES, CANONICAL_CSV -> "9999";
            case TRADE_CSV -> "999";
            case DECIMAL_COMMA_CSV -> "99,9";
        };
    }

    private String noPlace() {
        return switch (export) {
            case JSON_LINES, CANONICAL_CSV -> "5X";
            case TRADE_CSV -> "NSX";
            case DECIMAL_COMMA_CSV -> "HX";
        };
    }

    private static SimulatedVisit with(SimulatedVisit v, int revision, Double odometer, boolean withDrive) {
        VisitHeader h = v.header();
        VisitHeader changed = new VisitHeader(
                h.visitId(),
                revision,
                h.visitedAt(),
                h.technicianId(),
                h.readerId(),
                h.vehicleId(),
                h.vin(),
                h.registration(),
                odometer,
                h.ambientCelsius(),
                h.placardKpa(),
                h.wheelSet(),
                h.reason(),
                h.warning(),
                h.warningSince(),
                h.drivingMinutesToWarning(),
                h.faultCodes(),
                h.relearn(),
                h.relearnResult(),
                h.pressuresStored(),
                h.codesCleared(),
                withDrive ? h.testDrive() : null,
                h.notes());
        return new SimulatedVisit(changed, v.wheels(), v.axles(), v.partOfStory());
    }
}
