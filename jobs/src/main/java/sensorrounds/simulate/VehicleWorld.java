package sensorrounds.simulate;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.PriorityQueue;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.simulate.SimulatedSensor.Removal;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;

/**
 * The ordinary life of one vehicle under observation: things happen on days, and some of them bring a technician. A
 * calendar of coming events is worked off in order of days.
 */
final class VehicleWorld {
    private enum Kind {
        ROUTINE,
        CHANGE_OF_SET,
        TYRE_WORK,
        PUNCTURE,
        AIR_CHECK,
        SENSOR_FAILS,
        SENSOR_WEAK,
        WARNING_VISIT,
        FOLLOW_UP
    }

    private record Event(int day, int order, Kind kind, SimulatedSensor sensor) implements Comparable<Event> {
        @Override
        public int compareTo(Event o) {
            return day != o.day ? Integer.compare(day, o.day) : Integer.compare(order, o.order);
        }
    }

    /** Share of the placard pressure below which the warning comes on: 20 % loss (UN R141). */
    private static final double WARNING_SHARE = 0.8;

    private static final double MORNING = 7;
    /** A day before any other. */
    private static final int LONG_AGO = -1_000_000;

    private final Bench bench;
    private final Workshop workshop;
    private final Dice dice;
    private final PriorityQueue<Event> calendar = new PriorityQueue<>();
    private final int lastDay;
    private final Integer leftDay;
    private final double airDiligence;
    private int order;
    private int lastVisitDay = LONG_AGO;
    private int knownSensors;
    private int warningPlannedFor = LONG_AGO;

    VehicleWorld(Bench bench) {
        this.bench = bench;
        this.dice = bench.dice;
        this.workshop = new Workshop(bench);
        int end = bench.settings.endDay();
        boolean leaves = dice.chance(0.05);
        int day = bench.startDay() + (int) ((end - bench.startDay()) * dice.between(0.35, 0.98));
        leftDay = leaves && day < end ? day : null;
        lastDay = leftDay == null ? end : leftDay - 1;
        airDiligence = dice.between(0.35, 0.98);
    }

    SimulatedVehicle live() {
        int start = bench.startDay();
        bench.fitOriginals();
        bench.mount(bench.hasTwoSets() && isWinter(start) ? Bench.WINTER : Bench.SUMMER);
        boolean young = start - bench.firstUsedDay < 200;
        plan(start + (young ? dice.between(60, 220) : dice.between(0, 190)), Kind.ROUTINE);
        plan(start + dice.between(0, 27), Kind.AIR_CHECK);
        plan(start + dice.between(120, 1300), Kind.TYRE_WORK);
        plan(start + (int) dice.exponential(3600), Kind.PUNCTURE);
        if (bench.hasTwoSets()) {
            plan(nextChange(start), Kind.CHANGE_OF_SET);
        }
        noteNewSensors(start);
        while (!calendar.isEmpty() && calendar.peek().day() <= lastDay) {
            happen(calendar.poll());
            noteNewSensors(lastVisitDay);
        }
        return bench.done(nextPlanned(), leftDay);
    }

    private Integer nextPlanned() {
        boolean booked = dice.chance(0.7);
        return leftDay != null || !booked
                ? null
                : calendar.stream()
                        .filter(e -> e.kind() == Kind.ROUTINE || e.kind() == Kind.CHANGE_OF_SET)
                        .map(e -> workday(e.day()))
                        .min(Integer::compare)
                        .orElse(null);
    }

    private void happen(Event e) {
        switch (e.kind()) {
            case ROUTINE -> routine(e.day());
            case CHANGE_OF_SET -> {
                int day = visitDay(e.day());
                bench.mount(isWinter(day) ? Bench.WINTER : Bench.SUMMER);
                visit(day, VisitReason.SEASONAL_CHANGE, Workshop.Job.SET_CHANGED);
                plan(nextChange(day + 60), Kind.CHANGE_OF_SET);
            }
            case TYRE_WORK -> {
                visit(visitDay(e.day()), VisitReason.TYRE_WORK, Workshop.Job.TYRES_RENEWED);
                plan(e.day() + dice.between(420, 1150), Kind.TYRE_WORK);
            }
            case PUNCTURE -> puncture(e.day());
            case AIR_CHECK -> airCheck(e.day());
            case SENSOR_FAILS -> sensorFails(e);
            case SENSOR_WEAK -> sensorWeak(e);
            case WARNING_VISIT -> {
                int day = visitDay(e.day());
                if (warning(day) != Warning.NONE) {
                    visit(day, VisitReason.WARNING, Workshop.Job.LOOK);
                }
            }
            case FOLLOW_UP -> {
                if (bench.isFitted(e.sensor())) {
                    visit(visitDay(e.day()), VisitReason.OTHER, Workshop.Job.PARTS_BROUGHT);
                }
            }
            default -> throw new IllegalStateException("no such event: " + e);
        }
    }

    private void routine(int day) {
        if (dice.chance(0.007)) {
            VisitDraft v = bench.open(visitDay(day), VisitReason.OTHER);
            if (v.day <= lastDay) {
                v.wheels.clear();
                v.warning = null;
                v.notes = Remarks.notThere(v);
                bench.close(v);
                lastVisitDay = v.day;
            }
            plan(day + dice.between(6, 20), Kind.ROUTINE);
            return;
        }
        // Whoever was here a few days ago for something else has done the round already.
        if (day - lastVisitDay > 12) {
            VisitReason reason = dice.chance(0.6) ? VisitReason.SERVICE : VisitReason.INSPECTION;
            visit(visitDay(day), reason, Workshop.Job.LOOK);
        }
        plan(day + dice.between(150, 275), Kind.ROUTINE);
    }

    private void puncture(int day) {
        var wheels = bench.mounted().stream().filter(w -> !w.position.isSpare()).toList();
        Wheel hurt = dice.pick(wheels);
        hurt.inflate(day, hurt.placardKpa * dice.between(0.35, 0.75), bench.celsius(day, 12));
        VisitReason reason = dice.chance(0.5) ? VisitReason.WARNING : VisitReason.TYRE_WORK;
        visit(visitDay(day + dice.between(0, 2)), reason, Workshop.Job.PUNCTURE, hurt);
        plan(day + 1 + (int) dice.exponential(3600), Kind.PUNCTURE);
    }

    /** Once a month the coldest morning tells; the depot tops up every third month or so. */
    private void airCheck(int day) {
        double celsius = bench.celsius(day, MORNING - 1);
        boolean low = lowOn(day, celsius);
        if (low && bench.kind.system() != MonitoringSystem.INDIRECT && dice.chance(0.55)) {
            planWarningVisit(day + dice.between(0, 2));
        } else if (low || dice.chance(airDiligence / 2)) {
            bench.mounted().forEach(w -> w.inflate(day, w.placardKpa * dice.between(0.97, 1.03), celsius));
        }
        plan(day + dice.between(26, 34), Kind.AIR_CHECK);
    }

    private void sensorFails(Event e) {
        SimulatedSensor s = e.sensor();
        if (!bench.isFitted(s)) {
            return;
        }
        if (s.brokenStemBy(e.day())) {
            bench.wheels.stream()
                    .filter(w -> w.sensor() == s)
                    .forEach(w ->
                            w.inflate(e.day(), w.placardKpa * dice.between(0.4, 0.76), bench.celsius(e.day(), 12)));
            if (bench.isMounted(s)) {
                planWarningVisit(e.day() + dice.between(0, 4));
            }
        } else if (bench.isMounted(s) && !bench.kind.isTrailer() && dice.chance(0.75)) {
            planWarningVisit(e.day() + 1 + (int) dice.exponential(24));
        }
    }

    /** A weak sensor brings a driver in now and then before it dies, more often in the cold. */
    private void sensorWeak(Event e) {
        SimulatedSensor s = e.sensor();
        if (!bench.isFitted(s) || s.failedBy(e.day())) {
            return;
        }
        boolean cold = bench.celsius(e.day(), MORNING) < 2;
        if (bench.isMounted(s) && !bench.kind.isTrailer() && dice.chance(cold ? 0.16 : 0.07)) {
            planWarningVisit(e.day() + dice.between(1, 12));
        }
        calendar.add(new Event(e.day() + 30, order++, Kind.SENSOR_WEAK, s));
    }

    private void visit(int day, VisitReason reason, Workshop.Job job, Wheel... wheels) {
        if (day > lastDay) {
            return;
        }
        Warning shown = warning(day);
        SimulatedSensor left = workshop.visit(day, reason, shown, job, wheels);
        lastVisitDay = day;
        if (left != null && dice.chance(0.8)) {
            calendar.add(new Event(day + dice.between(6, 40), order++, Kind.FOLLOW_UP, left));
        }
    }

    /** What the display shows when the technician comes. */
    private Warning warning(int day) {
        double luck = dice.uniform();
        if (bench.kind.system() == MonitoringSystem.INDIRECT || bench.kind.isTrailer()) {
            return Warning.NONE;
        }
        boolean dead = false;
        boolean weak = false;
        for (Wheel w : bench.mounted()) {
            SimulatedSensor s = w.sensor();
            if (s != null && !w.position.isSpare()) {
                dead |= !s.sendsOn(day - 1);
                weak |= s.weakOn(day);
            }
        }
        if (lowOn(day, bench.celsius(day, MORNING))) {
            return Warning.LOW_PRESSURE;
        }
        if (dead) {
            return luck < 0.93 ? Warning.SYSTEM_FAULT : luck < 0.97 ? Warning.MESSAGE : Warning.NONE;
        }
        return luck < (weak ? 0.3 : 0.006) ? Warning.SYSTEM_FAULT : Warning.NONE;
    }

    private boolean lowOn(int day, double celsius) {
        return bench.mounted().stream()
                .anyMatch(w -> !w.position.isSpare() && w.kpa(day, celsius) < WARNING_SHARE * w.placardKpa);
    }

    // --- calendar ---

    private void plan(int day, Kind kind) {
        calendar.add(new Event(day, order++, kind, null));
    }

    private void planWarningVisit(int day) {
        // One appointment is enough for two troubles of the same weeks.
        if (Math.abs(day - warningPlannedFor) > 10) {
            warningPlannedFor = day;
            plan(day, Kind.WARNING_VISIT);
        }
    }

    private void noteNewSensors(int day) {
        for (; knownSensors < bench.nextOrdinal(); knownSensors++) {
            SimulatedSensor s = bench.sensorAt(knownSensors);
            if (s.removal() == Removal.IN_SERVICE && s.failDay() >= day) {
                calendar.add(new Event(s.failDay(), order++, Kind.SENSOR_FAILS, s));
                calendar.add(new Event(Math.max(day, s.weakDay + 10), order++, Kind.SENSOR_WEAK, s));
            } else if (s.removal() == Removal.IN_SERVICE && day == bench.startDay()) {
                calendar.add(new Event(day + dice.between(1, 30), order++, Kind.SENSOR_FAILS, s));
            }
        }
    }

    /** The working day at or after this one, and never two visits on one day. */
    private int visitDay(int day) {
        return workday(Math.max(day, lastVisitDay + 1));
    }

    private static int workday(int day) {
        return LocalDate.ofEpochDay(day).getDayOfWeek() == DayOfWeek.SUNDAY ? day + 1 : day;
    }

    private boolean isWinter(int day) {
        int dayOfYear = LocalDate.ofEpochDay(day).getDayOfYear();
        return dayOfYear < 95 || dayOfYear > 280;
    }

    /** A day between 8 October and 24 November, or between 16 March and 24 April, whichever comes next. */
    private int nextChange(int after) {
        int year = LocalDate.ofEpochDay(after).getYear();
        int spring = (int) LocalDate.of(year, 3, 16).toEpochDay();
        int autumn = (int) LocalDate.of(year, 10, 8).toEpochDay();
        int nextSpring = (int) LocalDate.of(year + 1, 3, 16).toEpochDay();
        int from = after <= spring ? spring : after <= autumn ? autumn : nextSpring;
        return from + dice.between(0, from == autumn ? 47 : 39);
    }
}
