package sensorrounds.condition;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.FailureCause;
import sensorrounds.history.Finding;
import sensorrounds.history.FollowUp;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.Repair;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

/** Histories put together by hand, in a scenario of our own: a van of the island post on Halmen. */
public final class Histories {
    public static final String VEHICLE = "post-7";
    public static final String READER = "reader-a";

    private Histories() {}

    public static LocalDate day(String iso) {
        return LocalDate.parse(iso);
    }

    public static WheelPosition place(String code) {
        return WheelPosition.parse(code).orElseThrow();
    }

    public static Vehicle vehicle(String vehicleClass) {
        return new Vehicle(
                VEHICLE,
                vehicleClass,
                null,
                day("2019-03-01"),
                "Norrhamn",
                null,
                MonitoringSystem.DIRECT,
                null,
                null,
                null,
                null,
                null);
    }

    /** One attempt to read; its visit is named after the day. */
    public static LifeReading read(
            String day,
            String place,
            String reader,
            ReadOutcome outcome,
            Integer tries,
            BatteryReport battery,
            Double air) {
        return new LifeReading(
                day(day),
                "visit-" + day,
                place(place),
                reader,
                "tech-1",
                outcome,
                tries,
                battery,
                null,
                null,
                air,
                new Source("rounds.csv", 2));
    }

    public static LifeReading answer(String day, String place, int tries) {
        return read(day, place, READER, ReadOutcome.OK, tries, null, 12.0);
    }

    public static LifeReading silent(String day, String place, Integer tries) {
        return read(day, place, READER, ReadOutcome.NO_ANSWER, tries, null, 12.0);
    }

    public static LifeReading battery(String day, String place, BatteryReport report, Double air) {
        return read(day, place, READER, ReadOutcome.OK, 1, report, air);
    }

    /** A sensor in service since the vehicle's first use. */
    public static SensorLife life(String place, LifeReading... readings) {
        return life(place, "2019-03-01", OriginBasis.VEHICLE_FIRST_USE, LifeEnd.IN_SERVICE, null, readings);
    }

    public static SensorLife life(
            String place,
            String fitted,
            OriginBasis basis,
            LifeEnd end,
            String firstKnownFailed,
            LifeReading... readings) {
        List<LifeReading> all = List.of(readings);
        List<LifeReading> answered = all.stream().filter(LifeReading::answered).toList();
        return new SensorLife(
                VEHICLE,
                "5E" + place,
                1,
                "part-1",
                place(place),
                null,
                fitted == null ? null : day(fitted),
                basis,
                answered.isEmpty() ? null : answered.get(0).day(),
                answered.isEmpty() ? null : answered.get(answered.size() - 1).day(),
                firstKnownFailed == null ? null : day(firstKnownFailed),
                null,
                end,
                end == LifeEnd.FAILED ? FailureCause.BATTERY : null,
                null,
                null,
                "built by hand",
                all);
    }

    /** A visit with its warning; named after the day. */
    public static VisitSummary visit(String day, Warning warning, FaultCode... codes) {
        return new VisitSummary(
                day(day),
                "visit-" + day,
                "tech-1",
                READER,
                VisitReason.WARNING,
                warning,
                null,
                List.of(codes),
                true,
                null,
                null,
                List.of(),
                List.of(),
                List.of(),
                null,
                Repair.NONE,
                false,
                false,
                null,
                null,
                null,
                null);
    }

    public static WarningEpisode episode(
            Warning kind, String first, String last, int returns, boolean everyAnswered, boolean lastingCause) {
        return new WarningEpisode(
                VEHICLE,
                kind,
                day(first),
                day(last),
                null,
                List.of("visit-" + first),
                returns,
                everyAnswered,
                lastingCause,
                false);
    }

    public static Finding finding(Finding.Kind kind, String place, String day) {
        return new Finding(
                kind,
                VEHICLE,
                null,
                place == null ? null : place(place),
                null,
                day == null ? null : day(day),
                "seen",
                "noted",
                List.of());
    }

    public static VehicleHistory history(SensorLife... lives) {
        return history(List.of(lives), List.of(), List.of(), List.of());
    }

    public static VehicleHistory history(
            List<SensorLife> lives, List<VisitSummary> visits, List<WarningEpisode> episodes, List<Finding> findings) {
        return new VehicleHistory(
                vehicle("van"), visits, new ArrayList<>(lives), episodes, List.<FollowUp>of(), findings);
    }

    /** A model of one ordinary reader with chance 0.9, and a slow one, {@code reader-slow}, with 0.45. */
    public static WakeModel ordinaryModel() {
        WakeCells cells = new WakeCells(0);
        for (String reader : List.of(READER, "reader-b", "reader-c", "reader-d", "reader-e")) {
            cells.count(new WakeCells.Key(reader, false, false), 1, true, 9_000);
            cells.count(new WakeCells.Key(reader, false, false), 2, true, 900);
            cells.count(new WakeCells.Key(reader, false, false), 3, true, 100);
        }
        cells.count(new WakeCells.Key("reader-slow", false, false), 1, true, 4_500);
        cells.count(new WakeCells.Key("reader-slow", false, false), 2, true, 2_475);
        cells.count(new WakeCells.Key("reader-slow", false, false), 3, true, 3_025);
        return WakeModel.fit(cells, ConditionSettings.defaults());
    }
}
