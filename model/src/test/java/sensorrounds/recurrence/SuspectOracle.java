package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelPosition;

/**
 * Names the most probable cause by the exact likelihood of what the logs show, knowing every parameter of the planted world:
 * nobody who sees the same logs can be right more often.
 */
final class SuspectOracle {
    private final PlantedFleet fleet;
    private final VehicleHistory history;
    private final List<VisitSummary> warnings;
    private final Set<String> warned;

    private SuspectOracle(PlantedFleet fleet, VehicleHistory history) {
        this.fleet = fleet;
        this.history = history;
        this.warnings = history.visits().stream()
                .filter(v -> v.warning() == Warning.SYSTEM_FAULT)
                .toList();
        this.warned = warnings.stream().map(VisitSummary::visitId).collect(Collectors.toSet());
    }

    /** @return place of the most probable cause, null for one outside the sensors */
    static WheelPosition first(PlantedFleet fleet, VehicleHistory history) {
        return new SuspectOracle(fleet, history).first();
    }

    private WheelPosition first() {
        LocalDate onset = warnings.get(0).day().minusDays(30);
        List<SensorLife> on = Suspects.onWheels(history);
        double best = Math.log(fleet.world().noSensor()) + logCodes(null, on.size());
        WheelPosition first = null;
        for (SensorLife life : on) {
            boolean fittedLater = life.basis() == OriginBasis.RECORDED_FITTING
                    && !life.fittedOn().isBefore(onset.plusDays(30));
            if (fittedLater) {
                continue;
            }
            double years = (PlantedFleet.AS_OF.toEpochDay() - fittedOn(life).toEpochDay()) / 365.25;
            double log = Math.log(PlantedFleet.ageWeight(years))
                    + logReads(life, onset, true)
                    - logReads(life, onset, false)
                    + logCodes(life.position(), on.size());
            if (log > best) {
                best = log;
                first = life.position();
            }
        }
        return first;
    }

    /** In the planted world a sensor without a record is the one the vehicle came with, however late it was first seen. */
    private LocalDate fittedOn(SensorLife life) {
        return life.fittedOn() == null ? history.vehicle().firstUsed() : life.fittedOn();
    }

    private double logCodes(WheelPosition cause, int places) {
        double named = cause == null ? 0 : fleet.world().named();
        double log = 0;
        for (VisitSummary v : warnings) {
            for (FaultCode c : v.codes()) {
                double any = (1 - named) * fleet.world().misnamed() / places;
                log += Math.log(
                        c.position() == null
                                ? (1 - named) * (1 - fleet.world().misnamed())
                                : any + (c.position().equals(cause) ? named : 0));
            }
        }
        return log;
    }

    /** Log likelihood of all reads of the sensor, over what is hidden of it. */
    private double logReads(SensorLife life, LocalDate onset, boolean cause) {
        List<Double> logs = new ArrayList<>();
        for (boolean otherSlow : new boolean[] {false, true}) {
            double share = otherSlow ? PlantedFleet.OTHER_SLOW : 1 - PlantedFleet.OTHER_SLOW;
            if (!cause) {
                logs.add(Math.log(share) + tries(life, null, otherSlow, false) + batteries(life, null, false));
                continue;
            }
            for (boolean slow : new boolean[] {false, true}) {
                for (boolean low : new boolean[] {false, true}) {
                    logs.add(Math.log(share)
                            + Math.log(
                                    slow
                                            ? fleet.world().showsSlow()
                                            : 1 - fleet.world().showsSlow())
                            + Math.log(
                                    low
                                            ? fleet.world().showsLow()
                                            : 1 - fleet.world().showsLow())
                            + tries(life, onset, otherSlow, slow)
                            + batteries(life, onset, low));
                }
            }
        }
        double most = logs.stream().mapToDouble(x -> x).max().orElseThrow();
        return most
                + Math.log(logs.stream().mapToDouble(x -> Math.exp(x - most)).sum());
    }

    /** @param onset day from which the sensor is weak; null for one that never is */
    private double tries(SensorLife life, LocalDate onset, boolean otherSlow, boolean slow) {
        double log = 0;
        for (LifeReading r : life.readings()) {
            boolean weak = onset != null && !r.day().isBefore(onset);
            double p = fleet.chance(r.readerId(), r.technicianId(), r.position(), r.ambientCelsius());
            if (weak && slow) {
                p = PlantedFleet.scaled(p, fleet.world().slowOdds());
            } else if (!weak && otherSlow) {
                p = PlantedFleet.scaled(p, PlantedFleet.OTHER_SLOW_ODDS);
            }
            int k = r.attempts();
            double asDrawn = r.answered() ? p * Math.pow(1 - p, k - 1) : Math.pow(1 - p, k);
            boolean mute = weak && warned.contains(r.visitId());
            double silent = PlantedFleet.DROWNED
                    + (mute ? (1 - PlantedFleet.DROWNED) * fleet.world().silentWhenWarned() : 0);
            log += Math.log((1 - silent) * asDrawn + (r.answered() ? 0 : silent));
        }
        return log;
    }

    private double batteries(SensorLife life, LocalDate onset, boolean low) {
        double log = 0;
        for (LifeReading r : life.readings()) {
            if (r.battery() != null) {
                boolean weak = onset != null && !r.day().isBefore(onset);
                double p =
                        weak && low ? PlantedFleet.LOW_REPORTED : fleet.world().falseLow();
                log += Math.log(r.battery().kind() == BatteryReport.Kind.LOW ? p : 1 - p);
            }
        }
        return log;
    }
}
