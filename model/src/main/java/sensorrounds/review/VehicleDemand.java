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
import sensorrounds.stock.DemandKey.Stretch;
import sensorrounds.stock.DemandUnit;
import sensorrounds.stock.StockForecast;

/**
 * What a vehicle adds to the demand for parts: a piece for every sensor that the list says to replace now, or at a stop that
 * is booked, read first or not, and for every one known dead; a chance for each of the others. Orders so agree with the list.
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
            var sensor = line.outlook().sensor();
            List<DemandUnit> byChance = stock.demandOf(
                    line.outlook(),
                    laws.of(sensor.vehicleClass(), sensor.part())
                            .map(LifeLaws.Law::life)
                            .orElse(null),
                    original);
            units.addAll(plannedOn(line, asOf)
                    .map(day -> planned(stock.plannedPiece(sensor.part(), original, sensor.depot(), day), byChance))
                    .orElse(byChance));
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

    /** A piece planned for a day that an order placed now need not reach may be wanted before, should its sensor fail. */
    private static List<DemandUnit> planned(List<DemandUnit> piece, List<DemandUnit> byChance) {
        List<DemandUnit> units = new ArrayList<>(piece);
        if (piece.stream().noneMatch(VehicleDemand::covered)) {
            byChance.stream().filter(VehicleDemand::covered).forEach(units::add);
        }
        return units;
    }

    private static boolean covered(DemandUnit unit) {
        return unit.key().stretch() == Stretch.COVER;
    }

    /** Day for which the piece is planned; empty when it is left to chance. */
    private static Optional<LocalDate> plannedOn(RankedReplacement line, LocalDate asOf) {
        return switch (line.advice()) {
            case REPLACE_NOW -> Optional.of(asOf);
            case AT_NEXT_STOP -> Optional.ofNullable(line.nextStop());
            case READ_FIRST -> Optional.ofNullable(line.nextStop()).filter(day -> line.replacedInAnyCase());
            default -> Optional.empty();
        };
    }
}
