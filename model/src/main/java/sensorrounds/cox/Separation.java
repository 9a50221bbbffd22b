package sensorrounds.cox;

import java.util.Comparator;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Proof that the partial likelihood has no maximum: some score is, at every failure, the highest (or the lowest) of all
 * rows at risk for the unit that failed, and not for all of them. Its coefficient then has no finite estimate. Each
 * column is tried alone, then the direction in which a search ran away. Source: Jacobsen (1989), Scand. J. Stat.
 * 16:335-349, for the condition.
 *
 * @param column the column, or the columns of a direction, joined by " and "
 * @param cause in words
 */
record Separation(String column, String cause) {
    /** Part of a direction's largest coordinate below which a column has no part in it. */
    private static final double PART = 0.05;

    /** Slack for rounding, in standard units. */
    private static final double SLACK = 1e-9;

    static Optional<Separation> find(CoxSample sample, RiskSweep sweep, double[] runaway) {
        for (int j = 0; j < sweep.columns(); j++) {
            int column = j;
            String name = sample.columns().get(j);
            if (leads(sample, row -> sweep.standard(row, column))) {
                return Optional.of(new Separation(name, words("the highest", name)));
            }
            if (leads(sample, row -> -sweep.standard(row, column))) {
                return Optional.of(new Separation(name, words("the lowest", name)));
            }
        }
        double largest = 0;
        for (double b : runaway) {
            largest = Math.max(largest, Math.abs(b));
        }
        double part = PART * largest;
        IntToDoubleFunction score = row -> IntStream.range(0, runaway.length)
                .filter(j -> Math.abs(runaway[j]) >= part)
                .mapToDouble(j -> runaway[j] * sweep.standard(row, j))
                .sum();
        if (largest > 0 && leads(sample, score)) {
            String names = IntStream.range(0, runaway.length)
                    .filter(j -> Math.abs(runaway[j]) >= part)
                    .mapToObj(sample.columns()::get)
                    .reduce((a, b) -> a + " and " + b)
                    .orElseThrow();
            return Optional.of(new Separation(names, words("the highest combination", names)));
        }
        return Optional.empty();
    }

    private static String words(String extreme, String name) {
        return "at every failure the unit that failed had " + extreme + " " + name
                + " of all at risk, so no finite coefficient fits best; merge groups or leave the column out";
    }

    private static boolean leads(CoxSample sample, IntToDoubleFunction score) {
        int[] strata = IntStream.range(0, sample.size())
                .map(sample::stratum)
                .sorted()
                .distinct()
                .toArray();
        boolean strictly = false;
        for (int stratum : strata) {
            Lead lead = leadIn(sample, stratum, score);
            if (lead == Lead.NONE) {
                return false;
            }
            strictly |= lead == Lead.STRICT;
        }
        return strictly;
    }

    /** How the failures of a stratum stand to the rows at risk. */
    private enum Lead {
        /** Some failure stands below another row. */
        NONE,
        /** All at one height. */
        LEVEL,
        STRICT
    }

    private static Lead leadIn(CoxSample sample, int stratum, IntToDoubleFunction score) {
        int[] rows = IntStream.range(0, sample.size())
                .filter(i -> sample.stratum(i) == stratum)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -sample.exit(i)))
                .mapToInt(Integer::intValue)
                .toArray();
        PriorityQueue<Integer> highest =
                new PriorityQueue<>(Comparator.comparingDouble((Integer i) -> -score.applyAsDouble(i)));
        PriorityQueue<Integer> lowest = new PriorityQueue<>(Comparator.comparingDouble(score::applyAsDouble));
        boolean strictly = false;
        for (int i = 0; i < rows.length; ) {
            double age = sample.exit(rows[i]);
            double least = Double.POSITIVE_INFINITY;
            for (; i < rows.length && sample.exit(rows[i]) == age; i++) {
                highest.add(rows[i]);
                lowest.add(rows[i]);
                if (sample.failed(rows[i])) {
                    least = Math.min(least, score.applyAsDouble(rows[i]));
                }
            }
            if (least < Double.POSITIVE_INFINITY) {
                dropEntered(sample, highest, age);
                dropEntered(sample, lowest, age);
                double top = score.applyAsDouble(highest.element());
                double slack = SLACK * Math.max(1, Math.abs(top));
                if (least < top - slack) {
                    return Lead.NONE;
                }
                strictly |= score.applyAsDouble(lowest.element()) < least - slack;
            }
        }
        return strictly ? Lead.STRICT : Lead.LEVEL;
    }

    /** Going back in age, a row that entered at or after this age is never at risk again. */
    private static void dropEntered(CoxSample sample, PriorityQueue<Integer> queue, double age) {
        while (sample.entry(queue.element()) >= age) {
            queue.remove();
        }
    }
}
