package sensorrounds.replacement;

import java.util.BitSet;
import java.util.List;
import sensorrounds.replacement.VehicleCase.Sight;

/** Weighs bringing a vehicle in now, and reading it first, against waiting; see {@link ReplacementPlanner}. */
final class StopChooser {
    private final Costs costs;
    private final ReplacementSettings settings;
    private final int waitDays;
    /** Cost of a breakdown times the chance that a sensor dead already causes it before the next chance. */
    private final double calledOut;

    /** @param waitDays days to the next chance */
    StopChooser(Costs costs, ReplacementSettings settings, int waitDays) {
        this.costs = costs;
        this.settings = settings;
        this.waitDays = waitDays;
        this.calledOut = costs.breakdown() * -Math.expm1(-waitDays / settings.callOutDays());
    }

    /** @param values of the vehicle's sensors; null for one that is not to be part of a stop */
    StopPlan choose(VehicleCase vehicle, List<SensorValue> values) {
        int n = values.size();
        double[] own = new double[n];
        double[] gains = new double[n];
        double[] dead = new double[n];
        double noneDead = 1;
        for (int i = 0; i < n; i++) {
            SensorValue v = values.get(i);
            own[i] = v == null ? 0 : v.gainAhead(waitDays);
            gains[i] = v == null ? Double.NEGATIVE_INFINITY : own[i] - settings.hurdle() * v.piece();
            dead[i] = v == null ? 0 : v.failedAlready();
            noneDead *= 1 - dead[i];
        }
        boolean comesAnyway = !vehicle.deadOnTheRoad().isEmpty() && vehicle.sight() == Sight.KNOWN;
        double setUp = comesAnyway ? 0 : costs.plannedVisit();
        SharedStop.Choice best = SharedStop.best(gains, dead, calledOut);
        StopPlan fit = fit(best.chosen(), own, dead, values, noneDead, setUp);
        boolean fits = fit.size() > 0
                && best.value() > (1 + settings.hurdle()) * setUp
                && (comesAnyway || fit.saving() >= settings.minimumSaving());
        double reading = (1 - noneDead) * (calledOut - costs.plannedVisit()) - costs.reading();
        boolean reads = reading >= settings.minimumSaving();
        boolean readsFirst = vehicle.sight() == Sight.KNOWN
                ? !comesAnyway && reads && (!fits || reading > fit.saving())
                : fits || reads;
        if (readsFirst) {
            return read(fits ? best.chosen() : new BitSet(), dead, values, reading);
        }
        return fits ? fit : StopPlan.none();
    }

    private StopPlan fit(
            BitSet chosen, double[] own, double[] dead, List<SensorValue> values, double noneDead, double setUp) {
        double logs = logs(chosen, dead);
        double shared = calledOut * noneDead * Math.expm1(logs);
        double[] savings = new double[own.length];
        double[] cost = new double[own.length];
        double positive = 0;
        for (int i : chosen.stream().toArray()) {
            savings[i] = own[i] + (logs > 0 ? shared * log(dead[i]) / logs : 0);
            cost[i] = values.get(i).piece();
            positive += Math.max(0, savings[i]);
        }
        double total = 0;
        for (int i : chosen.stream().toArray()) {
            // The set-up is borne by what the sensors bring, so that none of them seems to cost money.
            double share = positive > 0 ? setUp * Math.max(0, savings[i]) / positive : setUp / chosen.cardinality();
            savings[i] -= share;
            cost[i] += share;
            total += savings[i];
        }
        return new StopPlan(Advice.REPLACE_NOW, chosen, cost, savings, total);
    }

    private StopPlan read(BitSet fitted, double[] dead, List<SensorValue> values, double saving) {
        BitSet lines = (BitSet) fitted.clone();
        BitSet all = new BitSet();
        for (int i = 0; i < dead.length; i++) {
            SensorValue v = values.get(i);
            if (v != null) {
                all.set(i);
                lines.set(i, lines.get(i) || dead[i] * calledOut > settings.hurdle() * v.piece());
            }
        }
        // Many small chances can make a reading worth while where no single one would.
        BitSet read = lines.isEmpty() ? all : lines;
        double logs = logs(read, dead);
        double[] savings = new double[dead.length];
        double[] cost = new double[dead.length];
        for (int i : read.stream().toArray()) {
            double share = logs > 0 ? log(dead[i]) / logs : 1.0 / read.cardinality();
            savings[i] = saving * share;
            cost[i] = costs.reading() * share;
        }
        return new StopPlan(Advice.READ_FIRST, read, cost, savings, saving);
    }

    private static double logs(BitSet of, double[] dead) {
        return of.stream().mapToDouble(i -> log(dead[i])).sum();
    }

    private static double log(double p) {
        return -Math.log1p(-Math.min(SharedStop.MOST, p));
    }
}
