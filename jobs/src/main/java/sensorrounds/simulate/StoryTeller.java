package sensorrounds.simulate;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import sensorrounds.simulate.SimulatedSensor.Origin;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.Side;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** Writes the visits of the five vehicles with a known story: dates and findings are set, the rest is chance. */
final class StoryTeller {
    private static final WheelPosition REAR_RIGHT = new WheelPosition(2, Side.RIGHT, Mount.SINGLE);
    private static final int LONG_LIFE_DAYS = 5200;
    private static final int WEAK_DAYS = 150;
    private static final String QUICK = "RD-1101";
    private static final String TRADE = "RD-1203";
    private static final String PERCENT = "RD-2104";

    private final Bench bench;

    private StoryTeller(Bench bench) {
        this.bench = bench;
    }

    static SimulatedVehicle tell(Bench bench, Story story) {
        StoryTeller teller = new StoryTeller(bench);
        String next = switch (story) {
            case INTERMITTENT -> teller.intermittent();
            case SILENT_PLACE -> teller.silentPlace();
            case AGEING_SET -> teller.ageingSet();
            case COLD_MORNINGS -> teller.coldMornings();
            case SLOW_READER -> teller.slowReader();
        };
        return bench.done(teller.day(next), null);
    }

    private String intermittent() {
        soundOriginals(Set.of());
        for (String date : List.of("2022-11-08", "2023-06-20", "2024-01-16", "2024-08-27")) {
            VisitDraft v = read(date, 9.5, VisitReason.SERVICE, QUICK);
            answersAtOnceBut(v, date.compareTo("2024") < 0 ? 1 : 2);
            bench.close(v);
        }
        comesAndGoes("2025-03-18", 3, FaultCode.State.STORED, 26, 19);
        VisitDraft between = read("2025-05-06", 14.25, VisitReason.INSPECTION, QUICK);
        answersAtOnceBut(between, 3);
        bench.close(between);
        comesAndGoes("2025-07-29", 4, FaultCode.State.STORED, 31, 24);
        comesAndGoes("2025-12-02", 3, FaultCode.State.CURRENT, 22, 16);
        VisitDraft quiet = read("2026-02-17", 10.0, VisitReason.SERVICE, QUICK);
        answersAtOnceBut(quiet, 3);
        bench.close(quiet);
        comesAndGoes("2026-04-28", 4, FaultCode.State.STORED, 25, 18);
        comesAndGoes("2026-09-08", 4, FaultCode.State.STORED, 4, 2);
        return "2026-12-01";
    }

    private void comesAndGoes(String date, int tries, FaultCode.State state, int minutes, int km) {
        VisitDraft v = read(date, 8.25, VisitReason.WARNING, QUICK);
        answersAtOnceBut(v, tries);
        warn(v, Warning.SYSTEM_FAULT, 6);
        v.minutesToWarning = 14.0;
        v.codes.add(new FaultCode(bench.kind.partlessCode(), state, null));
        v.relearn = RelearnKind.STATIONARY;
        v.relearnResult = RelearnResult.DONE;
        v.codesCleared = true;
        v.testDrive = new TestDrive((double) minutes, (double) km, minutes < 10 ? null : Boolean.FALSE);
        v.notes =
                minutes < 10 ? "cleared, codes read clear after; driver in a hurry" : "cleared, codes read clear after";
        bench.close(v);
    }

    private void answersAtOnceBut(VisitDraft v, int triesRearRight) {
        for (WheelDraft w : v.wheels) {
            w.attempts = 1;
            w.battery = BatteryReport.OK;
        }
        v.at(REAR_RIGHT).attempts = triesRearRight;
    }

    private String silentPlace() {
        soundOriginals(Set.of());
        bench.close(read("2022-11-22", 11.0, VisitReason.SERVICE, QUICK));
        bench.close(read("2023-06-27", 13.5, VisitReason.SERVICE, TRADE));
        bench.close(read("2024-02-06", 9.0, VisitReason.SERVICE, QUICK));
        bench.close(read("2024-09-17", 10.5, VisitReason.SERVICE, QUICK));
        silentThere("2025-02-18", TRADE);
        bench.close(read("2025-05-06", 15.25, VisitReason.INSPECTION, QUICK));
        silentThere("2025-07-01", QUICK);
        silentThere("2025-10-28", TRADE);
        bench.close(read("2025-12-09", 9.75, VisitReason.SERVICE, QUICK));
        silentThere("2026-02-24", QUICK);
        silentThere("2026-06-16", QUICK);
        VisitDraft last = read("2026-08-18", 8.75, VisitReason.WARNING, QUICK);
        silence(last.at(REAR_RIGHT));
        warn(last, Warning.SYSTEM_FAULT, 11);
        last.codes.add(new FaultCode(bench.kind.code(4), FaultCode.State.CURRENT, REAR_RIGHT));
        last.notes = "same wheel again, not fitting another one blind";
        bench.close(last);
        return "2026-11-10";
    }

    private void silentThere(String date, String reader) {
        VisitDraft v = read(date, 8.0, VisitReason.WARNING, reader);
        WheelDraft w = v.at(REAR_RIGHT);
        silence(w);
        warn(v, Warning.SYSTEM_FAULT, 5);
        v.codes.add(new FaultCode(bench.kind.code(4), FaultCode.State.CURRENT, REAR_RIGHT));
        bench.takeOut(v, w, WorkReason.NO_ANSWER);
        bench.writeReplacement(
                w, fitDestined(w.wheel, v.day, Origin.LOGGED, LONG_LIFE_DAYS), WorkReason.NO_ANSWER, false);
        relearned(v, 24);
        bench.close(v);
    }

    private static void silence(WheelDraft w) {
        w.read = ReadOutcome.NO_ANSWER;
        w.attempts = 6;
        w.pressureKpa = null;
        w.celsius = null;
        w.battery = null;
        w.part = null;
        w.sensorId = w.found.id;
    }

    private String ageingSet() {
        soundOriginals(Set.of("1L", "1R", "2L", "2R"));
        fitOriginal("1L", "2026-06-20", "2027-01-12");
        fitOriginal("1R", "2025-10-20", "2026-01-28");
        fitOriginal("2L", "2026-02-20", "2026-05-30");
        fitOriginal("2R", "2027-02-01", "2027-06-10");
        for (String date :
                List.of("2022-11-15", "2023-06-06", "2024-01-23", "2024-08-13", "2025-03-11", "2025-09-23")) {
            bench.close(sound(read(date, 12.0, VisitReason.SERVICE, PERCENT)));
        }
        diesOfAge("2026-02-09", "1R");
        bench.close(sound(read("2026-04-21", 9.75, VisitReason.SERVICE, PERCENT)));
        diesOfAge("2026-06-11", "2L");
        VisitDraft last = sound(read("2026-09-10", 10.25, VisitReason.INSPECTION, PERCENT));
        WheelDraft low = last.at(bench.wheel("1L").position);
        low.attempts = 3;
        low.battery = new BatteryReport(BatteryReport.Kind.PERCENT, 11);
        bench.close(last);
        return "2026-11-24";
    }

    private void diesOfAge(String date, String place) {
        VisitDraft v = sound(read(date, 8.5, VisitReason.WARNING, PERCENT));
        WheelDraft w = v.at(bench.wheel(place).position);
        silence(w);
        warn(v, Warning.SYSTEM_FAULT, 10);
        bench.takeOut(v, w, WorkReason.BATTERY_EXHAUSTED);
        SimulatedSensor s = fitDestined(w.wheel, v.day, Origin.LOGGED, LONG_LIFE_DAYS);
        bench.writeReplacement(w, s, WorkReason.BATTERY_EXHAUSTED, false);
        relearned(v, 28);
        bench.close(v);
    }

    private String coldMornings() {
        soundOriginals(Set.of());
        for (String date : List.of("2022-12-13", "2023-07-11", "2024-03-05")) {
            bench.close(sound(read(date, 11.5, VisitReason.SERVICE, PERCENT)));
        }
        coldWinter("2024-12-02", "2025-02-20");
        bench.close(sound(read("2025-06-24", 10.0, VisitReason.SERVICE, PERCENT)));
        coldWinter("2025-12-01", "2026-02-20");
        bench.close(sound(read("2026-07-07", 13.0, VisitReason.SERVICE, PERCENT)));
        return "2027-01-19";
    }

    /** The two coldest mornings between the dates, three weeks apart at least. */
    private void coldWinter(String from, String to) {
        int first = coldest(day(from), day(to), -100);
        int second = coldest(day(from), day(to), first);
        coldMorning(Math.min(first, second));
        coldMorning(Math.max(first, second));
    }

    private int coldest(int from, int to, int awayFrom) {
        int best = -1;
        for (int d = from; d <= to; d++) {
            boolean workday = LocalDate.ofEpochDay(d).getDayOfWeek() != DayOfWeek.SUNDAY;
            if (workday && Math.abs(d - awayFrom) >= 21 && (best < 0 || bench.celsius(d, 7) < bench.celsius(best, 7))) {
                best = d;
            }
        }
        return best;
    }

    private void coldMorning(int day) {
        double celsius = Math.min(-8, Math.rint(bench.celsius(day, 7)));
        // About 8 % under the placard at 20 °C is in order; at -8 °C it is just past a loss of 20 %.
        bench.mounted().forEach(w -> w.inflate(day, w.placardKpa * bench.dice.between(0.905, 0.918), 20));
        VisitDraft v =
                bench.open(day, 7.5, VisitReason.WARNING, bench.settings.crew().pair(PERCENT), celsius);
        bench.readAll(v, false);
        v.wheels.forEach(w -> {
            w.hot = Boolean.FALSE;
            w.celsius = celsius;
            w.pressureKpa = Math.rint(w.wheel.kpa(day, celsius));
            w.gaugeKpa = w.pressureKpa;
        });
        sound(v);
        warn(v, Warning.LOW_PRESSURE, 0);
        v.minutesToWarning = 2.0;
        v.notes = "steady light from the start; gone after some km, says the driver";
        bench.close(v);
    }

    private String slowReader() {
        soundOriginals(Set.of());
        String slow = InventedOperator.SLOW_READER;
        bench.close(read("2022-12-06", 9.0, VisitReason.SERVICE, slow));
        bench.close(read("2023-07-18", 9.0, VisitReason.SERVICE, slow));
        VisitDraft nail = read("2024-02-20", 8.5, VisitReason.TYRE_WORK, slow, "2R");
        warn(nail, Warning.LOW_PRESSURE, 1);
        nail.at(REAR_RIGHT).work = WheelWork.KIT_RENEWED;
        nail.notes = "nail in 2R, tyre repaired";
        bench.close(nail);
        bench.close(read("2024-09-10", 14.0, VisitReason.SERVICE, slow));
        VisitDraft unlearned = read("2025-04-15", 10.5, VisitReason.WARNING, slow);
        warn(unlearned, Warning.SYSTEM_FAULT, 3);
        unlearned.notes = "wheels had been rotated by others and not learned; learned now";
        relearned(unlearned, 27);
        bench.close(unlearned);
        bench.close(read("2025-10-28", 9.0, VisitReason.SERVICE, slow));
        bench.close(read("2026-05-19", 11.0, VisitReason.INSPECTION, slow));
        return "2026-12-08";
    }

    // --- what the stories share ---

    private int day(String isoDate) {
        return Story.day(bench.settings, isoDate);
    }

    private VisitDraft read(String date, double hour, VisitReason reason, String reader, String... flat) {
        int day = day(date);
        for (Wheel w : bench.mounted()) {
            boolean isFlat = List.of(flat).contains(w.position.code());
            w.inflate(day, w.placardKpa * (isFlat ? 0.58 : bench.dice.between(0.97, 1.01)), 20);
        }
        VisitDraft v = bench.open(day, hour, reason, bench.settings.crew().pair(reader));
        bench.readAll(v, false);
        answered(v);
        return v;
    }

    /** Chance must not silence a wheel that the story does not. */
    private void answered(VisitDraft v) {
        for (WheelDraft w : v.wheels) {
            if (w.silent() && !w.wheel.position.isSpare()) {
                w.read = ReadOutcome.OK;
                w.sensorId = w.found.id;
                w.celsius = Math.rint(v.ambient);
                w.pressureKpa = Math.rint(w.wheel.kpa(v.day, v.ambient));
            }
            if (w.battery != null && w.battery.kind() == BatteryReport.Kind.LOW) {
                w.battery = BatteryReport.OK;
            }
        }
    }

    /** As {@link #answered}, and every battery shown with a sound percentage. */
    private VisitDraft sound(VisitDraft v) {
        answered(v);
        for (WheelDraft w : v.wheels) {
            boolean low = w.battery == null || w.battery.value() < 20;
            if (low) {
                w.battery = new BatteryReport(BatteryReport.Kind.PERCENT, bench.dice.between(48, 70));
            }
        }
        return v;
    }

    private void warn(VisitDraft v, Warning warning, int daysAgo) {
        v.warning = warning;
        v.warningSince = LocalDate.ofEpochDay(v.day - daysAgo);
    }

    private void relearned(VisitDraft v, int minutes) {
        v.relearn = RelearnKind.DIAGNOSTIC_PORT;
        v.relearnResult = RelearnResult.DONE;
        v.codesCleared = true;
        v.testDrive = new TestDrive((double) minutes, Math.rint(minutes * 0.7), Boolean.FALSE);
    }

    private void soundOriginals(Set<String> but) {
        for (Wheel w : bench.wheels) {
            if (!but.contains(w.position.code())) {
                fitDestined(w, bench.firstUsedDay, Origin.ORIGINAL, LONG_LIFE_DAYS);
            }
        }
    }

    private SimulatedSensor fitDestined(Wheel w, int born, Origin origin, int lifeDays) {
        String part = origin == Origin.ORIGINAL ? bench.kind.originalPart() : bench.kind.replacementPart();
        int dies = born + lifeDays;
        return bench.fit(
                w,
                SimulatedSensor.destined(
                        bench.nextOrdinal(), bench.freshId(), part, origin, born, dies - WEAK_DAYS, dies));
    }

    private void fitOriginal(String place, String weakFrom, String dies) {
        bench.fit(
                bench.wheel(place),
                SimulatedSensor.destined(
                        bench.nextOrdinal(),
                        bench.freshId(),
                        bench.kind.originalPart(),
                        Origin.ORIGINAL,
                        bench.firstUsedDay,
                        day(weakFrom),
                        day(dies)));
    }
}
