package sensorrounds.accuracy;

import java.util.Arrays;
import java.util.TreeMap;

/**
 * Chance G of not being lost from sight by an age: the Kaplan-Meier curve of the censorings, failures at the same age
 * going first, with delayed entry. A unit that entered at e is still in sight just before t with chance G(t-) / G(e), given
 * that losing sight has nothing to do with failing or with the age at entry.
 */
final class CensoringCurve {
    private final FollowUp units;
    /** Ages with censorings, rising. */
    private final double[] ages;

    private final double[] atRisk;
    private final double[] censored;
    /** G from each age on. */
    private final double[] curve;

    private CensoringCurve(FollowUp units, double[] ages, double[] atRisk, double[] censored, double[] curve) {
        this.units = units;
        this.ages = ages;
        this.atRisk = atRisk;
        this.censored = censored;
        this.curve = curve;
    }

    static CensoringCurve of(FollowUp units) {
        TreeMap<Double, double[]> leaving = new TreeMap<>();
        double[] entries = new double[units.size()];
        double[] exits = new double[units.size()];
        for (int i = 0; i < units.size(); i++) {
            double[] sums = leaving.computeIfAbsent(units.exit(i), age -> new double[2]);
            sums[units.failed(i) ? 1 : 0] += units.weight(i);
            entries[i] = units.entry(i);
            exits[i] = units.exit(i);
        }
        leaving.values().removeIf(sums -> sums[0] == 0);
        int m = leaving.size();
        double[] ages =
                leaving.keySet().stream().mapToDouble(Double::doubleValue).toArray();
        double[] atRisk = new double[m];
        double[] censored = new double[m];
        double[] curve = new double[m];
        SuffixSums byExit = SuffixSums.of(exits, units::weight);
        SuffixSums byEntry = SuffixSums.of(entries, units::weight);
        double g = 1;
        for (int a = 0; a < m; a++) {
            double[] sums = leaving.get(ages[a]);
            atRisk[a] = byExit.from(ages[a]) - byEntry.from(ages[a]);
            censored[a] = sums[0];
            double left = atRisk[a] - sums[1] - sums[0];
            g *= left > 1e-12 * atRisk[a] ? left / (atRisk[a] - sums[1]) : 0;
            curve[a] = g;
        }
        return new CensoringCurve(units, ages, atRisk, censored, curve);
    }

    /** G(age). */
    double at(double age) {
        int index = Arrays.binarySearch(ages, age);
        int step = index >= 0 ? index : -index - 2;
        return step < 0 ? 1 : curve[step];
    }

    /** G(age-). */
    double before(double age) {
        int index = Arrays.binarySearch(ages, age);
        int step = index >= 0 ? index - 1 : -index - 2;
        return step < 0 ? 1 : curve[step];
    }

    /**
     * Inverse chance of having kept a unit in sight as far as an age asks: to its failure, or past the age; 0 where it was
     * lost before, and 0 for a unit that entered later.
     *
     * @throws IllegalArgumentException if nobody could have been kept in sight that far
     */
    double[] weightsTo(double age) {
        double[] weights = new double[units.size()];
        for (int i = 0; i < weights.length; i++) {
            if (units.entry(i) >= age || (units.exit(i) <= age && !units.failed(i))) {
                continue;
            }
            double kept = units.exit(i) <= age ? before(units.exit(i)) : at(age);
            double entered = at(units.entry(i));
            if (!(kept > 0 && entered > 0)) {
                throw new IllegalArgumentException("predictions cannot be judged at age " + age + ": by age "
                        + emptyFrom() + " everybody then in sight was lost; ask for an earlier age");
            }
            weights[i] = entered / kept;
        }
        return weights;
    }

    private double emptyFrom() {
        for (int a = 0; a < ages.length; a++) {
            if (curve[a] == 0) {
                return ages[a];
            }
        }
        return Double.NaN;
    }

    /**
     * What each unit does to the mean of these contributions through the estimate of G, to first order.
     *
     * @param contributions one per unit, each weighted by {@link #weightsTo} of this age
     * @param lives weight the mean is taken over
     */
    double[] influence(double[] contributions, double age, double lives) {
        double[] entries = new double[units.size()];
        double[] exits = new double[units.size()];
        Arrays.setAll(entries, units::entry);
        Arrays.setAll(exits, units::exit);
        SuffixSums byExit = SuffixSums.of(exits, i -> units.weight(i) * contributions[i]);
        SuffixSums byEntry = SuffixSums.of(entries, i -> units.weight(i) * contributions[i]);
        double[] share = new double[ages.length];
        double[] cumulated = new double[ages.length + 1];
        for (int a = 0; a < ages.length; a++) {
            // Contributions of units in sight past this age: their weights hang on what was lost here.
            share[a] = (byExit.beyond(ages[a]) - byEntry.from(ages[a])) / lives;
            cumulated[a + 1] = cumulated[a] + share[a] * lives * censored[a] / (atRisk[a] * atRisk[a]);
        }
        double[] result = new double[units.size()];
        for (int i = 0; i < result.length; i++) {
            double until = Math.min(units.exit(i), age);
            if (units.entry(i) >= until) {
                continue;
            }
            result[i] = cumulated[atOrBelow(units.entry(i))] - cumulated[atOrBelow(until)];
            if (!units.failed(i) && units.exit(i) <= age) {
                int a = Arrays.binarySearch(ages, units.exit(i));
                result[i] += share[a] * lives / atRisk[a];
            }
        }
        return result;
    }

    /** Number of ages with censorings at or below this one. */
    private int atOrBelow(double age) {
        int index = Arrays.binarySearch(ages, age);
        return index >= 0 ? index + 1 : -index - 1;
    }
}
