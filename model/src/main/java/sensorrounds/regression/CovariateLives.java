package sensorrounds.regression;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Lives with covariates in flat arrays; immutable. A life as in {@link sensorrounds.survival.LifetimeSample}: alive at
 * entry, failed in (lower, upper], lower equal to upper for an exact age, upper infinite when no failure was seen; ages
 * in any one unit. Covariates are in their own units; nothing need be standardised.
 */
public final class CovariateLives implements LifeSource, Serializable {
    /** Rows of a block; sums run within blocks and then over blocks, so that threads do not change the answer. */
    private static final int BLOCK = 4096;
    /** A search among more lives than this begins where one among a part of them ended. */
    private static final int THINNED = 20_000;

    private final String[] names;
    private final double[] logEntry;
    private final double[] logLower;
    private final double[] logUpper;
    private final double[] weight;
    private final double[] covariates;
    private final int[] clusters;
    private final Threads threads;

    /** Whether passes over the lives use one thread or the common pool; the answers are equal to the last bit. */
    public enum Threads {
        ONE,
        COMMON_POOL
    }

    private CovariateLives(
            String[] names,
            double[] logEntry,
            double[] logLower,
            double[] logUpper,
            double[] weight,
            double[] covariates,
            int[] clusters,
            Threads threads) {
        this.names = names;
        this.logEntry = logEntry;
        this.logLower = logLower;
        this.logUpper = logUpper;
        this.weight = weight;
        this.covariates = covariates;
        this.clusters = clusters;
        this.threads = threads;
    }

    /**
     * Lives without covariates.
     *
     * @param upper positive infinity where no failure was seen
     * @throws IllegalArgumentException if the lengths differ, or a life breaks 0 <= entry <= lower <= upper, entry <
     *     upper, finite lower, positive finite weight; the message names the row
     */
    public static CovariateLives of(double[] entry, double[] lower, double[] upper, double[] weight) {
        int n = entry.length;
        if (lower.length != n || upper.length != n || weight.length != n) {
            throw new IllegalArgumentException("lives need arrays of one length, not entry " + n + ", lower "
                    + lower.length + ", upper " + upper.length + ", weight " + weight.length);
        }
        for (int i = 0; i < n; i++) {
            boolean ordered = 0 <= entry[i] && entry[i] <= lower[i] && lower[i] <= upper[i] && entry[i] < upper[i];
            boolean finite = lower[i] < Double.POSITIVE_INFINITY && weight[i] < Double.POSITIVE_INFINITY;
            if (!(ordered && finite && weight[i] > 0)) {
                throw new IllegalArgumentException("not a life in row " + i + ": entry " + entry[i] + ", lower "
                        + lower[i] + ", upper " + upper[i] + ", weight " + weight[i]
                        + "; needs 0 <= entry <= lower <= upper, entry < upper, finite lower, weight > 0");
            }
        }
        return new CovariateLives(
                new String[0], logs(entry), logs(lower), logs(upper), weight.clone(), new double[0], null, Threads.ONE);
    }

    private static double[] logs(double[] ages) {
        return Arrays.stream(ages).map(Math::log).toArray();
    }

    /**
     * One covariate more.
     *
     * @throws IllegalArgumentException if the name is taken, the length differs, or a value is not finite
     */
    public CovariateLives withColumn(String name, double[] values) {
        int n = size();
        int p = names.length;
        if (values.length != n || List.of(names).contains(name)) {
            throw new IllegalArgumentException("column '" + name + "' needs a name of its own among " + List.of(names)
                    + " and " + n + " values, not " + values.length);
        }
        double[] wider = new double[n * (p + 1)];
        for (int i = 0; i < n; i++) {
            if (!Double.isFinite(values[i])) {
                throw new IllegalArgumentException("column '" + name + "', row " + i + ": " + values[i]
                        + " is no finite number; leave the life out or give the covariate a value");
            }
            System.arraycopy(covariates, i * p, wider, i * (p + 1), p);
            wider[i * (p + 1) + p] = values[i];
        }
        String[] more = Arrays.copyOf(names, p + 1);
        more[p] = name;
        return new CovariateLives(more, logEntry, logLower, logUpper, weight, wider, clusters, threads);
    }

    /**
     * The same lives with these covariates only, none for no names.
     *
     * @throws IllegalArgumentException if a name is unknown
     */
    public CovariateLives only(String... kept) {
        int n = size();
        double[] x = new double[n * kept.length];
        for (int j = 0; j < kept.length; j++) {
            int column = List.of(names).indexOf(kept[j]);
            if (column < 0) {
                throw new IllegalArgumentException("no column '" + kept[j] + "'; there are " + List.of(names));
            }
            for (int i = 0; i < n; i++) {
                x[i * kept.length + j] = covariates[i * names.length + column];
            }
        }
        return new CovariateLives(kept.clone(), logEntry, logLower, logUpper, weight, x, clusters, threads);
    }

    /**
     * Names the cluster of each life, the vehicle say, for errors that allow for likeness within it.
     *
     * @param ids any numbers from 0; memory grows with the largest
     */
    public CovariateLives withClusters(int[] ids) {
        if (ids.length != size() || Arrays.stream(ids).anyMatch(id -> id < 0)) {
            throw new IllegalArgumentException("clusters need " + size() + " numbers from 0, not " + ids.length
                    + " or a negative one; number them in any order");
        }
        return new CovariateLives(names, logEntry, logLower, logUpper, weight, covariates, ids.clone(), threads);
    }

    public CovariateLives with(Threads newThreads) {
        return new CovariateLives(names, logEntry, logLower, logUpper, weight, covariates, clusters, newThreads);
    }

    /** The lives of these rows, in that order. */
    public CovariateLives rows(int[] rows) {
        int p = names.length;
        double[] x = new double[rows.length * p];
        for (int i = 0; i < rows.length; i++) {
            System.arraycopy(covariates, rows[i] * p, x, i * p, p);
        }
        return new CovariateLives(
                names,
                pick(logEntry, rows),
                pick(logLower, rows),
                pick(logUpper, rows),
                pick(weight, rows),
                x,
                clusters == null
                        ? null
                        : Arrays.stream(rows).map(i -> clusters[i]).toArray(),
                threads);
    }

    private static double[] pick(double[] all, int[] rows) {
        return Arrays.stream(rows).mapToDouble(i -> all[i]).toArray();
    }

    /** Number of rows. */
    public int size() {
        return weight.length;
    }

    @Override
    public List<String> names() {
        return List.of(names);
    }

    @Override
    public LifeSummary summary() {
        IntStream blocks = IntStream.range(0, blocks());
        LifeSummary[] parts = (threads == Threads.ONE ? blocks : blocks.parallel())
                .mapToObj(b -> summary(b * BLOCK, Math.min(size(), (b + 1) * BLOCK)))
                .toArray(LifeSummary[]::new);
        LifeSummary total = LifeSummary.empty(names.length);
        for (LifeSummary part : parts) {
            total.add(part);
        }
        return total;
    }

    private LifeSummary summary(int from, int to) {
        LifeSummary part = LifeSummary.empty(names.length);
        double[] x = new double[names.length];
        for (int i = from; i < to; i++) {
            System.arraycopy(covariates, i * x.length, x, 0, x.length);
            part.add(logEntry[i], logLower[i], logUpper[i], weight[i], x);
        }
        return part;
    }

    @Override
    public LikelihoodSums sums(Design design, double parameter, double[] point) {
        IntStream blocks = IntStream.range(0, blocks());
        LikelihoodSums[] parts = (threads == Threads.ONE ? blocks : blocks.parallel())
                .mapToObj(b -> {
                    LikelihoodPass pass = new LikelihoodPass(design, parameter, point);
                    int to = Math.min(size(), (b + 1) * BLOCK);
                    for (int i = b * BLOCK; i < to; i++) {
                        pass.add(logEntry[i], logLower[i], logUpper[i], weight[i], covariates, i * names.length);
                    }
                    return pass.sums();
                })
                .toArray(LikelihoodSums[]::new);
        LikelihoodSums total = new LikelihoodSums(design.slopes());
        for (LikelihoodSums part : parts) {
            total.add(part);
        }
        return total;
    }

    @Override
    public boolean clustered() {
        return clusters != null;
    }

    @Override
    public ClusterSteps clusterSteps(Design design, double[] point, double[][] information) {
        int[] order = byCluster();
        ClusterSteps steps = new ClusterSteps(information);
        int to;
        for (int from = 0; from < order.length; from = to) {
            to = from + 1;
            while (to < order.length && clusters[order[to]] == clusters[order[from]]) {
                to++;
            }
            int[] rows = Arrays.copyOfRange(order, from, to);
            steps.add(
                    () -> rows(rows),
                    FivePoints.at((parameter, slopes) -> sums(rows, design, parameter, slopes), design, point));
        }
        return steps;
    }

    private LikelihoodSums sums(int[] rows, Design design, double parameter, double[] point) {
        LikelihoodPass pass = new LikelihoodPass(design, parameter, point);
        for (int i : rows) {
            pass.add(logEntry[i], logLower[i], logUpper[i], weight[i], covariates, i * names.length);
        }
        return pass.sums();
    }

    /** Rows with those of a cluster side by side, else in their order. */
    private int[] byCluster() {
        int[] next = new int[Arrays.stream(clusters).max().orElse(-1) + 2];
        for (int cluster : clusters) {
            next[cluster + 1]++;
        }
        Arrays.parallelPrefix(next, Integer::sum);
        int[] order = new int[size()];
        for (int i = 0; i < order.length; i++) {
            order[next[clusters[i]]++] = i;
        }
        return order;
    }

    @Override
    public Optional<LifeSource> part() {
        int step = size() / THINNED;
        return step < 5
                ? Optional.empty()
                : Optional.of(rows(
                        IntStream.range(0, size() / step).map(i -> i * step).toArray()));
    }

    private int blocks() {
        return (size() + BLOCK - 1) / BLOCK;
    }
}
