package sensorrounds.simulate;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.Side;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** What a technician of ordinary skill does at a visit. He sees what he can see, not the truth. */
final class Workshop {
    /** What he came for. */
    enum Job {
        LOOK,
        SET_CHANGED,
        TYRES_RENEWED,
        PUNCTURE,
        PARTS_BROUGHT
    }

    private static final int TRIES_THAT_LOOK_WEAK = 4;
    private static final int OLD_DAYS = 2900;

    private final Bench bench;
    private final Dice dice;

    Workshop(Bench bench) {
        this.bench = bench;
        this.dice = bench.dice;
    }

    /** @return a sensor found silent and left for want of a part, or null */
    SimulatedSensor visit(int day, VisitReason reason, Warning shown, Job job, Wheel... wheels) {
        VisitDraft v = bench.open(day, reason);
        v.warning = shown;
        arrival(v);
        boolean warm = dice.chance(reason == VisitReason.WARNING ? 0.5 : 0.2);
        bench.readAll(v, warm);
        Set<Wheel> tyresOff = tyresOff(job, wheels);
        SimulatedSensor left = null;
        for (WheelDraft w : v.wheels) {
            boolean off = tyresOff.contains(w.wheel);
            if (w.found != null && wantsReplacing(v, w, job, off)) {
                replace(v, w);
            } else if (w.silent() && !w.wheel.position.isSpare()) {
                left = w.found;
                v.notes = v.notes == null ? Remarks.noPart(dice, v) : v.notes;
            }
            if (off) {
                bareRim(v, w, job);
            }
        }
        boolean rotated = job == Job.LOOK
                && reason == VisitReason.SERVICE
                && bench.kind.vehicleClass().equals("car")
                && dice.chance(0.05);
        aftercare(v);
        bench.close(v);
        if (rotated) {
            Wheel.swap(bench.wheel("1L"), bench.wheel("2L"));
            Wheel.swap(bench.wheel("1R"), bench.wheel("2R"));
        }
        return left;
    }

    private void arrival(VisitDraft v) {
        if (v.warning == Warning.NONE) {
            if (dice.chance(0.03)) {
                v.warning = null;
            }
            return;
        }
        if (dice.chance(0.6)) {
            v.warningSince = LocalDate.ofEpochDay(v.day - 1 - (int) Math.min(60, dice.exponential(9)));
        }
        if (dice.chance(0.2)) {
            v.minutesToWarning = v.warning == Warning.LOW_PRESSURE ? dice.between(1, 8) : (double) dice.between(8, 25);
            v.minutesToWarning = Math.rint(v.minutesToWarning);
        }
    }

    private Set<Wheel> tyresOff(Job job, Wheel... wheels) {
        return switch (job) {
            case PUNCTURE -> Set.of(wheels);
            case TYRES_RENEWED -> {
                int axle = dice.between(1, bench.kind.axles().axles().size());
                boolean all = dice.chance(0.3);
                yield Set.copyOf(bench.mounted().stream()
                        .filter(w -> !w.position.isSpare() && (all || w.position.axle() == axle))
                        .toList());
            }
            default -> Set.of();
        };
    }

    private boolean wantsReplacing(VisitDraft v, WheelDraft w, Job job, boolean off) {
        double luck = dice.uniform();
        if (w.wheel.position.isSpare()) {
            return w.silent() && luck < 0.15;
        }
        if (w.found.brokenStemBy(v.day)) {
            return luck < 0.97;
        }
        if (w.silent()) {
            boolean pressing =
                    off || job == Job.PARTS_BROUGHT || w.wheel.silentLastTime() || v.reason == VisitReason.WARNING;
            return luck < (pressing ? 0.9 : 0.55);
        }
        boolean low = w.battery != null && isLow(w.battery);
        if (low
                || w.attempts != null
                        && w.attempts >= TRIES_THAT_LOOK_WEAK
                        && v.crew.reader().ease() > 0.7) {
            return luck < (off ? 0.6 : low ? 0.16 : 0.02);
        }
        return off && v.day - w.found.bornDay > OLD_DAYS && luck < 0.2;
    }

    private static boolean isLow(BatteryReport b) {
        return b.isLow(new BatteryReport.LowLimits(20, 2.5, 6));
    }

    private void replace(VisitDraft v, WheelDraft w) {
        if (w.silent() && dice.chance(0.02)) {
            bench.takeOut(v, w, WorkReason.NO_ANSWER);
            w.wheel.fit(null);
            w.work = WheelWork.PLAIN_VALVE_FITTED;
            w.reason = WorkReason.NO_ANSWER;
            return;
        }
        boolean clone = !w.found.brokenStemBy(v.day) && w.sensorId != null && dice.chance(0.12);
        bench.replace(v, w, reasonGiven(v, w), clone);
    }

    private WorkReason reasonGiven(VisitDraft v, WheelDraft w) {
        double luck = dice.uniform();
        if (w.found.brokenStemBy(v.day)) {
            return w.found.cause() == SimulatedSensor.Cause.CORROSION
                    ? luck < 0.9 ? WorkReason.CORROSION : WorkReason.STEM_BROKEN
                    : luck < 0.95 ? WorkReason.STEM_BROKEN : WorkReason.UNKNOWN;
        }
        if (w.silent()) {
            boolean wet = w.found.failedBy(v.day) && w.found.cause() == SimulatedSensor.Cause.INGRESS;
            if (wet && luck < 0.6) {
                return WorkReason.INGRESS;
            }
            return luck < 0.55 ? WorkReason.BATTERY_EXHAUSTED : luck < 0.95 ? WorkReason.NO_ANSWER : WorkReason.UNKNOWN;
        }
        return WorkReason.PREVENTIVE;
    }

    private void bareRim(VisitDraft v, WheelDraft w, Job job) {
        if (job == Job.TYRES_RENEWED) {
            w.wheel.newTyre(v.day - dice.between(25, 210));
            w.tyreDateWritten = dice.chance(0.8);
        }
        if (w.touched()) {
            return;
        }
        if (w.found != null && dice.chance(bench.settings.hazards().tyreChangeDamage())) {
            w.found.damage(v.day);
            bench.replace(v, w, WorkReason.TYRE_CHANGE_DAMAGE, false);
            v.notes = Remarks.damage(dice, v);
        } else {
            w.work = dice.chance(0.8) ? WheelWork.KIT_RENEWED : WheelWork.TYRE_WORK;
        }
    }

    private void aftercare(VisitDraft v) {
        boolean replaced = v.replaced().findAny().isPresent();
        boolean wrongAir = v.wheels.stream()
                .anyMatch(w -> Math.abs(w.wheel.kpa(v.day, v.ambient) / w.wheel.placardKpa - 1) > 0.06);
        if (wrongAir || replaced || dice.chance(0.3)) {
            bench.inflateAll(v);
            v.pressuresStored = dice.chance(0.4) ? Boolean.TRUE : null;
        }
        if (bench.kind.system() == MonitoringSystem.INDIRECT) {
            return;
        }
        boolean fault = v.warning == Warning.SYSTEM_FAULT;
        if (fault && dice.chance(0.6)) {
            codes(v);
        }
        boolean newIds = v.replaced().anyMatch(w -> w.cloned == null);
        boolean setChange = v.reason == VisitReason.SEASONAL_CHANGE;
        if (!bench.kind.isTrailer() && (newIds || fault && dice.chance(0.6) || setChange && dice.chance(0.5))) {
            relearn(v);
        }
        if (fault) {
            v.codesCleared = dice.chance(0.8) ? Boolean.TRUE : null;
        }
        if ((replaced || v.warning == Warning.SYSTEM_FAULT || v.warning == Warning.MESSAGE) && dice.chance(0.62)) {
            drive(v, dice.chance(0.22) ? dice.between(2, 9) : dice.between(12, 35));
        }
        if (v.notes == null && dice.chance(0.08)) {
            v.notes = Remarks.ordinary(dice, v);
        }
    }

    /** Codes name the wheel of a silent sensor half of the time, and nothing otherwise. */
    private void codes(VisitDraft v) {
        boolean named = dice.chance(0.5);
        List<WheelDraft> silent = v.wheels.stream()
                .filter(w -> w.silent() && !w.wheel.position.isSpare())
                .toList();
        FaultCode.State state = dice.chance(0.7) ? FaultCode.State.CURRENT : FaultCode.State.STORED;
        if (silent.isEmpty() || !named) {
            v.codes.add(new FaultCode(bench.kind.partlessCode(), state, null));
            return;
        }
        for (WheelDraft w : silent) {
            int place = 2 * w.wheel.position.axle() - (w.wheel.position.side() == Side.LEFT ? 1 : 0);
            v.codes.add(new FaultCode(bench.kind.code(place), state, w.wheel.position));
        }
    }

    private void relearn(VisitDraft v) {
        v.relearn = switch (bench.kind.modelGroup().charAt(0)) {
            case 'C' -> dice.chance(0.7) ? RelearnKind.STATIONARY : RelearnKind.DRIVE;
            case 'N' -> dice.chance(0.6) ? RelearnKind.DIAGNOSTIC_PORT : RelearnKind.STATIONARY;
            default -> RelearnKind.DIAGNOSTIC_PORT;
        };
        double luck = dice.uniform();
        v.relearnResult =
                luck < 0.85 ? RelearnResult.DONE : luck < 0.97 ? RelearnResult.ATTEMPTED : RelearnResult.FAILED;
    }

    private void drive(VisitDraft v, int minutes) {
        double km = Math.rint(minutes * dice.between(0.5, 0.9));
        v.testDrive = new TestDrive((double) minutes, km, dice.chance(0.85) ? Boolean.FALSE : null);
    }
}
