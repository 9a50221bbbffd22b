package sensorrounds.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.LifeLaws;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.outlook.UnmonitoredWheel.Certainty;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.stock.DemandUnit;
import sensorrounds.stock.StockForecast;

/**
 * What a vehicle adds to the demand for parts: a piece for every sensor that the list says to replace now, or at a stop that
 * is booked, and for every one known dead; a chance for each of the others. Orders so agree with the list.
 */
final class VehicleDemand {
    private VehicleDemand() {}

    static List<DemandUnit> of(
            VehicleHistory history,
            List<RankedReplacement> lines,
            List<UnmonitoredWheel> unmonitored,
            LifeLaws laws,
            StockForecast stock,
            LocalDate asOf) {
        String original = history.vehicle().originalPart();
        List<DemandUnit> units = new ArrayList<>();
        for (RankedReplacement line : lines) {
            var outlook = line.outlook();
            units.addAll(plannedOn(line, asOf)
                    .map(day -> stock.plannedPiece(
                            outlook.sensor().part(), original, outlook.sensor().depot(), day))
                    .orElseGet(() -> stock.demandOf(
                            outlook,
                            laws.of(
                                            outlook.sensor().vehicleClass(),
                                            outlook.sensor().part())
                                    .map(LifeLaws.Law::life)
                                    .orElse(null),
                            original)));
        }
        Map<String, SensorLife> bySensor = history.lives().stream()
                .filter(SensorLife::onVehicle)
                .collect(Collectors.toMap(SensorLife::sensorId, Function.identity(), (first, again) -> again));
        for (UnmonitoredWheel w : unmonitored) {
            if (w.certainty() == Certainty.KNOWN && w.position() != null) {
                SensorLife life = w.sensorId() == null ? null : bySensor.get(w.sensorId());
                units.addAll(stock.plannedPiece(life == null ? null : life.part(), original, w.depot(), asOf));
            }
        }
        return units;
    }

    /** Day for which the piece is planned; empty when it is left to chance. */
    private static Optional<LocalDate> plannedOn(RankedReplacement line, LocalDate asOf) {
        return switch (line.advice()) {
            case REPLACE_NOW -> Optional.of(asOf);
            case AT_NEXT_STOP -> Optional.ofNullable(line.nextStop());
            default -> Optional.empty();
        };
    }
}
