package sensorrounds.accuracy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.KaplanMeierFit;
import sensorrounds.survival.LifetimeSample;

/**
 * Do units given a risk of so many percent fail that often? Units in groups of rising predicted risk; in each, the mean
 * prediction for a horizon beside the Kaplan-Meier share that failed by it, and failures seen beside failures expected over
 * the time actually watched, which also holds where units were lost or entered late. Equal predictions stay in one group,
 * so there may be fewer groups than asked for.
 *
 * @param groups by rising risk
 * @param overall all units together
 */
public record CalibrationTable(List<Group> groups, Group overall) {
    public CalibrationTable {
        groups = List.copyOf(groups);
    }

    /**
     * One group.
     *
     * @param lives weight of its units
     * @param predicted mean predicted chance of failing by the horizon
     * @param observed share that failed by the horizon, with 95 % log-log limits; NaN where nobody was watched that long
     *     and some were left, or where units entered late
     * @param count failures seen and expected over all time watched
     */
    public record Group(double lives, double predicted, Estimate observed, ObservedExpected count) {}

    /**
     * The table.
     *
     * @param groups how many groups, at least 1; ten is common practice
     * @param risk predicted chance of failing by the horizon, from 0 to 1, one per unit
     * @param expected cumulative hazard predicted for each unit over its own time under observation
     * @throws IllegalArgumentException without units, or if a prediction is out of its range
     */
    public static CalibrationTable of(int groups, double horizon, FollowUp units, double[] risk, double[] expected) {
        units.requirePredictions("risks", risk);
        units.requirePredictions("expected failures", expected);
        for (int i = 0; i < risk.length; i++) {
            if (!(risk[i] >= 0 && risk[i] <= 1 && expected[i] >= 0)) {
                throw new IllegalArgumentException(
                        "unit " + i + ": needs a risk between 0 and 1 and an expectation from 0" + " up, not " + risk[i]
                                + " and " + expected[i]);
            }
        }
        if (units.size() == 0 || groups < 1) {
            throw new IllegalArgumentException("a calibration table needs units and a group, not " + units.size()
                    + " units in " + groups + " groups");
        }
        int[] order = FollowUp.order(risk);
        double all = Arrays.stream(order).mapToDouble(units::weight).sum();
        List<Group> rows = new ArrayList<>();
        List<Integer> members = new ArrayList<>();
        double seen = 0;
        for (int k = 0; k < order.length; k++) {
            members.add(order[k]);
            seen += units.weight(order[k]);
            boolean last = k == order.length - 1;
            boolean full = seen >= all * (rows.size() + 1) / groups * (1 - 1e-12);
            if (last || (full && risk[order[k]] < risk[order[k + 1]])) {
                rows.add(group(members, horizon, units, risk, expected));
                members.clear();
            }
        }
        List<Integer> everybody = Arrays.stream(order).boxed().toList();
        return new CalibrationTable(rows, group(everybody, horizon, units, risk, expected));
    }

    private static Group group(
            List<Integer> members, double horizon, FollowUp units, double[] risk, double[] expected) {
        double lives = 0;
        double predicted = 0;
        double failures = 0;
        double hazard = 0;
        for (int i : members) {
            lives += units.weight(i);
            predicted += units.weight(i) * risk[i];
            failures += units.failed(i) ? units.weight(i) : 0;
            hazard += units.weight(i) * expected[i];
        }
        return new Group(
                lives, predicted / lives, observed(members, horizon, units), ObservedExpected.of(failures, hazard));
    }

    private static Estimate observed(List<Integer> members, double horizon, FollowUp units) {
        Estimate unknown = new Estimate(Double.NaN, Double.NaN, Double.NaN);
        if (members.stream().anyMatch(i -> units.entry(i) > 0)) {
            return unknown;
        }
        double[] exit = members.stream().mapToDouble(units::exit).toArray();
        double[] upper = members.stream()
                .mapToDouble(i -> units.failed(i) ? units.exit(i) : Double.POSITIVE_INFINITY)
                .toArray();
        double[] weight = members.stream().mapToDouble(units::weight).toArray();
        KaplanMeierFit fit =
                KaplanMeier.withDefaults().fit(LifetimeSample.of(new double[exit.length], exit, upper, weight));
        double to = fit.survival().to();
        boolean allFailed = fit.survival().at(to) == 0;
        if (horizon > to && !allFailed) {
            return unknown;
        }
        double at = Math.min(horizon, to);
        return new Estimate(
                1 - fit.survival().at(at),
                1 - fit.upper().at(at),
                1 - fit.lower().at(at));
    }
}
