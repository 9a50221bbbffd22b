package sensorrounds.outlook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Vehicle;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.outlook.UnmonitoredWheel.Certainty;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

/**
 * The wheels of a vehicle without low-pressure warning. Known: the sensor is known failed and still on the wheel, or was
 * taken out and none is recorded at that place of that wheel set since (a plain valve, as far as the logs tell), or the wheel was found
 * without a sensor from its first visit on. Probable:
 * the sensor did not answer when it was tried last, or the spare's has never been heard though the register says that
 * there is one. And while the system's own warning is on, the whole vehicle may be without (49 CFR 571.138 S4.4 has the
 * lamp tell of a fault, not of what still works). A vehicle that has left, or whose system has no wheel sensors, has none.
 */
public final class UnmonitoredWheels {
    private UnmonitoredWheels() {}

    /** Surest first, then in order of wheel set and place. */
    public static List<UnmonitoredWheel> of(VehicleHistory history, LocalDate asOf) {
        Vehicle vehicle = history.vehicle();
        boolean left = vehicle.leftFleet() != null && !vehicle.leftFleet().isAfter(asOf);
        List<UnmonitoredWheel> wheels = new ArrayList<>();
        if (left || vehicle.system() == MonitoringSystem.INDIRECT) {
            return wheels;
        }
        Set<LocalDate> unheard = unheard(history);
        for (SensorLife life : history.lives()) {
            UnmonitoredWheel wheel = life.inService()
                    ? silent(history, life, unheard)
                    : life.onVehicle() ? deadOnWheel(history, life) : takenOut(history, life);
            if (wheel != null && (wheel.since() == null || !wheel.since().isAfter(asOf))) {
                wheels.add(wheel);
            }
        }
        neverHeardSpare(history, unheard).ifPresent(wheels::add);
        wheels.addAll(BareWheels.of(history, asOf));
        systemWarning(history).ifPresent(wheels::add);
        wheels.sort(Comparator.comparing(UnmonitoredWheel::certainty)
                .thenComparing(UnmonitoredWheel::wheelSet, Comparator.nullsFirst(Comparator.naturalOrder()))
                .thenComparing(UnmonitoredWheel::position, Comparator.nullsLast(Comparator.naturalOrder()))
                .thenComparing(UnmonitoredWheel::since, Comparator.nullsFirst(Comparator.naturalOrder())));
        return wheels;
    }

    private static UnmonitoredWheel deadOnWheel(VehicleHistory history, SensorLife life) {
        Vehicle vehicle = history.vehicle();
        if (history.lives().stream().anyMatch(o -> o.inService() && samePlace(o, life))) {
            return null;
        }
        if (life.end() == LifeEnd.FAILED) {
            return wheel(
                    vehicle,
                    life,
                    life.sensorId(),
                    life.firstKnownFailed(),
                    "Sensor known failed since " + life.firstKnownFailed() + " and still on the wheel.",
                    Certainty.KNOWN);
        }
        if (life.end() == LifeEnd.PLACE_SUSPECTED) {
            LocalDate since = firstSilence(life, Set.of());
            return wheel(
                    vehicle,
                    life,
                    life.sensorId(),
                    since,
                    "Silent since " + since + "; sensors keep falling silent at this place, so look at the place"
                            + " before the sensor.",
                    Certainty.KNOWN);
        }
        return null;
    }

    private static UnmonitoredWheel takenOut(VehicleHistory history, SensorLife life) {
        if (life.end() == LifeEnd.LEFT_FLEET || followed(history, life)) {
            return null;
        }
        return wheel(
                history.vehicle(),
                life,
                null,
                life.endedOn(),
                "Sensor " + life.sensorId()
                        + (life.end() == LifeEnd.MOVED ? " is on another vehicle since " : " was taken out on ")
                        + life.endedOn()
                        + " and none is recorded at this wheel since: plain valve, or a sensor nobody wrote down.",
                Certainty.KNOWN);
    }

    /** Another sensor sat there at the time or came after; of two that ended together the first listed speaks. */
    private static boolean followed(VehicleHistory history, SensorLife life) {
        List<SensorLife> lives = history.lives();
        int at = lives.indexOf(life);
        for (int i = 0; i < lives.size(); i++) {
            SensorLife other = lives.get(i);
            if (i == at || !samePlace(other, life)) {
                continue;
            }
            if (other.onVehicle()
                    || other.endedOn().isAfter(life.endedOn())
                    || (other.endedOn().equals(life.endedOn()) && i < at)) {
                return true;
            }
        }
        return false;
    }

    private static boolean samePlace(SensorLife a, SensorLife b) {
        return Objects.equals(a.position(), b.position()) && Objects.equals(a.wheelSet(), b.wheelSet());
    }

    private static UnmonitoredWheel silent(VehicleHistory history, SensorLife life, Set<LocalDate> unheard) {
        LocalDate since = firstSilence(life, unheard);
        if (since == null) {
            return null;
        }
        String reason = "Did not answer on " + since
                + (life.lastAnswered() == null
                        ? "; it has never been heard"
                        : "; it last answered on " + life.lastAnswered())
                + ". Dead, or not woken: read it again.";
        return wheel(history.vehicle(), life, life.sensorId(), since, reason, Certainty.PROBABLE);
    }

    /** Tries at a spare that never answered make no life of a sensor, so that only the visits tell of them. */
    private static Optional<UnmonitoredWheel> neverHeardSpare(VehicleHistory history, Set<LocalDate> unheard) {
        Vehicle vehicle = history.vehicle();
        boolean known = history.lives().stream().anyMatch(l -> l.position().isSpare());
        if (known || vehicle.axles() == null || !vehicle.axles().spare()) {
            return Optional.empty();
        }
        List<LocalDate> silent = history.visits().stream()
                .filter(v -> v.silent().contains(WheelPosition.SPARE) && !unheard.contains(v.day()))
                .map(VisitSummary::day)
                .distinct()
                .toList();
        if (silent.isEmpty()) {
            return Optional.empty();
        }
        String tries = silent.size() == 1
                ? "did not answer on " + silent.get(0)
                : "did not answer at any of " + silent.size() + " visits since " + silent.get(0);
        return Optional.of(new UnmonitoredWheel(
                vehicle.vehicleId(),
                vehicle.depot(),
                WheelPosition.SPARE,
                null,
                null,
                silent.get(0),
                "By the register the spare has a sensor; it " + tries + " and has never been heard.",
                Certainty.PROBABLE));
    }

    private static Optional<UnmonitoredWheel> systemWarning(VehicleHistory history) {
        Vehicle vehicle = history.vehicle();
        return history.episodes().stream()
                .filter(e -> e.kind() == Warning.SYSTEM_FAULT && e.provenOff() == null)
                .reduce((earlier, later) -> later)
                .map(e -> new UnmonitoredWheel(
                        vehicle.vehicleId(),
                        vehicle.depot(),
                        null,
                        null,
                        null,
                        e.firstSeen(),
                        "System warning on at the visit of " + e.lastSeen()
                                + (e.lastingCause()
                                        ? "; a dead sensor was replaced, and it has not been seen since to stay off."
                                        : " and not seen off since."),
                        Certainty.SYSTEM));
    }

    /** Days at which a reader heard nothing at all: the silence was the reader's. */
    private static Set<LocalDate> unheard(VehicleHistory history) {
        return history.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.READER_HEARD_NOTHING && f.day() != null)
                .map(Finding::day)
                .collect(Collectors.toSet());
    }

    /** First day of the silence that has lasted since; null when it answered last. */
    private static LocalDate firstSilence(SensorLife life, Set<LocalDate> unheard) {
        LocalDate since = null;
        for (LifeReading reading : life.readings()) {
            if (unheard.contains(reading.day())) {
                continue;
            }
            if (reading.answered()) {
                since = null;
            } else if (reading.outcome() == ReadOutcome.NO_ANSWER && since == null) {
                since = reading.day();
            }
        }
        return since;
    }

    private static UnmonitoredWheel wheel(
            Vehicle vehicle, SensorLife life, String sensorId, LocalDate since, String reason, Certainty certainty) {
        return new UnmonitoredWheel(
                vehicle.vehicleId(),
                vehicle.depot(),
                life.position(),
                life.wheelSet(),
                sensorId,
                since,
                reason,
                certainty);
    }
}
