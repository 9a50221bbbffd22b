package sensorrounds.history;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import sensorrounds.fleet.AxleLayout;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.Source;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.Warning;

/** A hand-made log of one vehicle. Unless told otherwise: four wheels, direct system, first used on 1 January 2018. */
final class Logbook {
    static final LocalDate FIRST_USED = LocalDate.of(2018, 1, 1);
    static final LocalDate FAR_AHEAD = LocalDate.of(2040, 1, 1);

    private final List<Entry> entries = new ArrayList<>();
    private final String vehicleId;
    private String axles = "SS";
    private VehicleMoves moves = VehicleMoves.NONE;
    private LocalDate firstUsed = FIRST_USED;
    private LocalDate leftFleet;
    private MonitoringSystem system = MonitoringSystem.DIRECT;
    private Vehicle register;

    Logbook() {
        this("V1");
    }

    Logbook(String vehicleId) {
        this.vehicleId = vehicleId;
    }

    /** One visit being written. */
    static final class Entry {
        private final LocalDate day;
        private final int number;
        private final List<Wheel> wheels = new ArrayList<>();
        private String set;
        private Warning warning;
        private LocalDate since;
        private Double ambient;
        private Double odometer;
        private Double placard;
        private RelearnKind relearn;
        private RelearnResult relearnResult;
        private Boolean codesCleared;
        private Boolean pressuresStored;
        private TestDrive drive;

        private Entry(LocalDate day, int number) {
            this.day = day;
            this.number = number;
        }

        Entry wheels(Wheel... more) {
            wheels.addAll(List.of(more));
            return this;
        }

        /** All four wheels answer, front left first. */
        Entry heard(String... ids) {
            String[] places = {"1L", "1R", "2L", "2R"};
            for (int i = 0; i < ids.length; i++) {
                wheels.add(Wheel.heard(places[i], ids[i]));
            }
            return this;
        }

        Entry set(String name) {
            set = name;
            return this;
        }

        Entry warning(Warning shown) {
            warning = shown;
            return this;
        }

        Entry since(String when) {
            since = LocalDate.parse(when);
            return this;
        }

        Entry ambient(double celsius) {
            ambient = celsius;
            return this;
        }

        Entry odometer(double km) {
            odometer = km;
            return this;
        }

        Entry placard(double kpa) {
            placard = kpa;
            return this;
        }

        Entry relearned(RelearnResult result) {
            relearn = RelearnKind.STATIONARY;
            relearnResult = result;
            return this;
        }

        Entry codesCleared() {
            codesCleared = true;
            return this;
        }

        Entry pressuresStored() {
            pressuresStored = true;
            return this;
        }

        Entry drive(Double minutes, Boolean returned) {
            drive = new TestDrive(minutes, null, returned);
            return this;
        }

        Entry drive(Double minutes, Double km, Boolean returned) {
            drive = new TestDrive(minutes, km, returned);
            return this;
        }

        private Visit visit(String vehicleId) {
            TreeMap<Integer, Double> byAxle = new TreeMap<>();
            if (placard != null) {
                byAxle.put(1, placard);
                byAxle.put(2, placard);
            }
            VisitHeader header = new VisitHeader(
                    "visit-" + number,
                    0,
                    day.atTime(9, number % 60),
                    "T1",
                    "R1",
                    vehicleId,
                    null,
                    null,
                    odometer,
                    ambient,
                    byAxle,
                    set,
                    null,
                    warning,
                    since,
                    null,
                    List.of(),
                    relearn,
                    relearnResult,
                    pressuresStored,
                    codesCleared,
                    drive,
                    null);
            List<LoggedWheel> rows = new ArrayList<>();
            long line = number * 10L;
            for (Wheel wheel : wheels) {
                rows.add(new LoggedWheel(header, wheel.reading(), new Source("day.jsonl", line++)));
            }
            if (rows.isEmpty()) {
                rows.add(new LoggedWheel(header, null, new Source("day.jsonl", line)));
            }
            return new Visit(header, rows);
        }
    }

    Entry on(String day) {
        Entry entry = new Entry(LocalDate.parse(day), entries.size() + 1);
        entries.add(entry);
        return entry;
    }

    Logbook firstUsed(LocalDate day) {
        firstUsed = day;
        return this;
    }

    Logbook leftFleet(String day) {
        leftFleet = LocalDate.parse(day);
        return this;
    }

    Logbook system(MonitoringSystem what) {
        system = what;
        return this;
    }

    /** @param layout one letter for each axle: S single, D dual */
    Logbook axles(String layout) {
        axles = layout;
        return this;
    }

    Logbook moves(VehicleMoves known) {
        moves = known;
        return this;
    }

    Logbook unregistered() {
        register = Vehicle.unregistered(vehicleId);
        return this;
    }

    Vehicle vehicle() {
        return register != null
                ? register
                : new Vehicle(
                        vehicleId,
                        "van",
                        null,
                        firstUsed,
                        "north",
                        null,
                        system,
                        AxleLayout.parse(axles).orElseThrow(),
                        "P-ORIGINAL",
                        null,
                        null,
                        leftFleet);
    }

    List<Visit> visits() {
        return entries.stream().map(e -> e.visit(vehicleId)).toList();
    }

    VehicleHistory history() {
        return historyAsOf(FAR_AHEAD);
    }

    VehicleHistory historyAsOf(LocalDate asOf) {
        return HistoryBuilder.build(vehicle(), visits(), moves, HistorySettings.defaults(), asOf);
    }

    /** The one life with this key's end, {@code ID/generation}. */
    static SensorLife life(VehicleHistory history, String id, int generation) {
        return history.lives().stream()
                .filter(l -> l.sensorId().equals(id) && l.generation() == generation)
                .findFirst()
                .orElseThrow(() -> new AssertionError("no life " + id + "/" + generation + " among "
                        + history.lives().stream().map(SensorLife::lifeId).toList()));
    }

    static SensorLife life(VehicleHistory history, String id) {
        return life(history, id, 1);
    }

    static List<Finding.Kind> kinds(VehicleHistory history) {
        return history.findings().stream().map(Finding::kind).toList();
    }

    /** Age in days on a day, from the vehicle's first use. */
    static int age(String day) {
        return (int) ChronoUnit.DAYS.between(FIRST_USED, LocalDate.parse(day));
    }
}
