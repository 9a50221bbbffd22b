package sensorrounds.review;

import java.time.LocalDate;
import java.util.List;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.outlook.UnmonitoredWheel.Certainty;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.Costs;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.replacement.VehicleCase;
import sensorrounds.rounds.RoundCall;
import sensorrounds.rounds.RoundCall.Kind;

/** What a vehicle asks of the rounds: a stop now, or work at a stop that is booked soon. */
final class RoundCalls {
    private RoundCalls() {}

    /** @return null when it asks for nothing within the weeks planned */
    static RoundCall of(
            VehicleHistory history,
            VehicleCase vehicle,
            List<RankedReplacement> lines,
            List<UnmonitoredWheel> unmonitored,
            ReviewSettings settings) {
        List<RankedReplacement> now = lines.stream()
                .filter(l -> l.advice().urgency() == Advice.Urgency.NOW)
                .toList();
        if (!vehicle.deadOnTheRoad().isEmpty() || !now.isEmpty()) {
            return stopNow(history, vehicle, lines, now, unmonitored, settings.costs());
        }
        List<RankedReplacement> atStop = lines.stream()
                .filter(l -> l.advice() == Advice.AT_NEXT_STOP || l.advice() == Advice.WHEN_OFF)
                .toList();
        LocalDate booked = vehicle.stops().booked();
        LocalDate last = vehicle.asOf().plusDays(7L * settings.rounds().weeks());
        if (booked == null || booked.isAfter(last) || atStop.isEmpty()) {
            return null;
        }
        return new RoundCall(
                history.vehicleId(),
                history.vehicle().depot(),
                Kind.BOOKED,
                atStop.size(),
                0,
                0,
                booked,
                0,
                atStop,
                List.of());
    }

    private static RoundCall stopNow(
            VehicleHistory history,
            VehicleCase vehicle,
            List<RankedReplacement> lines,
            List<RankedReplacement> now,
            List<UnmonitoredWheel> unmonitored,
            Costs costs) {
        boolean dead = !vehicle.deadOnTheRoad().isEmpty();
        return new RoundCall(
                history.vehicleId(),
                history.vehicle().depot(),
                dead ? Kind.NO_WARNING : Kind.DUE,
                vehicle.deadOnTheRoad().size()
                        + (int) now.stream()
                                .filter(l -> l.advice() == Advice.REPLACE_NOW)
                                .count(),
                now.stream()
                        .mapToDouble(RankedReplacement::stopSaving)
                        .filter(saving -> saving > 0)
                        .max()
                        .orElse(0),
                vehicle.stops().daysToNext(vehicle.asOf()),
                vehicle.stops().booked(),
                comingIn(vehicle, lines, dead, costs),
                now,
                unmonitored.stream()
                        .filter(w -> w.certainty() == Certainty.KNOWN)
                        .toList());
    }

    /** Set-up and reading as the list has them; going to look at a place that keeps failing counts as a reading. */
    private static double comingIn(VehicleCase vehicle, List<RankedReplacement> lines, boolean dead, Costs costs) {
        double setUp = dead ? costs.plannedVisit() : 0;
        boolean otherwise = dead;
        boolean look = false;
        for (int i = 0; i < lines.size(); i++) {
            RankedReplacement line = lines.get(i);
            look |= line.advice() == Advice.CHECK_PLACE_FIRST;
            if (line.advice() == Advice.REPLACE_NOW) {
                setUp += line.costNow() - costs.piece(vehicle.sensors().get(i).price());
                otherwise = true;
            } else if (line.advice() == Advice.READ_FIRST) {
                setUp += line.costNow();
                otherwise = true;
            }
        }
        return look && !otherwise ? costs.reading() : setUp;
    }
}
