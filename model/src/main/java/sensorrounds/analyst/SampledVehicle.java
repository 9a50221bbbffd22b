package sensorrounds.analyst;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.survival.Lifetime;

/**
 * One vehicle with the lives of its sensors, as the regression on covariates and the likeness within sets take them.
 *
 * @param vehicleClass null when not known, as {@code depot} and {@code annualKm}
 */
public record SampledVehicle(
        String vehicleId, String vehicleClass, String depot, Double annualKm, List<SampledLife> lives)
        implements Serializable {
    public SampledVehicle {
        lives = List.copyOf(lives);
    }

    /**
     * The lives of a vehicle that take part in survival.
     *
     * @param part part of a life, null when not known
     */
    public static SampledVehicle of(VehicleHistory history, Function<SensorLife, String> part) {
        return new SampledVehicle(
                history.vehicleId(),
                history.vehicle().vehicleClass(),
                history.vehicle().depot(),
                history.vehicle().annualKm(),
                history.lives().stream()
                        .filter(life -> life.lifetime() != null)
                        .map(life -> new SampledLife(
                                life.lifetime(),
                                part.apply(life),
                                WheelPlace.of(life.position()),
                                life.fittedOn(),
                                FittingSeason.of(life)))
                        .toList());
    }

    /**
     * One life.
     *
     * @param part null when not known, as {@code fittedOn} and {@code fitted}
     * @param fittedOn day of age 0
     */
    public record SampledLife(Lifetime life, String part, WheelPlace place, LocalDate fittedOn, FittingSeason fitted)
            implements Serializable {}
}
