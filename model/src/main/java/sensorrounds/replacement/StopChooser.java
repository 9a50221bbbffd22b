package sensorrounds.replacement;

import java.util.BitSet;
import java.util.List;
import sensorrounds.replacement.VehicleCase.Sight;

/** Weighs bringing a vehicle in now, and reading it first, against waiting; see {@link ReplacementPlanner}. */
final class StopChooser {
    private final Costs costs;
    private final ReplacementSettings settings;
    /** Against waiting for the next chance, and for the next list. */
    private final Wait untilNextChance;

    private final Wait untilNextList;

    /** What waiting so many days may bring about. */
    private record Wait(int days, double calledOut) {
        static Wait of(int days, Costs costs, ReplacementSettings settings) {
            // The chance that a sensor dead already is called out for before then.
            return new Wait(days, costs.breakdown() * -Math.expm1(-days / settings.callOutDays()));
        }
    }

    /** @param waitDays days to the next chance */
    StopChooser(Costs costs, ReplacementSettings settings, int waitDays) {
        this.costs = costs;
        this.settings = settings;
        this.untilNextChance = Wait.of(waitDays, costs, settings);
        this.untilNextList = Wait.of(Math.min(waitDays, settings.listDays()), costs, settings);
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
            SensorValue.Worth worth = v == null ? null : v.worth(0, untilNextChance.days);
            own[i] = v == null ? 0 : worth.gain();
            gains[i] = v == null ? Double.NEGATIVE_INFINITY : worth.over(settings.hurdle());
            dead[i] = v == null ? 0 : v.failedAlready();
            noneDead *= 1 - dead[i];
        }
        boolean comesAnyway = !vehicle.deadOnTheRoad().isEmpty() && vehicle.sight() == Sight.KNOWN;
        double setUp = comesAnyway ? 0 : costs.plannedVisit();
        SharedStop.Choice best = SharedStop.best(gains, dead, untilNextChance.calledOut);
        if (!comesAnyway && !dueBeforeNextList(best.chosen(), values, dead, noneDead)) {
            // What pays over a long wait may still do so after the next list; what cannot wait for that stands alone.
            for (int i : best.chosen().stream().toArray()) {
                BitSet alone = new BitSet();
                alone.set(i);
                gains[i] = dueBeforeNextList(alone, values, dead, noneDead) ? gains[i] : Double.NEGATIVE_INFINITY;
            }
            best = SharedStop.best(gains, dead, untilNextChance.calledOut);
        }
        StopPlan fit = fit(best.chosen(), own, dead, values, noneDead, setUp);
        boolean fits = fit.size() > 0
                && best.value() > (1 + settings.hurdle()) * setUp
                && (comesAnyway || fit.saving() >= settings.minimumSaving());
        double reading = (1 - noneDead) * (untilNextChance.calledOut - costs.plannedVisit()) - costs.reading();
        boolean reads = reading >= settings.minimumSaving();
        boolean readsFirst = vehicle.sight() == Sight.KNOWN
                ? !comesAnyway && reads && (!fits || reading > fit.saving())
                : fits || reads;
        if (readsFirst) {
            return read(fits ? best.chosen() : new BitSet(), dead, values, reading);
        }
        return fits ? fit : StopPlan.none();
    }

    /**
     * Whether a stop for these sensors is due now rather than when the list is made again: what failures until then would
     * cost, each of them sparing its share of the set-up, is over the days given up.
     */
    private boolean dueBeforeNextList(BitSet chosen, List<SensorValue> values, double[] dead, double noneDead) {
        double spared = 1 - costs.plannedVisit() / Math.max(1, chosen.cardinality()) / costs.breakdown();
        double over = spared * untilNextList.calledOut * noneDead * Math.expm1(logs(chosen, dead));
        for (int i : chosen.stream().toArray()) {
            SensorValue.Worth worth = values.get(i).worthAtOnce(untilNextList.days);
            over += spared * worth.saved() - (1 + settings.hurdle()) * worth.givenUp();
        }
        return over > 0;
    }

    private StopPlan fit(
            BitSet chosen, double[] own, double[] dead, List<SensorValue> values, double noneDead, double setUp) {
        double logs = logs(chosen, dead);
        double shared = untilNextChance.calledOut * noneDead * Math.expm1(logs);
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
                lines.set(i, lines.get(i) || dead[i] * untilNextChance.calledOut > settings.hurdle() * v.piece());
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
