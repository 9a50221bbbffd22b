package sensorrounds.analyse;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.spark.HashPartitioner;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.function.Function;
import org.apache.spark.storage.StorageLevel;
import scala.Tuple2;
import sensorrounds.regression.ClusterSteps;
import sensorrounds.regression.CovariateLives;
import sensorrounds.regression.Design;
import sensorrounds.regression.LifeSource;
import sensorrounds.regression.LifeSummary;
import sensorrounds.regression.LikelihoodSums;

/**
 * Lives held over the cluster, one block of flat arrays for each partition, for fits to more of them than one machine
 * should hold. Every pass runs the kernel of the plain Java fit on each block, and the blocks' states are added in the
 * order of the partitions: it is one likelihood, never an average of fits, and the answer is that of one machine to
 * 1e-10. Only states, a few hundred bytes each, come to the driver, and a part of the lives to begin from.
 */
public final class LivesOverPartitions implements LifeSource {
    /** Lives on the driver among which the search for a start runs, about. */
    private static final int PART = 20_000;

    private final List<String> names;
    private final Blocks blocks;
    private final boolean clustered;
    private final Start start;
    private final long size;

    /** Where a search begins: among a part of the lives, which hangs on the partitioning, or where fits to few lives do. */
    private enum Start {
        AMONG_A_PART,
        PLAIN
    }

    /** Blocks of lives, wherever they are. */
    private interface Blocks {
        /** The answer of each block, in the order of the blocks. */
        <T> List<T> each(Function<CovariateLives, T> question);

        /** Lets go of what is held. */
        default void release() {}
    }

    private LivesOverPartitions(List<String> names, Blocks blocks, boolean clustered, Start start) {
        this.names = List.copyOf(names);
        this.blocks = blocks;
        this.clustered = clustered;
        this.start = start;
        this.size = blocks.each(block -> (long) block.size()).stream()
                .mapToLong(n -> n)
                .sum();
    }

    /** Lives as they lie, which do not know their vehicle. */
    public static LivesOverPartitions of(JavaRDD<LifeRow> rows, List<String> names) {
        return held(rows, names, false, Start.AMONG_A_PART);
    }

    /**
     * Lives brought together by vehicle, as errors by cluster need: one shuffle.
     *
     * @param partitions number of partitions after it
     */
    public static LivesOverPartitions byVehicle(JavaRDD<LifeRow> rows, List<String> names, int partitions) {
        JavaRDD<LifeRow> together = rows.mapToPair(row -> new Tuple2<>(vehicle(row), row))
                .partitionBy(new HashPartitioner(partitions))
                .values();
        return held(together, names, true, Start.AMONG_A_PART);
    }

    /**
     * Lives as they lie, all those of a vehicle in one partition already: errors by cluster without a shuffle. The partitioning
     * does not show in the number of steps either.
     */
    static LivesOverPartitions ofWholeVehicles(JavaRDD<LifeRow> rows, List<String> names) {
        return held(rows, names, true, Start.PLAIN);
    }

    private static String vehicle(LifeRow row) {
        if (row.vehicle() == null) {
            throw new IllegalArgumentException(
                    "a life without its vehicle: " + row + "; errors by vehicle need it, or call of instead");
        }
        return row.vehicle();
    }

    private static LivesOverPartitions held(JavaRDD<LifeRow> rows, List<String> names, boolean clustered, Start start) {
        List<String> columns = new ArrayList<>(names);
        JavaRDD<CovariateLives> held = rows.mapPartitions(partition ->
                        List.of(block(partition, columns, clustered)).iterator())
                .persist(StorageLevel.MEMORY_AND_DISK());
        return new LivesOverPartitions(names, new HeldBlocks(held), clustered, start);
    }

    private record HeldBlocks(JavaRDD<CovariateLives> rdd) implements Blocks {
        @Override
        public <T> List<T> each(Function<CovariateLives, T> question) {
            return rdd.map(question).collect();
        }

        @Override
        public void release() {
            rdd.unpersist(false);
        }
    }

    private record LocalBlocks(List<CovariateLives> list) implements Blocks {
        @Override
        public <T> List<T> each(Function<CovariateLives, T> question) {
            List<T> answers = new ArrayList<>();
            for (CovariateLives block : list) {
                try {
                    answers.add(question.call(block));
                } catch (RuntimeException e) {
                    throw e;
                } catch (Exception e) {
                    throw new IllegalStateException("a pass over lives throws no checked exception", e);
                }
            }
            return answers;
        }
    }

    private static CovariateLives block(Iterator<LifeRow> partition, List<String> names, boolean clustered) {
        List<LifeRow> rows = new ArrayList<>();
        partition.forEachRemaining(rows::add);
        for (LifeRow row : rows) {
            if (row.covariates().length != names.size()) {
                throw new IllegalArgumentException("a life of vehicle " + row.vehicle() + " has "
                        + row.covariates().length + " covariates where each of " + names + " needs one");
            }
        }
        CovariateLives lives = CovariateLives.of(
                rows.stream().mapToDouble(LifeRow::entry).toArray(),
                rows.stream().mapToDouble(LifeRow::lower).toArray(),
                rows.stream().mapToDouble(LifeRow::upper).toArray(),
                rows.stream().mapToDouble(LifeRow::weight).toArray());
        for (int j = 0; j < names.size(); j++) {
            int column = j;
            lives = lives.withColumn(
                    names.get(j),
                    rows.stream().mapToDouble(row -> row.covariates()[column]).toArray());
        }
        if (!clustered) {
            return lives;
        }
        Map<String, Integer> numbers = new HashMap<>();
        return lives.withClusters(rows.stream()
                .mapToInt(row -> numbers.computeIfAbsent(row.vehicle(), id -> numbers.size()))
                .toArray());
    }

    /** Lets go of the memory the lives take; a later pass would build the blocks anew. */
    public void release() {
        blocks.release();
    }

    @Override
    public List<String> names() {
        return names;
    }

    @Override
    public LifeSummary summary() {
        LifeSummary total = LifeSummary.empty(names.size());
        blocks.each(CovariateLives::summary).forEach(total::add);
        return total;
    }

    @Override
    public LikelihoodSums sums(Design design, double parameter, double[] point) {
        LikelihoodSums total = new LikelihoodSums(design.slopes());
        blocks.each(block -> block.sums(design, parameter, point)).forEach(total::add);
        return total;
    }

    @Override
    public boolean clustered() {
        return clustered;
    }

    @Override
    public ClusterSteps clusterSteps(Design design, double[] point, double[][] information) {
        ClusterSteps total = new ClusterSteps(information);
        blocks.each(block -> block.clusterSteps(design, point, information)).forEach(total::add);
        return total;
    }

    @Override
    public Optional<LifeSource> part() {
        int step = (int) (size / PART);
        if (step < 5 || start == Start.PLAIN) {
            return Optional.empty();
        }
        List<CovariateLives> thinned = blocks.each(block -> block.rows(
                IntStream.range(0, block.size() / step).map(i -> i * step).toArray()));
        return Optional.of(new LivesOverPartitions(names, new LocalBlocks(thinned), clustered, start));
    }
}
