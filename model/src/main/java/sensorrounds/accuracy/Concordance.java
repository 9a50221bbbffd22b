package sensorrounds.accuracy;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * How often, of two units, the one predicted to be at higher risk failed first. A pair is usable when one failed at an age
 * t at which the other was under observation and lived on: the other's entry lies before t, and its exit after t, or at t
 * without failing. Two failures at one age are no pair. Equal risks count one half. O(n log n).
 *
 * <p>Sources: Harrell, Lee and Mark (1996), Stat. Med. 15:361-387; Uno et al. (2011), Stat. Med. 30:1105-1117; error by the
 * infinitesimal jackknife: how much each unit moves the value, Therneau and Atkinson, "Concordance", documentation of the R
 * package survival.
 *
 * @param value share of usable pairs in the right order, ties one half; NaN without a usable pair. 0.5 is chance
 * @param standardError of the value; Uno's censoring weights are taken as known in it
 * @param concordant weight of pairs in the right order
 * @param discordant weight of pairs in the wrong order
 * @param tiedRisk weight of usable pairs with equal risks
 * @param tiedAge pairs that failed at one age, with different risks
 * @param tiedBoth pairs that failed at one age, with equal risks
 */
public record Concordance(
        double value,
        double standardError,
        double concordant,
        double discordant,
        double tiedRisk,
        double tiedAge,
        double tiedBoth) {

    /**
     * Harrell's, each usable pair counted once. It depends on how long units were followed.
     *
     * @param risk one per unit, higher for sooner
     */
    public static Concordance harrell(FollowUp units, double[] risk) {
        units.requirePredictions("risks", risk);
        return new Count(units, risk, i -> 1, i -> 1).result();
    }

    /**
     * Uno's: failures before tau, each pair weighted by the inverse chance that both were kept in sight until then, so that
     * the value does not depend on the pattern of losses. Under delayed entry the chance is that since each unit's entry.
     *
     * @param tau age below which failures count
     * @throws IllegalArgumentException if a failure below tau lies where everybody in sight was lost
     */
    public static Concordance uno(FollowUp units, double[] risk, double tau) {
        units.requirePredictions("risks", risk);
        CensoringCurve curve = CensoringCurve.of(units);
        double[] kept = new double[units.size()];
        for (int i = 0; i < kept.length; i++) {
            boolean counts = units.failed(i) && units.exit(i) < tau;
            kept[i] = counts ? curve.before(units.exit(i)) : Double.POSITIVE_INFINITY;
            if (!(kept[i] > 0)) {
                throw new IllegalArgumentException("a failure at age " + units.exit(i)
                        + " lies beyond an age at which everybody in sight was lost; ask for an earlier tau");
            }
        }
        return new Count(
                        units, risk, i -> curve.at(units.entry(i)) / (kept[i] * kept[i]), i -> curve.at(units.entry(i)))
                .result();
    }

    /** Counts pairs. Failures carry a factor as the first to fail, every unit one as the other of the pair. */
    private static final class Count {
        private final FollowUp units;
        private final double[] risk;
        private final double[] first;
        private final double[] other;
        /** By unit, per unit of its weight: its pairs in the right order (ties one half), and all its pairs. */
        private final double[] right;

        private final double[] all;
        private final int[] byExit;
        private final int[] byEntry;

        Count(FollowUp units, double[] risk, IntToDoubleFunction first, IntToDoubleFunction other) {
            this.units = units;
            this.risk = risk;
            int n = units.size();
            this.first = new double[n];
            this.other = new double[n];
            right = new double[n];
            all = new double[n];
            double[] exits = new double[n];
            double[] entries = new double[n];
            for (int i = 0; i < n; i++) {
                this.first[i] = units.failed(i) ? first.applyAsDouble(i) : 0;
                this.other[i] = other.applyAsDouble(i);
                exits[i] = units.exit(i);
                entries[i] = units.entry(i);
            }
            byExit = FollowUp.order(exits);
            byEntry = FollowUp.order(entries);
        }

        Concordance result() {
            double[] pairs = asFirst();
            asOther();
            double usable = pairs[0] + pairs[1] + pairs[2];
            double value = (pairs[0] + pairs[2] / 2) / usable;
            double variance = 0;
            for (int i = 0; i < right.length; i++) {
                double moved = (right[i] - value * all[i]) / usable;
                variance += units.weight(i) * moved * moved;
            }
            double[] ties = tiedAges();
            return new Concordance(value, Math.sqrt(variance), pairs[0], pairs[1], pairs[2], ties[0], ties[1]);
        }

        /** Going back in age over the units in sight: what each failure is compared with. */
        private double[] asFirst() {
            RankSums inSight = new RankSums(risk);
            double[] pairs = new double[3];
            int entered = byEntry.length - 1;
            for (int k = byExit.length - 1; k >= 0; ) {
                double age = units.exit(byExit[k]);
                int start = k;
                while (start >= 0 && units.exit(byExit[start]) == age) {
                    start--;
                }
                for (; entered >= 0 && units.entry(byEntry[entered]) >= age; entered--) {
                    int unit = byEntry[entered];
                    inSight.add(inSight.rank(risk[unit]), -units.weight(unit) * other[unit]);
                }
                addAt(inSight, start, k, false);
                for (int m = start + 1; m <= k; m++) {
                    int unit = byExit[m];
                    if (first[unit] > 0) {
                        int rank = inSight.rank(risk[unit]);
                        double below = inSight.below(rank);
                        double at = inSight.at(rank);
                        double above = inSight.above(rank);
                        pairs[0] += units.weight(unit) * first[unit] * below;
                        pairs[1] += units.weight(unit) * first[unit] * above;
                        pairs[2] += units.weight(unit) * first[unit] * at;
                        right[unit] += first[unit] * (below + at / 2);
                        all[unit] += first[unit] * (below + at + above);
                    }
                }
                addAt(inSight, start, k, true);
                k = start;
            }
            return pairs;
        }

        private void addAt(RankSums inSight, int start, int end, boolean failed) {
            for (int m = start + 1; m <= end; m++) {
                int unit = byExit[m];
                if (units.failed(unit) == failed) {
                    inSight.add(inSight.rank(risk[unit]), units.weight(unit) * other[unit]);
                }
            }
        }

        /** Going on in age over the failures so far: what each unit outlived since its entry. */
        private void asOther() {
            RankSums failures = new RankSums(risk);
            int entered = 0;
            for (int k = 0; k < byExit.length; ) {
                double age = units.exit(byExit[k]);
                int end = k;
                while (end < byExit.length && units.exit(byExit[end]) == age) {
                    end++;
                }
                // Failures at the very age of an entry are not outlived under observation.
                for (; entered < byEntry.length && units.entry(byEntry[entered]) < age; entered++) {
                    outlived(failures, byEntry[entered], -1);
                }
                for (int m = k; m < end; m++) {
                    if (units.failed(byExit[m])) {
                        outlived(failures, byExit[m], 1);
                    }
                }
                for (int m = k; m < end; m++) {
                    int unit = byExit[m];
                    if (first[unit] > 0) {
                        failures.add(failures.rank(risk[unit]), units.weight(unit) * first[unit]);
                    }
                }
                for (int m = k; m < end; m++) {
                    if (!units.failed(byExit[m])) {
                        outlived(failures, byExit[m], 1);
                    }
                }
                k = end;
            }
        }

        private void outlived(RankSums failures, int unit, int sign) {
            int rank = failures.rank(risk[unit]);
            double above = failures.above(rank);
            double at = failures.at(rank);
            right[unit] += sign * other[unit] * (above + at / 2);
            all[unit] += sign * other[unit] * (above + at + failures.below(rank));
        }

        /** Pairs that failed at one age: with different risks, and with equal ones. */
        private double[] tiedAges() {
            Integer[] order = new Integer[risk.length];
            Arrays.setAll(order, i -> i);
            Arrays.sort(order, (a, b) -> {
                int byAge = Double.compare(units.exit(a), units.exit(b));
                return byAge != 0 ? byAge : Double.compare(risk[a], risk[b]);
            });
            double pairs = 0;
            double equal = 0;
            double atAge = 0;
            double atBoth = 0;
            Integer last = null;
            for (Integer unit : order) {
                if (!units.failed(unit)) {
                    continue;
                }
                boolean sameAge = last != null && units.exit(unit) == units.exit(last);
                boolean sameRisk = sameAge && risk[unit] == risk[last];
                atAge = sameAge ? atAge : 0;
                atBoth = sameRisk ? atBoth : 0;
                double weight = units.weight(unit);
                double within = weight * (weight - 1) / 2;
                pairs += atAge * weight + within;
                equal += atBoth * weight + within;
                atAge += weight;
                atBoth += weight;
                last = unit;
            }
            return new double[] {pairs - equal, equal};
        }
    }
}
