package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.WheelPosition;

/**
 * The life of one sensor on one vehicle. A sensor is not its ID: a clone carries the old ID into a new life, so the key
 * is vehicle, ID and generation.
 *
 * @param generation 1 for the first sensor seen with this ID on this vehicle, 2 for the next one cloned to it, ...
 * @param part part number; null when unknown
 * @param position place where it was last read
 * @param wheelSet wheel set it belongs to; null for a vehicle with one set
 * @param fittedOn day of fitting; null when {@code basis} is UNKNOWN
 * @param fittedNotBefore earliest day of its fitting: the day itself when recorded, the tyre's week when the age rests on
 *     it, the last sign of the sensor before it when its fitting was not written down (a used sensor may yet be older);
 *     null when nothing bounds it
 * @param firstAnswered day of the first answer under observation; null when it never answered
 * @param lastAnswered day of the last answer; null when it never answered
 * @param firstKnownFailed day from which it is known failed; null unless FAILED
 * @param endedOn day the life ended by replacement or by leaving; null while in service, also for a sensor that has
 *     failed and still sits on the wheel
 * @param cause null unless FAILED
 * @param lastSound last sound battery report before the first low one; null when there was none
 * @param firstWeak first day of a low battery report; null when there was none
 * @param recovered first sound battery report since the last low one, as when the cold went; null when there was none
 * @param continues key of its life on the vehicle it came from; null when it was on none before
 * @param lifetime the observation in days of age for the survival sample; null when excluded
 * @param exclusion why it is left out of the survival sample; null when it is in
 * @param readings every attempt to read it, in time order
 */
public record SensorLife(
        String vehicleId,
        String sensorId,
        int generation,
        String part,
        WheelPosition position,
        String wheelSet,
        LocalDate fittedOn,
        OriginBasis basis,
        LocalDate fittedNotBefore,
        LocalDate firstAnswered,
        LocalDate lastAnswered,
        LocalDate firstKnownFailed,
        LocalDate endedOn,
        LifeEnd end,
        FailureCause cause,
        LocalDate lastSound,
        LocalDate firstWeak,
        LocalDate recovered,
        String continues,
        Lifetime lifetime,
        String exclusion,
        List<LifeReading> readings)
        implements Serializable {
    public SensorLife {
        readings = List.copyOf(readings);
    }

    /**
     * The life to its first weakness, the other end point: under observation from where {@link #lifetime} is, reported sound
     * until {@code lower}, reported low by {@code upper}. Empty without an age, without any report that bears on it, and for a
     * sensor that was weak at its first report.
     */
    public Optional<Lifetime> toWeakness() {
        if (lifetime == null || fittedOn == null) {
            return Optional.empty();
        }
        int entry = lifetime.entry();
        int lower = lastSound == null ? entry : Math.max(entry, age(lastSound));
        if (firstWeak == null) {
            return lower == entry ? Optional.empty() : Optional.of(Lifetime.censored(entry, lower));
        }
        int upper = age(firstWeak);
        return upper <= entry ? Optional.empty() : Optional.of(Lifetime.interval(entry, lower, upper));
    }

    private int age(LocalDate day) {
        return Math.toIntExact(ChronoUnit.DAYS.between(fittedOn, day));
    }

    /** Key of the life, stable between runs on the same logs. */
    public String lifeId() {
        return vehicleId + "/" + sensorId + "/" + generation;
    }

    /** A life with nothing known beyond these: no bound of its fitting, no sound battery report, on no other vehicle before. */
    public SensorLife(
            String vehicleId,
            String sensorId,
            int generation,
            String part,
            WheelPosition position,
            String wheelSet,
            LocalDate fittedOn,
            OriginBasis basis,
            LocalDate firstAnswered,
            LocalDate lastAnswered,
            LocalDate firstKnownFailed,
            LocalDate endedOn,
            LifeEnd end,
            FailureCause cause,
            LocalDate firstWeak,
            Lifetime lifetime,
            String exclusion,
            List<LifeReading> readings) {
        this(
                vehicleId,
                sensorId,
                generation,
                part,
                position,
                wheelSet,
                fittedOn,
                basis,
                null,
                firstAnswered,
                lastAnswered,
                firstKnownFailed,
                endedOn,
                end,
                cause,
                null,
                firstWeak,
                null,
                null,
                lifetime,
                exclusion,
                readings);
    }

    /** On the vehicle now, alive or dead. */
    public boolean onVehicle() {
        return endedOn == null;
    }

    /** On the vehicle now and not known failed. */
    public boolean inService() {
        return end == LifeEnd.IN_SERVICE;
    }

    public Optional<LifeReading> lastReading() {
        return readings.isEmpty() ? Optional.empty() : Optional.of(readings.get(readings.size() - 1));
    }
}
