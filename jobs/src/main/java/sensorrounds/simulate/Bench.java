package sensorrounds.simulate;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.simulate.SimulatedSensor.Origin;
import sensorrounds.simulate.SimulatedSensor.Removal;
import sensorrounds.simulate.SimulatedVehicle.FittedSensor;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.VisitReason;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** One vehicle with its wheels, and what hands can do to it: open a visit, read, replace, inflate, close. */
final class Bench {
    static final int SUMMER = 0;
    static final int WINTER = 1;
    private static final int[] BOTH_SETS = {SUMMER, WINTER};

    final SimulationSettings settings;
    final Weather weather;
    final int index;
    final VehicleKind kind;
    final int depot;
    final int firstUsedDay;
    final double lifeFactor;
    final Dice dice;
    final List<Wheel> wheels = new ArrayList<>();

    private final double annualKm;
    private final boolean twoSets;
    private final SortedMap<Integer, Double> placard = new TreeMap<>();
    private final List<FittedSensor> sensors = new ArrayList<>();
    private final List<SimulatedVisit> visits = new ArrayList<>();
    private final Story story;
    private int mountedSet = SUMMER;

    Bench(
            SimulationSettings settings,
            Weather weather,
            int index,
            VehicleKind kind,
            int depot,
            int firstUsedDay,
            boolean twoSets,
            Story story) {
        this.settings = settings;
        this.weather = weather;
        this.index = index;
        this.kind = kind;
        this.depot = depot;
        this.firstUsedDay = firstUsedDay;
        this.twoSets = twoSets;
        this.story = story;
        this.dice = Dice.of(settings.seed(), index, 'V');
        this.lifeFactor = story == null ? StrictMath.exp(settings.hazards().vehicleSpread() * dice.normal()) : 1;
        this.annualKm = Math.rint(kind.annualKm() * dice.between(0.6, 1.4) / 500) * 500;
        for (int a = 0; a < kind.placardKpa().size(); a++) {
            placard.put(a + 1, kind.placardKpa().get(a));
        }
        for (int set : BOTH_SETS) {
            if (set == SUMMER || twoSets) {
                kind.axles().positions().stream()
                        .filter(p -> set == SUMMER || !p.isSpare())
                        .forEach(p -> wheels.add(newWheel(p, set)));
            }
        }
    }

    private Wheel newWheel(WheelPosition p, int set) {
        double kpa = kind.placardKpa().get(p.isSpare() ? 0 : p.axle() - 1);
        Wheel w = new Wheel(p, set, kpa, dice.between(2, 7) * kpa / 240, firstUsedDay - dice.between(20, 150));
        w.inflate(startDay(), kpa * dice.between(0.93, 1.02), 15);
        return w;
    }

    /** First day the vehicle is watched: the first of the logs, or its own first day. */
    int startDay() {
        return Math.max(firstUsedDay, settings.startDay());
    }

    boolean hasTwoSets() {
        return twoSets;
    }

    /** Wheels that are on the vehicle now, the spare included. */
    List<Wheel> mounted() {
        return wheels.stream()
                .filter(w -> w.set == mountedSet || w.position.isSpare())
                .toList();
    }

    boolean isMounted(SimulatedSensor s) {
        return wheels.stream().anyMatch(w -> w.sensor() == s && w.set == mountedSet && !w.position.isSpare());
    }

    boolean isFitted(SimulatedSensor s) {
        return wheels.stream().anyMatch(w -> w.sensor() == s);
    }

    void mount(int set) {
        mountedSet = set;
    }

    Wheel wheel(String position) {
        return mounted().stream()
                .filter(w -> w.position.code().equals(position))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no wheel at " + position));
    }

    double celsius(int day, double hour) {
        return weather.celsius(depot, day, hour);
    }

    // --- sensors ---

    int nextOrdinal() {
        return sensors.size();
    }

    SimulatedSensor sensorAt(int ordinal) {
        return sensors.get(ordinal).sensor();
    }

    /** Fits a new sensor of the sort and fate that chance has for it. */
    SimulatedSensor fitNew(Wheel wheel, int day, Origin origin, String part, String id) {
        int ordinal = nextOrdinal();
        Dice fate = Dice.of(settings.seed(), index, 'S', ordinal);
        return fit(
                wheel,
                SimulatedSensor.draw(
                        fate, ordinal, id, part, origin, day, kind.lawOf(part), lifeFactor, settings.hazards()));
    }

    SimulatedSensor fit(Wheel wheel, SimulatedSensor s) {
        wheel.fit(s);
        sensors.add(new FittedSensor(s, wheel.position.code(), wheelSetName(wheel)));
        return s;
    }

    String freshId() {
        return VehicleIds.sensor(index, nextOrdinal());
    }

    /** Fits original sensors and lives through the time before the logs, of which nothing is written. */
    void fitOriginals() {
        if (kind.system() == MonitoringSystem.INDIRECT) {
            return;
        }
        for (Wheel w : wheels) {
            SimulatedSensor s = fitNew(w, firstUsedDay, Origin.ORIGINAL, kind.originalPart(), freshId());
            int replaced = s.failDay() + dice.between(8, 150);
            while (replaced < startDay()) {
                s.remove(replaced, Removal.FAILED);
                s = fitNew(w, replaced, Origin.BEFORE_LOGS, kind.replacementPart(), freshId());
                replaced = s.failDay() + dice.between(8, 150);
            }
        }
    }

    // --- a visit ---

    VisitDraft open(int day, VisitReason reason) {
        return open(day, dice.between(84, 210) / 12.0, reason, settings.crew().pick(depot, dice));
    }

    VisitDraft open(int day, double hour, VisitReason reason, Crew.Pair crew) {
        double ambient = Math.rint(celsius(day, hour) * 2) / 2;
        return open(day, hour, reason, crew, ambient);
    }

    VisitDraft open(int day, double hour, VisitReason reason, Crew.Pair crew, double ambient) {
        int minutes = (int) Math.rint(hour * 12) * 5;
        LocalDateTime at = LocalDate.ofEpochDay(day).atStartOfDay().plusMinutes(minutes);
        VisitDraft draft = new VisitDraft(day, at, crew, ambient, reason);
        mounted().forEach(w -> draft.wheels.add(new WheelDraft(w)));
        return draft;
    }

    /** Reads every wheel. */
    void readAll(VisitDraft v, boolean warmFromDriving) {
        double warmth = warmFromDriving ? dice.between(9, 24) : 0;
        boolean hotWritten = dice.chance(0.7);
        boolean gauged = dice.chance(0.3);
        boolean partWritten = dice.chance(0.5);
        boolean tyresWritten = dice.chance(0.35);
        for (WheelDraft w : v.wheels) {
            w.tyreDateWritten = tyresWritten && !w.wheel.position.isSpare();
            double air = v.ambient + warmth * dice.between(0.85, 1.1) + dice.between(-0.7, 0.7);
            if (w.found == null) {
                w.read = ReadOutcome.NOT_PRESENT;
                continue;
            }
            if (w.wheel.position.isSpare() && dice.chance(0.7)) {
                w.read = ReadOutcome.NOT_TRIED;
                continue;
            }
            wake(v, w);
            if (gauged) {
                w.gaugeKpa = Math.max(0, Math.rint(w.wheel.kpa(v.day, air) + 3 * dice.normal()));
            }
            w.hot = hotWritten ? warmFromDriving : null;
            if (!w.silent()) {
                w.sensorId = w.found.id;
                w.celsius = Math.rint(air);
                w.pressureKpa = Math.max(0, Math.rint((w.wheel.kpa(v.day, air) + 2.5 * dice.normal()) * 2) / 2);
                w.battery = BatteryWords.report(w.found, v.day, air, v.crew.reader(), kind, dice);
                w.part = partWritten ? w.found.part : null;
            } else if (dice.chance(0.6)) {
                w.sensorId = w.found.id; // from the list the vehicle has learned
            }
        }
    }

    private void wake(VisitDraft v, WheelDraft w) {
        Crew.Reader reader = v.crew.reader();
        Hazards h = settings.hazards();
        double cold = Math.max(0, 5 - v.ambient);
        double ease = reader.ease() * (1 - h.coldEase() * cold);
        if (w.wheel.position.mount() == Mount.INNER) {
            ease *= h.innerEase();
        }
        if (w.found.weakOn(v.day)) {
            ease *= h.weakEase() * (v.ambient < 3 ? 0.6 : 1);
        }
        if (!w.found.sendsOn(v.day)) {
            ease = 0;
        }
        for (int tries = 1; tries <= reader.patience(); tries++) {
            if (dice.chance(ease)) {
                w.read = ReadOutcome.OK;
                w.attempts = tries;
                return;
            }
        }
        w.read = ReadOutcome.NO_ANSWER;
        w.attempts = reader.patience() - dice.between(0, 2);
    }

    /** Replaces the sensor of a wheel; the old one leaves with the true state it is in. */
    void replace(VisitDraft v, WheelDraft w, WorkReason why, boolean clone) {
        takeOut(v, w, why);
        String id = clone ? w.found.id : freshId();
        SimulatedSensor s = fitNew(w.wheel, v.day, Origin.LOGGED, kind.replacementPart(), id);
        writeReplacement(w, s, why, clone);
    }

    void takeOut(VisitDraft v, WheelDraft w, WorkReason why) {
        Removal how = w.found.failedBy(v.day)
                ? Removal.FAILED
                : why == WorkReason.PREVENTIVE ? Removal.PREVENTIVE : Removal.TAKEN_FOR_DEAD;
        w.found.remove(v.day, how);
    }

    /** Writes a replacement down; the new sensor is already on the wheel. */
    void writeReplacement(WheelDraft w, SimulatedSensor fitted, WorkReason why, boolean clone) {
        w.work = WheelWork.SENSOR_REPLACED;
        w.reason = why;
        w.newSensorId = fitted.id;
        w.newPart = fitted.part;
        w.cloned = clone ? Boolean.TRUE : null;
    }

    void inflateAll(VisitDraft v) {
        mounted().forEach(w -> w.inflate(v.day, w.placardKpa * dice.between(0.99, 1.02), v.ambient));
    }

    void close(VisitDraft v) {
        v.wheels.forEach(w -> w.wheel.silentLastTime(w.silent() && !w.touched()));
        String id = String.format(Locale.ROOT, "%d-%02d", VehicleIds.number(index), visits.size() + 1);
        double driven = annualKm * (v.day - firstUsedDay) / 365.25;
        // One export carries the VIN, the others the plate.
        boolean vinWritten = v.crew.technician().export() == Crew.Export.JSON_LINES;
        int year = LocalDate.ofEpochDay(firstUsedDay).getYear();
        visits.add(new SimulatedVisit(
                v.header(
                        id,
                        VehicleIds.vehicle(index),
                        vinWritten ? VehicleIds.vin(index, year) : null,
                        vinWritten || kind.isTrailer() ? null : VehicleIds.registration(index),
                        kind.isTrailer() ? null : (Double) Math.rint(driven),
                        Collections.unmodifiableSortedMap(placard),
                        twoSets ? setName(mountedSet) : null),
                v.wheels.stream().map(WheelDraft::reading).toList(),
                kind.axles().axles().size(),
                story != null));
    }

    int visitCount() {
        return visits.size();
    }

    /** The finished vehicle. */
    SimulatedVehicle done(Integer nextPlannedDay, Integer leftDay) {
        if (leftDay != null) {
            wheels.stream()
                    .filter(w -> w.sensor() != null)
                    .forEach(w -> w.sensor().remove(leftDay, Removal.LEFT_FLEET));
        }
        Vehicle register = new Vehicle(
                VehicleIds.vehicle(index),
                kind.vehicleClass(),
                kind.modelGroup(),
                LocalDate.ofEpochDay(firstUsedDay),
                settings.crew().depots().get(depot).name(),
                settings.crew().depots().get(depot).drivingSide(),
                kind.system(),
                kind.axles(),
                kind.originalPart(),
                annualKm,
                nextPlannedDay == null ? null : LocalDate.ofEpochDay(nextPlannedDay),
                leftDay == null ? null : LocalDate.ofEpochDay(leftDay));
        return new SimulatedVehicle(register, visits, sensors, story, lifeFactor);
    }

    private String wheelSetName(Wheel w) {
        return twoSets && !w.position.isSpare() ? setName(w.set) : null;
    }

    private static String setName(int set) {
        return set == SUMMER ? "A" : "B";
    }
}
