package sensorrounds.replacement;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import sensorrounds.history.OriginBasis;
import sensorrounds.numeric.Quadrature;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SensorInService;
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
    private static final int SETTLING_YEARS = 20;
    private static final double NOTICE_DAYS = 30;
    /** Standard deviation of the log of the factor that the sensors of a vehicle share. */
    private static final double VEHICLE_SPREAD = 0.12;

    /** Decides each month for one vehicle. */
    interface Policy {
        void review(Van van, int day);

        /** Decides each month for all. */
        default void review(List<Van> vans, int day) {
            vans.forEach(van -> review(van, day));
        }
    }

    /** What a policy cost. */
    static final class Bill {
        double money;
        /** Of it, by vehicle. */
        final double[] byVan;

        int pieces;
        /** Of the pieces, those fitted in place of a sensor that worked. */
        int early;

        int breakdowns;
        int ownStops;
        int readings;

        Bill(int vans) {
            byVan = new double[vans];
        }
    }

    /** One vehicle. */
    final class Van {
        final int[] fitted = new int[4];
        final int[] dies = new int[4];
        final int[] heard = new int[4];
        final boolean[] atStop = new boolean[4];
        int nextStop;
        private final int number;
        private final WeibullLife truth;
        private final WeibullLife law;
        private final double factor;
        private final int[] fits = new int[4];
        /** Day on which a call-out would come for a sensor. */
        private final int[] calls = new int[4];

        private final SplittableRandom stops;

        Van(int number) {
            this.number = number;
            truth = truths.get(number % truths.size());
            law = acrossVehicles(truth);
            stops = new SplittableRandom(seed + number);
            factor = Math.exp(VEHICLE_SPREAD * new Random(stops.nextLong()).nextGaussian());
            int age = stops.nextInt(9 * 365);
            for (int i = 0; i < 4; i++) {
                do {
                    live(i, -age);
                } while (dies[i] <= 0);
            }
            nextStop = stops.nextInt(gapDays);
        }

        /** The next life at a place, and how soon its end would be noticed: the same for every policy. */
        private void live(int i, int from) {
            SplittableRandom chance =
                    new SplittableRandom(new SplittableRandom(((seed + number) * 4 + i) * 1000 + fits[i]++).nextLong());
            fitted[i] = from;
            dies[i] = from
                    + (int) Math.ceil(truth.scaleDays()
                            * factor
                            * Math.pow(-Math.log(1 - chance.nextDouble()), 1 / truth.shape()));
            calls[i] = dies[i] + (int) (-NOTICE_DAYS * Math.log(1 - chance.nextDouble()));
        }

        boolean dead(int i, int day) {
            return dies[i] <= day;
        }

        void fit(int i, int day) {
            bill.pieces++;
            bill.early += dead(i, day) ? 0 : 1;
            live(i, day);
            heard[i] = day;
            atStop[i] = false;
            pay(costs.piece(costs.defaultSensorPrice()));
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

        private void pay(double amount) {
            bill.money += amount;
            bill.byVan[number] += amount;
        }

        void ownStop(int day) {
            bill.ownStops++;
            pay(costs.plannedVisit());
            attend(day);
        }

        private void live(int day) {
            if (day == nextStop) {
                for (int i = 0; i < 4; i++) {
                    if (atStop[i] && !dead(i, day)) {
                        fit(i, day);
                    }
                }
                attend(day);
                nextStop = day + gapDays * 2 / 3 + stops.nextInt(gapDays * 2 / 3 + 1);
            }
            for (int i = 0; i < 4; i++) {
                if (calls[i] == day) {
                    bill.breakdowns++;
                    pay(costs.breakdown());
                    attend(day);
                }
            }
        }

        SensorOutlook outlook(int i, int day) {
            double age = heard[i] - fitted[i];
            int since = day - heard[i];
            double dead = deadUnnoticed(law, age, since);
            return new SensorOutlook(
                    new SensorInService(
                            "V1",
                            null,
                            "van",
                            WheelPosition.parse(List.of("1L", "1R", "2L", "2R").get(i))
                                    .orElseThrow(),
                            null,
                            "A" + i,
                            "V1/A" + i + "/1",
                            null,
                            day - fitted[i],
                            OriginBasis.RECORDED_FITTING,
                            LastReport.SOUND,
                            START.plusDays(heard[i])),
                    new SensorOutlook.Chances(
                            1,
                            dead,
                            failed(law, dead, age, since, 30),
                            failed(law, dead, age, since, 90),
                            failed(law, dead, age, since, 180),
                            failed(law, dead, age, since, 365),
                            failed(law, dead, age, since, 90),
                            0,
                            1),
                    SensorOutlook.Grounds.ofLaw("van", "known"));
        }
    }

    private final List<WeibullLife> truths;
    private final Costs costs;
    private final int settling;
    private final int days;
    private final int gapDays;
    private final long seed;
    private Bill bill;

    /**
     * @param laws true laws of life, of one vehicle after the other in turn
     * @param years years counted, after twenty in which the ages settle
     * @param gapDays mean days between the stops of a vehicle, which vary by a third either way
     */
    PolicyWorld(List<WeibullLife> laws, Costs costs, int years, int gapDays, long seed) {
        this.truths = List.copyOf(laws);
        this.costs = costs;
        this.settling = SETTLING_YEARS * 365;
        this.days = settling + years * 365;
        this.gapDays = gapDays;
        this.seed = seed;
    }

    /** The law of the fleet: Weibull with mean and variance of log life as they are over all vehicles. */
    private static WeibullLife acrossVehicles(WeibullLife ofOne) {
        double euler = 0.5772156649015329;
        double shape = 1
                / Math.sqrt(
                        1 / (ofOne.shape() * ofOne.shape()) + 6 * VEHICLE_SPREAD * VEHICLE_SPREAD / Math.PI / Math.PI);
        return new WeibullLife(shape, ofOne.scaleDays() * Math.exp(euler / shape - euler / ofOne.shape()), 0, 0, 0);
    }

    Bill play(int count, Policy policy) {
        bill = new Bill(count);
        List<Van> vans = IntStream.range(0, count).mapToObj(Van::new).toList();
        for (int day = 0; day < days; day++) {
            if (day == settling) {
                bill = new Bill(count);
            }
            if (day % REVIEW_DAYS == 0) {
                policy.review(vans, day);
            }
            for (Van van : vans) {
                van.live(day);
            }
        }
        return bill;
    }

    /** Chance of having died since the last answer, given that nobody was called out so far. */
    private static double deadUnnoticed(WeibullLife law, double age, int since) {
        if (since == 0) {
            return 0;
        }
        double alive = law.survival(age + since);
        double unnoticed = Quadrature.panel(
                s -> law.hazard(age + s) * law.survival(age + s) * Math.exp(-(since - s) / NOTICE_DAYS), 0, since);
        return unnoticed / (unnoticed + alive);
    }

    private static double failed(WeibullLife law, double dead, double age, int since, int days) {
        return 1 - (1 - dead) * (1 - law.failureWithin(age + since, days, 1));
    }

    /** The replacement list, done as it says. */
    Policy list(ReplacementSettings settings) {
        ReplacementPlanner planner = new ReplacementPlanner(costs, settings, 90);
        return (van, day) -> {
            List<VehicleCase.Sensor> sensors = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                sensors.add(new VehicleCase.Sensor(
                        van.outlook(i, day),
                        van.law,
                        costs.defaultSensorPrice(),
                        Mounting.ON_THE_ROAD,
                        VehicleCase.Place.ORDINARY));
            }
            LocalDate today = START.plusDays(day);
            List<RankedReplacement> lines = planner.plan(new VehicleCase(
                    sensors,
                    today,
                    new VehicleCase.Stops(START.plusDays(van.nextStop), null, gapDays),
                    VehicleCase.Sight.KNOWN,
                    List.of()));
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
            van.pay(costs.reading());
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

    /** The oldest of the fleet at their next stops, as many a month as are paid for. */
    static Policy oldestFirst(double month) {
        return first(month, (van, i, day) -> day - van.fitted[i]);
    }

    /** Those of the highest chance of not working a year on, at their next stops, as many a month as are paid for. */
    static Policy highestChance(double month) {
        return first(month, (van, i, day) -> van.outlook(i, day).chances().p365());
    }

    /** What a rule goes by. */
    private interface Key {
        double of(Van van, int i, int day);
    }

    /** @param month sensors to be marked each month */
    private static Policy first(double month, Key key) {
        return new Policy() {
            private double allowed;

            @Override
            public void review(Van van, int day) {
                throw new UnsupportedOperationException("decides for the fleet as a whole");
            }

            @Override
            public void review(List<Van> vans, int day) {
                allowed += month;
                record Place(Van van, int i, double key) {}
                List<Place> marked = vans.stream()
                        .flatMap(van -> IntStream.range(0, 4)
                                .filter(i -> !van.atStop[i])
                                .mapToObj(i -> new Place(van, i, key.of(van, i, day))))
                        .sorted(Comparator.comparingDouble(Place::key).reversed())
                        .limit((long) allowed)
                        .toList();
                marked.forEach(p -> p.van.atStop[p.i] = true);
                allowed -= marked.size();
            }
        };
    }
}
