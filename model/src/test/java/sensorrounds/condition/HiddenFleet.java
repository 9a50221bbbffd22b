package sensorrounds.condition;

import static java.time.Month.DECEMBER;
import static java.time.Month.FEBRUARY;
import static java.time.Month.JANUARY;
import static java.time.Month.MARCH;
import static java.time.Month.NOVEMBER;
import static java.time.Month.OCTOBER;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.SplittableRandom;
import sensorrounds.condition.RoadVisits.Sign;

/**
 * Sensors simulated one by one from known parameters, by drawing times of weakening and death: written apart from the
 * likelihood. Two thirds come under observation at an age between 0 and 7 years if they are alive then; the others are
 * seen from their fitting on. Visits come about every half year. Some sensors that stayed silent are taken out and
 * looked into, and then it is known whether they are dead. Three in four are on vehicles that show a warning: a death then
 * calls for a visit after a while, unless somebody found it before, and so now and then does something else.
 */
final class HiddenFleet {
    static final ConditionSettings CONDITION = ConditionSettings.defaults();
    static final HiddenSettings SETTINGS = HiddenSettings.defaults();
    static final HiddenSettings NO_PRIORS = SETTINGS.with(SETTINGS.priors().off());
    static final HiddenParameters TRUTH = HiddenParameters.of(
                    new double[] {0.04, 0.12, 0.3, 0.5},
                    new double[] {0.4, 0.6, 0.8, 1.2},
                    0.01,
                    0.12,
                    0.02,
                    0.10,
                    0.55,
                    0.75)
            .withMissed(0.02)
            .withColdWakeFactor(0.5)
            .withWakeSlope(-0.3)
            .with(new HiddenSettings.Warning(0.03, 0.9, 0.7, 30));

    static final double CALLS_PER_DAY = 1e-3;
    /** Six readers, warm and cold, ordinary and inner wheels; the last of them poor. */
    static final WakeChances WAKE = new WakeChances(
            new double[] {
                .9, .8, .8, .7, .85, .75, .7, .6, .92, .85, .8, .75, .8, .7, .6, .5, .88, .8, .7, .6, .45, .35, .3, .2
            },
            CONDITION);

    static final HiddenModel MODEL = model(SETTINGS);
    static final ColdSeason WINTER = ColdSeason.of(EnumSet.of(OCTOBER, NOVEMBER, DECEMBER, JANUARY, FEBRUARY, MARCH));

    static HiddenModel model(HiddenSettings settings) {
        return new HiddenModel(
                settings,
                WAKE,
                HiddenCohorts.one(settings),
                WarningSigns.everywhere(CALLS_PER_DAY),
                WeakStages.ONE,
                ColdSeason.none());
    }

    /**
     * What the sensors are drawn from.
     *
     * @param truth with the factor of the cold season where there is one
     * @param weak how long a sensor is weak
     */
    record World(HiddenParameters truth, Weak weak, ColdSeason season) {
        static final World PLAIN = new World(TRUTH, Weak.EXPONENTIAL, ColdSeason.none());

        World with(Weak newWeak) {
            return new World(truth, newWeak, season);
        }

        /** Rates in the cold for one in the rest of the year, the mean of both as before. */
        World withWinter(double factor) {
            return new World(truth.withColdRateFactor(factor), weak, WINTER);
        }
    }

    /** Law of the time a sensor is weak, its mean the same: 1 / rate of dying. */
    enum Weak {
        EXPONENTIAL,
        TWO_STAGES,
        /** Of shape 2; no member of the models, and its rates stand still at those of the age of weakening. */
        WEIBULL_2
    }

    /** A simulated sensor: what was seen, and what is true. */
    record Sensor(HiddenReadings readings, int lastVisitDays, double weakAt, double deadAt) {
        int conditionAt(double age) {
            return age >= deadAt ? 2 : age >= weakAt ? 1 : 0;
        }
    }

    private HiddenFleet() {}

    static List<Sensor> sensors(int n, int visits, HiddenParameters truth, long seed) {
        return sensors(n, visits, new World(truth, Weak.EXPONENTIAL, ColdSeason.none()), seed);
    }

    static List<Sensor> sensors(int n, int visits, World world, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Sensor> sensors = new ArrayList<>(n);
        while (sensors.size() < n) {
            int entry = random.nextInt(3) == 0 ? 0 : random.nextInt((int) (7 * 365.25));
            int fitted = world.season().turns() ? 15_000 + random.nextInt(3653) : 0;
            double turn = event(0, fitted, 1, world, random, true);
            boolean sudden = random.nextDouble() < suddenShare(turn, world.truth());
            double weakAt = sudden ? Double.POSITIVE_INFINITY : turn;
            double deadAt = sudden ? turn : death(turn, fitted, world, random);
            if (deadAt > entry) {
                sensors.add(observed(entry, fitted, weakAt, deadAt, visits, world.truth(), random));
            }
        }
        return sensors;
    }

    static List<HiddenReadings> readings(List<Sensor> sensors) {
        return sensors.stream().map(Sensor::readings).toList();
    }

    private static Sensor observed(
            int entry,
            int fitted,
            double weakAt,
            double deadAt,
            int regular,
            HiddenParameters truth,
            SplittableRandom random) {
        HiddenReadings.Builder builder = new HiddenReadings.Builder(entry).fittedOn(fitted);
        int visits = regular;
        boolean monitored = random.nextInt(4) > 0;
        double reported = monitored && random.nextDouble() < truth.reportedShare()
                ? deadAt + exponential(1 / truth.daysUntilReported(), random)
                : Double.POSITIVE_INFINITY;
        int age = entry;
        boolean called = false;
        int silences = 0;
        for (int v = 0; v < visits; ) {
            int condition = age >= deadAt ? 2 : age >= weakAt ? 1 : 0;
            Sign sign = !monitored || random.nextInt(10) == 0
                    ? Sign.NONE
                    : random.nextDouble() < truth.warningOn(condition == 2) ? Sign.LIT : Sign.DARK;
            int context = HiddenReadings.context(monitored, called ? Sign.CALLED : sign);
            boolean tried = called || random.nextInt(12) > 0;
            boolean answered = tried && read(builder, age, context, condition, truth, random);
            if (!tried) {
                builder.add(age, context, HiddenReadings.NOT_READ);
            }
            if (tried && condition == 2) {
                reported = Double.POSITIVE_INFINITY;
            }
            silences = !tried ? silences : answered ? 0 : silences + 1;
            if (silences >= 2 && random.nextInt(3) > 0) {
                if (age >= deadAt) {
                    return new Sensor(builder.dead(age).build(), age, weakAt, deadAt);
                }
                return new Sensor(builder.build().and(HiddenReadings.KNOWN_ALIVE, age), age, weakAt, deadAt);
            }
            v += called ? 0 : 1;
            int planned = age + (v < visits ? 90 + random.nextInt(180) : 45);
            double chance = monitored ? age + exponential(CALLS_PER_DAY, random) : Double.POSITIVE_INFINITY;
            int call = (int) Math.min(1e6, Math.ceil(Math.min(chance, Math.max(reported, age))));
            called = call <= planned;
            age = Math.min(planned, call);
            if (v == visits && !called) {
                builder.add(age, HiddenReadings.context(monitored, Sign.NONE), HiddenReadings.NOT_READ);
            }
            visits += v == visits && called ? 1 : 0;
        }
        return new Sensor(builder.build(), age - 45, weakAt, deadAt);
    }

    private static double exponential(double rate, SplittableRandom random) {
        return -Math.log(1 - random.nextDouble()) / rate;
    }

    /** @return whether it answered */
    private static boolean read(
            HiddenReadings.Builder builder,
            int age,
            int context,
            int condition,
            HiddenParameters truth,
            SplittableRandom random) {
        boolean cold = random.nextInt(4) == 0;
        boolean inner = random.nextInt(5) == 0;
        int cell = 4 * random.nextInt(6) + (inner ? 2 : 0) + (cold ? 1 : 0);
        int limit = 2 + random.nextInt(4);
        double chance = condition == 2 || random.nextDouble() < truth.missedChance() ? 0 : WAKE.chance(cell);
        if (condition == 1 && chance > 0) {
            double odds = chance / (1 - chance) * truth.wakeOddsFactor() * (cold ? truth.coldWakeFactor() : 1);
            odds *= Math.pow(chance / (1 - chance) / (0.85 / 0.15), truth.at(truth.wakeSlope()));
            chance = odds / (1 + odds);
        }
        int tries = 0;
        boolean answered = false;
        while (!answered && tries < limit) {
            tries++;
            answered = random.nextDouble() < chance;
        }
        int battery = answered && random.nextInt(5) > 0
                ? HiddenReadings.battery(random.nextDouble() < truth.low(condition == 1, cold), cold)
                : 0;
        builder.add(age, context, HiddenReadings.code(cell, tries, answered, battery));
        return answered;
    }

    private static double death(double weakAt, int fitted, World world, SplittableRandom random) {
        return switch (world.weak()) {
            case EXPONENTIAL -> event(weakAt, fitted, 1, world, random, false);
            case TWO_STAGES -> event(event(weakAt, fitted, 2, world, random, false), fitted, 2, world, random, false);
            case WEIBULL_2 -> {
                double mean = 365.25 / world.truth().dyingPerYear(band(weakAt));
                // Gamma(1.5) = sqrt(pi) / 2.
                yield weakAt + mean / (Math.sqrt(Math.PI) / 2) * Math.sqrt(-Math.log(1 - random.nextDouble()));
            }
        };
    }

    /** Age at which an exponential clock runs out under piecewise constant rates per year. */
    private static double event(
            double from, int fitted, int times, World world, SplittableRandom random, boolean good) {
        HiddenParameters truth = world.truth();
        double cold = truth.coldRateFactor();
        double left = -Math.log(1 - random.nextDouble());
        double age = from;
        while (true) {
            int b = band(age);
            int turns = world.season().turnsUpTo(fitted + (int) Math.floor(age));
            double end = Math.min(
                    b < SETTINGS.bandLimitDays().size()
                            ? SETTINGS.bandLimitDays().get(b)
                            : Double.POSITIVE_INFINITY,
                    world.season().turns() ? world.season().turn(turns) - fitted : Double.POSITIVE_INFINITY);
            double speed = ColdSeason.season(turns) == 1 ? 2 * cold / (1 + cold) : 2 / (1 + cold);
            double rate = times
                    * speed
                    * (good ? truth.weakeningPerYear(b) + truth.suddenPerYear() : truth.dyingPerYear(b))
                    / 365.25;
            if (left < rate * (end - age)) {
                return age + left / rate;
            }
            left -= rate * (end - age);
            age = end;
        }
    }

    private static int band(double age) {
        int band = 0;
        while (band < SETTINGS.bandLimitDays().size()
                && age >= SETTINGS.bandLimitDays().get(band)) {
            band++;
        }
        return band;
    }

    private static double suddenShare(double age, HiddenParameters truth) {
        return truth.suddenPerYear() / (truth.suddenPerYear() + truth.weakeningPerYear(band(age)));
    }
}
