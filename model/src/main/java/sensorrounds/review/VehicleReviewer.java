package sensorrounds.review;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sensorrounds.condition.ConditionMoment;
import sensorrounds.condition.HiddenFit;
import sensorrounds.condition.HiddenOutlooks;
import sensorrounds.condition.SetLikeness;
import sensorrounds.condition.WatchList;
import sensorrounds.fleet.Part;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.LifeLaws;
import sensorrounds.outlook.Outlooks;
import sensorrounds.outlook.ReportRatios;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.outlook.UnmonitoredWheels;
import sensorrounds.recurrence.Recurrence;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.recurrence.SuspectFigures;
import sensorrounds.replacement.Mounting;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.replacement.ReplacementPlanner;
import sensorrounds.replacement.VehicleCase;
import sensorrounds.stock.StockForecast;
import sensorrounds.survival.LifeLaw;

/** Reviews one vehicle after another with what was fitted for the fleet. Travels to the executors as it is. */
public final class VehicleReviewer implements Serializable {
    private static final long serialVersionUID = 1;
    /** Chance of being weak or dead from which a sensor's condition over time is kept. */
    private static final double WORTH_A_LOOK = 0.05;

    private final Estimates estimates;
    private final ReportRatios ratios;
    private final HiddenFit condition;
    private final SetLikeness likeness;
    private final SuspectFigures suspects;
    private final Map<String, Part> parts;
    private final ReplacementPlanner planner;
    private final StockForecast stock;
    private final LocalDate asOf;

    public VehicleReviewer(
            Estimates estimates,
            ReportRatios ratios,
            HiddenFit condition,
            SetLikeness likeness,
            SuspectFigures suspects,
            Map<String, Part> parts,
            LocalDate asOf) {
        this.estimates = estimates;
        this.ratios = ratios;
        this.condition = condition;
        this.likeness = likeness;
        this.suspects = suspects;
        this.parts = Map.copyOf(parts);
        this.asOf = asOf;
        ReviewSettings s = estimates.settings();
        this.planner =
                new ReplacementPlanner(s.costs(), s.replacement(), s.outlook().horizonDays());
        this.stock = new StockForecast(parts, s.stock(), s.outlook().horizonDays(), asOf);
    }

    /** Outlooks of a vehicle's sensors in service: by their hidden condition where it speaks, else the simpler ones. */
    public List<SensorOutlook> outlooks(VehicleHistory history) {
        return conditions().of(history, simplerOutlooks(history));
    }

    private HiddenOutlooks conditions() {
        return new HiddenOutlooks(
                condition,
                likeness,
                estimates,
                (h, life) -> CohortParts.of(h.vehicle(), life),
                estimates.settings().outlook(),
                asOf);
    }

    private List<ConditionMoment> overTime(
            VehicleHistory history, List<SensorOutlook> outlooks, RecurringVehicle recurring) {
        boolean recurs = recurring != null && recurring.pattern() != RecurringVehicle.Pattern.NOT_RECURRING;
        List<SensorOutlook> worth = outlooks.stream()
                .filter(o -> recurs || o.chances().pWeak() + o.chances().pNow() >= WORTH_A_LOOK)
                .toList();
        return worth.isEmpty() ? List.of() : conditions().overTime(history, worth);
    }

    /** The same by law of life and last report. */
    public List<SensorOutlook> simplerOutlooks(VehicleHistory history) {
        return Outlooks.of(
                history,
                estimates,
                ratios,
                estimates.lastReports(history),
                estimates.settings().outlook(),
                asOf);
    }

    public VehicleReview review(VehicleHistory history) {
        ReviewSettings s = estimates.settings();
        List<SensorOutlook> outlooks = outlooks(history);
        List<UnmonitoredWheel> unmonitored = UnmonitoredWheels.of(history, asOf);
        String setOnVehicle = Mounting.setOnVehicle(history);
        List<VehicleCase.Sensor> sensors = new ArrayList<>();
        String original = history.vehicle().originalPart();
        for (SensorOutlook o : outlooks) {
            LifeLaw law = estimates
                    .of(o.sensor().vehicleClass(), o.sensor().part())
                    .map(LifeLaws.Law::life)
                    .orElse(null);
            String fitted = o.sensor().part() == null ? original : o.sensor().part();
            Part part = fitted == null ? null : parts.get(fitted);
            sensors.add(new VehicleCase.Sensor(
                    o,
                    law,
                    planner.priceOf(part),
                    Mounting.of(o.sensor().position(), o.sensor().wheelSet(), setOnVehicle),
                    VehicleCases.place(history, o)));
        }
        VehicleCase vehicle = VehicleCases.of(history, sensors, unmonitored, s.replacement(), asOf);
        List<RankedReplacement> lines = planner.plan(vehicle);
        Map<String, Double> withinYear = outlooks.stream()
                .collect(Collectors.toMap(
                        o -> o.sensor().lifeId(), o -> o.chances().p365(), (a, b) -> a));
        RecurringVehicle recurring = Recurrence.of(
                        history,
                        estimates.peers(),
                        estimates.wake(),
                        suspects,
                        life -> withinYear.getOrDefault(life.lifeId(), Double.NaN),
                        s.recurrence(),
                        asOf)
                .orElse(null);
        return new VehicleReview(
                history.vehicleId(),
                lines,
                WatchList.of(history, estimates.wake(), s.condition()),
                unmonitored,
                recurring,
                overTime(history, outlooks, recurring),
                VehicleDemand.of(history, lines, unmonitored, estimates, stock, asOf),
                RoundCalls.of(history, vehicle, lines, unmonitored, s));
    }

    /** Month by month outlook of one part at one depot; used once the demand of all vehicles is added up. */
    public StockForecast stock() {
        return stock;
    }
}
