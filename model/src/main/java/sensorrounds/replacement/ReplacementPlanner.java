package sensorrounds.replacement;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import sensorrounds.fleet.Part;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.SurvivalAhead;
import sensorrounds.replacement.VehicleCase.Place;
import sensorrounds.replacement.VehicleCase.Sensor;
import sensorrounds.survival.LifeLaw;

/**
 * Decides on the sensors of one vehicle together. Three ways are weighed for the sensors on the road, each against waiting
 * until the next chance: the next booked stop, or the end of the planning horizon when none is booked before it.
 *
 * <ul>
 *   <li>Bring it in now for the sensors N: sum of their gains, plus the call-out that those dead already would cause
 *       between them, less one set-up. The best N is found exactly, {@link SharedStop}.
 *   <li>Go and read first: Q (B' - set-up) - reading, Q the chance that any is dead already, B' the breakdown times the
 *       chance that it comes before the next chance. A lower limit, since what else would be done then is left out.
 *   <li>Wait: 0.
 * </ul>
 *
 * The vehicle comes in when the saving covers the hurdle on all that is spent and reaches the least saving; with a sensor
 * known dead on the road it comes in anyway, and its set-up is not counted against the others. What is left pays at a stop
 * that happens anyway, where sensors are read first, when the gain of one that answers covers the hurdle: at the next stop, or at the seasonal change for a
 * wheel set in store. A spare breaks nothing down, so its sensor is replaced when it is probably dead and the wheel is off.
 * A vehicle out of sight, or not in the register, is read before anything is fitted.
 */
public final class ReplacementPlanner implements Serializable {
    private static final long serialVersionUID = 1;

    private record RateKey(LifeLaw law, double piece, double breakdown, int gapDays) implements Serializable {}

    private final Costs costs;
    private final ReplacementSettings settings;
    private final int horizonDays;
    /** Few laws and few prices, many sensors. */
    private final Map<RateKey, Double> rates = new ConcurrentHashMap<>();

    public ReplacementPlanner(Costs costs, ReplacementSettings settings, int horizonDays) {
        this.costs = costs;
        this.settings = settings;
        this.horizonDays = horizonDays;
    }

    /** Price of the sensor to fit: the part's, or the default when the part is not in the list (null). */
    public double priceOf(Part part) {
        return part == null ? costs.defaultSensorPrice() : part.price();
    }

    /** One line for each sensor, in their order, not yet ranked (rank 0). */
    public List<RankedReplacement> plan(VehicleCase vehicle) {
        StopPlan stop = new StopChooser(costs, settings, vehicle.stops().daysToNext(vehicle.asOf()))
                .choose(vehicle, onTheRoad(vehicle));
        AdviceWords words = new AdviceWords(vehicle, costs.currency(), horizonDays, stop);
        List<RankedReplacement> lines = new ArrayList<>();
        for (int i = 0; i < vehicle.sensors().size(); i++) {
            lines.add(line(vehicle, i, stop, words));
        }
        return lines;
    }

    private RankedReplacement line(VehicleCase vehicle, int i, StopPlan stop, AdviceWords words) {
        Sensor sensor = vehicle.sensors().get(i);
        double piece = costs.piece(sensor.price());
        if (!sensor.hasChances()) {
            Advice advice = sensor.place() == Place.KEEPS_FAILING ? Advice.CHECK_PLACE_FIRST : lookOrKeep(sensor);
            return new RankedReplacement(
                    0,
                    sensor.outlook(),
                    piece,
                    Double.NaN,
                    Double.NaN,
                    Double.NaN,
                    Double.NaN,
                    vehicle.nextStop(),
                    advice,
                    words.withoutLaw(sensor, advice),
                    null);
        }
        SensorValue value = value(sensor, vehicle.stops().gapDays());
        boolean inStop = stop.lines().get(i);
        int at = vehicle.nextStop() == null ? 0 : vehicle.stops().daysToNext(vehicle.asOf());
        int after = at + vehicle.stops().gapDays();
        SensorValue.Worth worth = value.worth(at, after);
        double gain = worth.gain();
        Advice advice = inStop ? stop.advice() : otherwise(sensor, value, worth.over(settings.hurdle()) > 0);
        double cost = inStop ? stop.costs()[i] : piece;
        double saving = inStop ? stop.savings()[i] : gain;
        double breakEven = value.breakEven(at, after, settings.hurdle(), horizonDays);
        return new RankedReplacement(
                0,
                sensor.outlook(),
                cost,
                cost + saving,
                saving,
                inStop ? stop.saving() : Double.NaN,
                breakEven,
                vehicle.nextStop(),
                advice,
                words.reason(sensor, advice, saving, breakEven),
                value.stakes(vehicle.stops().gapDays(), comingIn(advice, cost, value)));
    }

    /** What going there for the list's sake costs for this sensor: a share of a set-up, or of a reading and what that may find. */
    private double comingIn(Advice advice, double cost, SensorValue value) {
        return switch (advice) {
            case REPLACE_NOW -> cost - value.piece();
            case READ_FIRST -> cost + value.failedAlready() * costs.plannedVisit();
            default -> 0;
        };
    }

    private Advice otherwise(Sensor sensor, SensorValue value, boolean pays) {
        boolean fits = pays || value.failedAlready() >= settings.deadChance();
        if (sensor.place() == Place.KEEPS_FAILING && sensor.mounting() != Mounting.SPARE) {
            return Advice.CHECK_PLACE_FIRST;
        }
        return switch (sensor.mounting()) {
            case ON_THE_ROAD -> fits ? Advice.AT_NEXT_STOP : lookOrKeep(sensor);
            case IN_STORE -> fits ? Advice.AT_SEASONAL_CHANGE : lookOrKeep(sensor);
            case SPARE ->
                sensor.outlook().chances().pHorizon() >= settings.deadChance() ? Advice.WHEN_OFF : lookOrKeep(sensor);
        };
    }

    private static Advice lookOrKeep(Sensor sensor) {
        return sensor.outlook().sensor().lastReport() == LastReport.SOUND ? Advice.KEEP : Advice.WATCH;
    }

    /** Values of the sensors that may be part of a stop; null for the others. */
    private List<SensorValue> onTheRoad(VehicleCase vehicle) {
        List<SensorValue> values = new ArrayList<>();
        for (Sensor s : vehicle.sensors()) {
            boolean may = s.hasChances() && s.mounting() == Mounting.ON_THE_ROAD && s.place() == Place.ORDINARY;
            values.add(may ? value(s, vehicle.stops().gapDays()) : null);
        }
        return values;
    }

    private SensorValue value(Sensor sensor, int gapDays) {
        double piece = costs.piece(sensor.price());
        // A spare that is dead stops nothing.
        double breakdown = sensor.mounting() == Mounting.SPARE ? 0 : costs.breakdown();
        return new SensorValue(
                new SurvivalAhead(sensor.outlook(), sensor.law(), horizonDays),
                piece,
                breakdown,
                rate(sensor.law(), piece, breakdown, gapDays),
                settings.callOutDays());
    }

    /** Least long-run cost per day of an ordinary sensor with this law, on a vehicle with such stops. */
    private double rate(LifeLaw law, double piece, double breakdown, int gapDays) {
        return rates.computeIfAbsent(new RateKey(law, piece, breakdown, gapDays), this::leastRate);
    }

    /** The least of waiting for stops and of coming in for one sensor alone. */
    private double leastRate(RateKey k) {
        AgeingLaw ageing = new FittedAgeing(k.law());
        double atStops = new OpportunityReplacement(
                        ageing, k.piece(), k.breakdown(), k.gapDays(), settings.callOutDays())
                .optimum()
                .costRate();
        double broughtIn = new AgeReplacement(ageing, k.piece() + costs.plannedVisit(), k.piece() + k.breakdown())
                .optimum()
                .costRate();
        return Math.min(atStops, broughtIn);
    }
}
