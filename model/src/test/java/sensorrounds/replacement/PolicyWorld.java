package sensorrounds.replacement;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sensorrounds.history.OriginBasis;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.survival.WeibullLife;
import sensorrounds.visit.WheelPosition;

/**
 * A fleet whose true lives are known, played day by day under a policy. Every vehicle has four sensors and a stop of its
 * usual service about every half-year, at which the crew reads all sensors and replaces the dead. A dead sensor brings a
 * call-out some weeks after its death unless a stop finds it first; whatever is dead is replaced then. Lives and delays are
 * drawn beforehand, the same for every policy. Policies know the law of the fleet, not the vehicle's own factor, and of a
 * sensor only what was read.
 */
final class PolicyWorld {
    static final LocalDate START = LocalDate.of(2026, 1, 1);
    static final int REVIEW_DAYS = 30;

    /** Decides each month for one vehicle; lines in the order of its sensors. */
    interface Policy {
        void review(Van van, int day);
    }

    /** What a policy cost. */
    static final class Bill {
        double money;
        int pieces;
        int breakdowns;
        int ownStops;
        int readings;
    }

    /** One vehicle. */
    final class Van {
        final int[] fitted = new int[4];
        final int[] dies = new int[4];
        final int[] heard = new int[4];
        final boolean[] atStop = new boolean[4];
        int nextStop;
        private final double factor;
        private final Random chance;

        Van(long seed) {
            chance = new Random(seed);
            factor = Math.exp(0.12 * chance.nextGaussian());
            int age = chance.nextInt(9 * 365);
            for (int i = 0; i < 4; i++) {
                int life = life();
                for (int tries = 0; life <= age && tries < 50; tries++) {
                    life = life();
                }
                fitted[i] = life > age ? -age : 0;
                dies[i] = fitted[i] + life;
            }
            nextStop = chance.nextInt(180);
        }

        private int life() {
            return (int)
                    Math.ceil(law.scaleDays() * factor * Math.pow(-Math.log(1 - chance.nextDouble()), 1 / law.shape()));
        }

        boolean dead(int i, int day) {
            return dies[i] <= day;
        }

        void fit(int i, int day) {
            fitted[i] = day;
            heard[i] = day;
            dies[i] = day + life();
            atStop[i] = false;
            bill.pieces++;
            bill.money += costs.piece(costs.defaultSensorPrice());
        }

        /** Reads all sensors and replaces the dead. */
        void attend(int day) {
            for (int i = 0; i < 4; i++) {
                if (dead(i, day)) {
                    fit(i, day);
                }
                heard[i] = day;
            }
        }

        void ownStop(int day) {
            bill.ownStops++;
            bill.money += costs.plannedVisit();
            attend(day);
        }

        private void play(Policy policy) {
            for (int day = 0; day < days; day++) {
                if (day % REVIEW_DAYS == 0) {
                    policy.review(this, day);
                }
                if (day == nextStop) {
                    for (int i = 0; i < 4; i++) {
                        if (atStop[i] && !dead(i, day)) {
                            fit(i, day);
                        }
                    }
                    attend(day);
                    nextStop = day + 120 + chance.nextInt(121);
                }
                for (int i = 0; i < 4; i++) {
                    if (dead(i, day) && delay.nextDouble() < 1 / 30.0) {
                        bill.breakdowns++;
                        bill.money += costs.breakdown();
                        attend(day);
                    }
                }
            }
        }

        SensorOutlook outlook(int i, int day) {
            double age = heard[i] - fitted[i];
            int since = day - heard[i];
            return new SensorOutlook(
                    "V1",
                    null,
                    "van",
                    WheelPosition.parse(List.of("1L", "1R", "2L", "2R").get(i)).orElseThrow(),
                    null,
                    "A" + i,
                    "V1/A" + i + "/1",
                    null,
                    day - fitted[i],
                    OriginBasis.RECORDED_FITTING,
                    LastReport.SOUND,
                    START.plusDays(heard[i]),
                    1,
                    law.failureWithin(age, since, 1),
                    law.failureWithin(age, since + 30, 1),
                    law.failureWithin(age, since + 90, 1),
                    law.failureWithin(age, since + 180, 1),
                    law.failureWithin(age, since + 365, 1),
                    law.failureWithin(age, since + 90, 1),
                    0,
                    1,
                    "van",
                    "known");
        }
    }

    private final WeibullLife law;
    private final Costs costs;
    private final int days;
    private final Random delay = new Random(5);
    private Bill bill = new Bill();

    PolicyWorld(WeibullLife law, Costs costs, int years) {
        this.law = law;
        this.costs = costs;
        this.days = years * 365;
    }

    Bill play(int vans, Policy policy) {
        bill = new Bill();
        for (int v = 0; v < vans; v++) {
            delay.setSeed(v);
            new Van(20_261_125L + v).play(policy);
        }
        return bill;
    }

    /** The replacement list, done as it says. */
    Policy list(ReplacementSettings settings) {
        ReplacementPlanner planner = new ReplacementPlanner(costs, settings, 90);
        return (van, day) -> {
            List<VehicleCase.Sensor> sensors = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                sensors.add(new VehicleCase.Sensor(
                        van.outlook(i, day),
                        law,
                        costs.defaultSensorPrice(),
                        Mounting.ON_THE_ROAD,
                        VehicleCase.Place.ORDINARY));
            }
            LocalDate today = START.plusDays(day);
            List<RankedReplacement> lines = planner.plan(
                    new VehicleCase(sensors, today, START.plusDays(van.nextStop), VehicleCase.Sight.KNOWN, List.of()));
            follow(van, day, lines.stream().map(RankedReplacement::advice).toList());
        };
    }

    private void follow(Van van, int day, List<Advice> advices) {
        for (int i = 0; i < 4; i++) {
            van.atStop[i] = advices.get(i) == Advice.AT_NEXT_STOP;
        }
        if (advices.contains(Advice.REPLACE_NOW)) {
            boolean[] living = new boolean[4];
            for (int i = 0; i < 4; i++) {
                living[i] = !van.dead(i, day);
            }
            van.ownStop(day);
            for (int i = 0; i < 4; i++) {
                if (living[i] && (advices.get(i) == Advice.REPLACE_NOW || van.atStop[i])) {
                    van.fit(i, day);
                }
            }
        } else if (advices.contains(Advice.READ_FIRST)) {
            bill.readings++;
            bill.money += costs.reading();
            boolean found = false;
            for (int i = 0; i < 4; i++) {
                found |= van.dead(i, day);
                van.heard[i] = van.dead(i, day) ? van.heard[i] : day;
            }
            if (found) {
                van.ownStop(day);
            }
        }
    }

    /** Every sensor of an age, at the next stop of the vehicle. */
    static Policy atAge(int ageDays) {
        return (van, day) -> {
            for (int i = 0; i < 4; i++) {
                van.atStop[i] = van.nextStop - van.fitted[i] >= ageDays;
            }
        };
    }

    /** Brought in for every sensor of an age. */
    static Policy broughtInAtAge(int ageDays) {
        return (van, day) -> {
            boolean any = false;
            for (int i = 0; i < 4; i++) {
                any |= day - van.fitted[i] >= ageDays;
            }
            if (any) {
                boolean[] due = new boolean[4];
                for (int i = 0; i < 4; i++) {
                    due[i] = day - van.fitted[i] >= ageDays && !van.dead(i, day);
                }
                van.ownStop(day);
                for (int i = 0; i < 4; i++) {
                    if (due[i]) {
                        van.fit(i, day);
                    }
                }
            }
        };
    }

    static Policy onlyOnFailure() {
        return (van, day) -> {};
    }
}
