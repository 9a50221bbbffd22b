package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.IntStream;
import sensorrounds.fleet.AxleLayout;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.HistoryBuilder;
import sensorrounds.history.HistorySettings;
import sensorrounds.history.VehicleHistory;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.Source;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/**
 * Vehicles whose system warning keeps coming back, with the cause planted: one weak sensor, or nothing of the sensors. The
 * laws are invented, and are not those the engine declares: what it knows of them it must read from the logs.
 */
final class PlantedFleet {
    static final LocalDate AS_OF = LocalDate.of(2026, 9, 30);

    private static final int READERS = 8;
    private static final int GIVES_UP_AFTER = 6;

    /**
     * What the planted world is like.
     *
     * @param slowReader chance of the one slow reader, which one technician uses for one eighth of the vehicles; NaN for none
     * @param noSensor weight of a cause outside the sensors against one sensor of six years
     * @param showsSlow chance that a weak sensor wakes slowly; {@code slowOdds} is the factor on its odds
     * @param silentWhenWarned chance that it stays silent at a visit with the warning on, tries or not
     * @param showsLow chance that a weak sensor's battery is one that gets reported low
     * @param falseLow chance that a report of any other sensor's is low
     * @param coded chance of a code at a visit with the warning on; {@code named} that it names the weak sensor's place, and
     *     {@code misnamed} any place when the cause is no sensor or another
     */
    record World(
            double slowReader,
            double noSensor,
            double showsSlow,
            double slowOdds,
            double silentWhenWarned,
            double showsLow,
            double falseLow,
            double coded,
            double named,
            double misnamed) {
        static World ordinary() {
            return new World(Double.NaN, 2, 0.65, 0.15, 0.15, 0.45, 0.01, 0.6, 0.35, 0.04);
        }

        World withSlowReader(double chance) {
            return new World(
                    chance,
                    noSensor,
                    showsSlow,
                    slowOdds,
                    silentWhenWarned,
                    showsLow,
                    falseLow,
                    coded,
                    named,
                    misnamed);
        }

        World withFewSigns() {
            return new World(slowReader, noSensor, 0.4, 0.3, 0.05, 0.25, 0.03, 0.3, 0.2, 0.08);
        }
    }

    static final double INNER_ODDS = 0.6;
    static final double COLD_ODDS = 0.6;
    /** Of the sensors that are not the cause, these wake slowly all the same. */
    static final double OTHER_SLOW = 0.03;

    static final double OTHER_SLOW_ODDS = 0.35;
    /** A battery of the kind that gets reported low is reported so at this share of the visits. */
    static final double LOW_REPORTED = 0.8;

    static final double REPORTED = 0.85;
    /** Any sensor stays silent at this share of reads, drowned by noise, however often it is tried. */
    static final double DROWNED = 0.015;

    /** @param cause place of the weak sensor; null for a cause outside the sensors */
    record Planted(VehicleHistory history, WheelPosition cause, boolean readSlowly) {}

    /** Whether the logs name the reader. */
    enum Readers {
        NAMED,
        UNNAMED
    }

    /**
     * Who works with which reader.
     *
     * @param slowTechnician factor on the odds of every try of the technician called {@link #SLOW_TECHNICIAN}
     */
    record Crew(Hands hands, double slowTechnician) {}

    /** How readers and technicians go together. */
    enum Hands {
        /** One technician does everything. */
        ONE,
        /** Each technician has a reader that nobody else uses. */
        OWN_READERS,
        /** A technician per vehicle, who takes a colleague's reader at one visit in five. */
        SHARING,
        /** The same, but the logs do not name the technician. */
        SHARING_UNNAMED
    }

    static final String SLOW_TECHNICIAN = "T0";

    private final World world;
    private final Readers readers;
    private final Crew crew;
    private final double[] readerChance = new double[READERS];

    PlantedFleet(World world) {
        this(world, Readers.NAMED);
    }

    PlantedFleet(World world, Readers readers) {
        this(world, readers, new Crew(Hands.ONE, 1));
    }

    PlantedFleet(World world, Readers readers, Crew crew) {
        this.world = world;
        this.readers = readers;
        this.crew = crew;
        for (int r = 0; r < READERS; r++) {
            readerChance[r] = 0.80 + 0.02 * r;
        }
        if (!Double.isNaN(world.slowReader())) {
            readerChance[0] = world.slowReader();
        }
    }

    World world() {
        return world;
    }

    /** True chance that one try wakes a sound sensor; without the reader's name that of the average one. */
    double chance(String readerId, String technicianId, WheelPosition position, Double celsius) {
        double own = readerId == null
                ? Arrays.stream(readerChance).average().orElseThrow()
                : readerChance[Integer.parseInt(readerId.substring(2))];
        double odds = odds(own)
                * (SLOW_TECHNICIAN.equals(technicianId) ? crew.slowTechnician() : 1)
                * (position.mount() == Mount.INNER ? INNER_ODDS : 1)
                * (celsius != null && celsius < 0 ? COLD_ODDS : 1);
        return odds / (1 + odds);
    }

    static double odds(double p) {
        return p / (1 - p);
    }

    static double scaled(double p, double factor) {
        double odds = odds(p) * factor;
        return odds / (1 + odds);
    }

    /** Weight of a sensor of this age as the cause, before evidence: a wear-out hazard of shape 3, 1 at six years. */
    static double ageWeight(double years) {
        return Math.max(0.005, Math.pow(years / 6, 2));
    }

    List<Planted> vehicles(int n, long seed) {
        SplittableRandom seeds = new SplittableRandom(seed);
        List<Planted> all = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            all.add(new Drawn(i, seeds.split()).planted());
        }
        return all;
    }

    /** One vehicle being drawn. */
    private final class Drawn {
        private final SplittableRandom dice;
        private final String id;
        private final List<WheelPosition> places;
        private final LocalDate firstUsed;
        private final LocalDate[] replacedOn;
        private final boolean[] otherSlow;
        private final int own;
        private final boolean van;
        private int cause;
        private boolean slow;
        private boolean low;
        private LocalDate onset;

        Drawn(int number, SplittableRandom dice) {
            this.dice = dice;
            this.id = "V" + number;
            this.van = chance(0.25);
            this.own = dice.nextInt(READERS);
            AxleLayout layout = AxleLayout.parse(van ? "SD" : "SS").orElseThrow();
            this.places = layout.positions();
            this.firstUsed = AS_OF.minusDays(dice.nextInt(4 * 365, 9 * 365));
            this.replacedOn = new LocalDate[places.size()];
            this.otherSlow = new boolean[places.size()];
            for (int w = 0; w < places.size(); w++) {
                otherSlow[w] = chance(OTHER_SLOW);
            }
        }

        private boolean chance(double p) {
            return dice.nextDouble() < p;
        }

        Planted planted() {
            List<LocalDate> routine = new ArrayList<>();
            for (LocalDate day = AS_OF.minusDays(365 * 4 - dice.nextInt(60));
                    day.isBefore(AS_OF);
                    day = day.plusDays(dice.nextInt(120, 240))) {
                routine.add(day);
            }
            for (int w = 0; w < places.size(); w++) {
                if (chance(0.2)) {
                    replacedOn[w] = routine.get(dice.nextInt(1, routine.size()));
                }
            }
            List<LocalDate> warned = IntStream.range(0, dice.nextInt(3, 6))
                    .mapToObj(k -> AS_OF.minusDays(dice.nextInt(5, 340)))
                    .distinct()
                    .sorted()
                    .toList();
            onset = warned.get(0).minusDays(30);
            drawCause();
            List<Visit> visits = new ArrayList<>();
            routine.stream().filter(d -> !warned.contains(d)).forEach(d -> visits.add(visit(d, false)));
            warned.forEach(d -> visits.add(visit(d, true)));
            Vehicle vehicle = new Vehicle(
                    id,
                    van ? "van" : "car",
                    null,
                    firstUsed,
                    null,
                    null,
                    MonitoringSystem.DIRECT,
                    AxleLayout.parse(van ? "SD" : "SS").orElseThrow(),
                    "P-1",
                    null,
                    null,
                    null);
            return new Planted(
                    HistoryBuilder.build(vehicle, visits, HistorySettings.defaults(), AS_OF),
                    cause < 0 ? null : places.get(cause),
                    own == 0);
        }

        /** A sensor fitted after the warning was first there cannot be its cause. */
        private void drawCause() {
            double[] weights = new double[places.size()];
            for (int w = 0; w < weights.length; w++) {
                LocalDate fitted = replacedOn[w] == null ? firstUsed : replacedOn[w];
                weights[w] = fitted.isBefore(onset.plusDays(30))
                        ? ageWeight((AS_OF.toEpochDay() - fitted.toEpochDay()) / 365.25)
                        : 0;
            }
            double draw = dice.nextDouble() * (Arrays.stream(weights).sum() + world.noSensor());
            cause = -1;
            for (int w = 0; w < weights.length && draw >= 0; w++) {
                draw -= weights[w];
                cause = draw < 0 ? w : -1;
            }
            slow = chance(world.showsSlow());
            low = chance(world.showsLow());
        }

        private Visit visit(LocalDate day, boolean warning) {
            // One technician works on a vehicle most of the time, with a reader of his own.
            String reader = "RD" + (chance(0.8) ? own : dice.nextInt(READERS));
            double celsius = Math.rint(
                    12 - 14 * Math.cos((day.getDayOfYear() - 20) * 2 * Math.PI / 365) + 8 * dice.nextDouble() - 4);
            VisitHeader header = new VisitHeader(
                    id + "-" + day,
                    0,
                    day.atTime(9, 0),
                    crew.hands() == Hands.SHARING_UNNAMED ? null : technician(reader),
                    readers == Readers.NAMED ? reader : null,
                    id,
                    null,
                    null,
                    null,
                    celsius,
                    Collections.unmodifiableSortedMap(new TreeMap<>()),
                    null,
                    warning ? VisitReason.WARNING : VisitReason.SERVICE,
                    warning ? Warning.SYSTEM_FAULT : Warning.NONE,
                    null,
                    null,
                    warning ? codes() : List.of(),
                    warning ? RelearnKind.STATIONARY : null,
                    warning ? RelearnResult.DONE : null,
                    null,
                    warning,
                    warning ? new TestDrive(25.0, 20.0, false) : null,
                    null);
            List<LoggedWheel> rows = new ArrayList<>();
            for (int w = 0; w < places.size(); w++) {
                rows.add(
                        new LoggedWheel(header, wheel(w, day, reader, celsius, warning), new Source("planted", w + 1)));
            }
            return new Visit(header, rows);
        }

        private String technician(String reader) {
            return switch (crew.hands()) {
                case ONE -> "T1";
                case OWN_READERS -> "T" + reader.substring(2);
                case SHARING, SHARING_UNNAMED -> "T" + own;
            };
        }

        private List<FaultCode> codes() {
            if (!chance(world.coded())) {
                return List.of();
            }
            WheelPosition named = null;
            if (cause >= 0 && chance(world.named())) {
                named = places.get(cause);
            } else if (chance(world.misnamed())) {
                named = places.get(dice.nextInt(places.size()));
            }
            return List.of(new FaultCode("C1A10", FaultCode.State.CURRENT, named));
        }

        private WheelReading wheel(int w, LocalDate day, String reader, double celsius, boolean warning) {
            WheelPosition place = places.get(w);
            boolean fresh = replacedOn[w] != null && !day.isBefore(replacedOn[w]);
            boolean atFitting = day.equals(replacedOn[w]);
            boolean after = fresh && !atFitting;
            String sensor = (after ? "B" : "A")
                    + Integer.toHexString(0x1000000 + id.hashCode() * 31 + w).toUpperCase();
            boolean weak = w == cause && !day.isBefore(onset) && (replacedOn[w] == null || after);
            double p = PlantedFleet.this.chance(reader, technician(reader), place, celsius);
            if (weak && slow) {
                p = scaled(p, world.slowOdds());
            } else if (!weak && otherSlow[w]) {
                p = scaled(p, OTHER_SLOW_ODDS);
            }
            int tries = 1;
            boolean mute = chance(DROWNED) || weak && warning && chance(world.silentWhenWarned());
            boolean answered = !mute && chance(p);
            while (!answered && tries < GIVES_UP_AFTER) {
                tries++;
                answered = !mute && chance(p);
            }
            BatteryReport battery = answered && chance(REPORTED)
                    ? (weak && low ? chance(LOW_REPORTED) : chance(world.falseLow()))
                            ? BatteryReport.LOW
                            : BatteryReport.OK
                    : null;
            return new WheelReading(
                    place,
                    place.code(),
                    sensor,
                    answered ? ReadOutcome.OK : ReadOutcome.NO_ANSWER,
                    tries,
                    null,
                    null,
                    null,
                    null,
                    battery,
                    "P-1",
                    atFitting ? WheelWork.SENSOR_REPLACED : WheelWork.NONE,
                    atFitting ? WorkReason.PREVENTIVE : null,
                    atFitting ? "B" + sensor.substring(1) : null,
                    atFitting ? "P-1" : null,
                    atFitting ? false : null,
                    null);
        }
    }
}
