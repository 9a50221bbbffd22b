package sensorrounds.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import sensorrounds.regression.Coefficient.Part;

/**
 * Weibull lives with covariates under yearly visits: known from an entry age on only if alive then, seen at visits about
 * a year apart for some years. Written apart from the estimators.
 */
final class SimulatedFleet {
    static final double SHAPE = 2.2;
    static final double CONSTANT = Math.log(3000);
    static final double[] EFFECTS = {-0.30, 0.20, 0.01, -0.05, 0.10};
    static final List<String> NAMES = List.of("coldDepot", "partB", "axle", "heat", "load");

    private SimulatedFleet() {}

    /** Lives in clusters of four; the last covariate shared within the cluster. */
    static CovariateLives of(long seed, int lives) {
        double[][] columns = columns(seed, lives);
        double[] weight = new double[lives];
        Arrays.fill(weight, 1);
        CovariateLives result = CovariateLives.of(columns[0], columns[1], columns[2], weight)
                .withClusters(IntStream.range(0, lives).map(i -> i / 4).toArray());
        for (int j = 0; j < NAMES.size(); j++) {
            result = result.withColumn(NAMES.get(j), columns[3 + j]);
        }
        return result;
    }

    /** Entry, lower, upper, then the covariates. */
    static double[][] columns(long seed, int lives) {
        Random random = new Random(seed);
        double[][] columns = new double[3 + EFFECTS.length][lives];
        double load = 0;
        for (int i = 0; i < lives; ) {
            load = i % 4 == 0 ? random.nextGaussian() : load;
            double[] row = {
                random.nextInt(2),
                random.nextInt(3) == 0 ? 1 : 0,
                random.nextInt(3),
                20 + 5 * random.nextGaussian(),
                load
            };
            double logScale = CONSTANT;
            for (int j = 0; j < row.length; j++) {
                logScale += EFFECTS[j] * row[j];
            }
            double life = Math.exp(logScale + 1) * Math.pow(-Math.log(1 - random.nextDouble()), 1 / SHAPE);
            double entry = random.nextInt(4) == 0 ? 0 : Math.floor(2000 * random.nextDouble());
            if (life <= entry) {
                continue;
            }
            double[] seen = seen(random, entry, life);
            columns[0][i] = entry;
            columns[1][i] = seen[0];
            columns[2][i] = seen[1];
            for (int j = 0; j < row.length; j++) {
                columns[3 + j][i] = row[j];
            }
            i++;
        }
        return columns;
    }

    private static double[] seen(Random random, double entry, double life) {
        double last = entry;
        for (int visit = 0; visit < 4; visit++) {
            double next = last + 300 + Math.floor(130 * random.nextDouble());
            if (life <= next) {
                return random.nextInt(10) == 0
                        ? new double[] {Math.max(entry + 1, Math.floor(life)), Math.max(entry + 1, Math.floor(life))}
                        : new double[] {last, next};
            }
            last = next;
        }
        return new double[] {last, Double.POSITIVE_INFINITY};
    }

    /** The truth about a coefficient. */
    static double truth(Coefficient coefficient) {
        if (coefficient.part() == Part.LOG_SHAPE) {
            return Math.log(SHAPE);
        }
        int column = NAMES.indexOf(coefficient.name());
        return column < 0 ? CONSTANT + 1 : EFFECTS[column];
    }

    /** A handful of every kind of life, with two covariates. */
    static CovariateLives everyKind() {
        List<double[]> rows = new ArrayList<>();
        double never = Double.POSITIVE_INFINITY;
        rows.add(new double[] {0, 700, 700, 1, 0, 1.5});
        rows.add(new double[] {200, 1500, 1500, 1, 1, 2.5});
        rows.add(new double[] {0, 0, 300, 1, 0, 3.5});
        rows.add(new double[] {0, 400, 900, 2, 1, 1});
        rows.add(new double[] {500, 500, 1100, 1, 0, 2});
        rows.add(new double[] {900, 1300, 2200, 1, 1, 1.2});
        rows.add(new double[] {0, 1000, never, 3, 0, 2.2});
        rows.add(new double[] {800, 2500, never, 1, 1, 3.1});
        rows.add(new double[] {100, 100, never, 1, 1, 9});
        rows.add(new double[] {100, 1200, 1300, 1, 0, 0.4});
        rows.add(new double[] {0, 800, 1300, 1, 1, 0.9});
        double[][] columns = new double[6][rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            for (int j = 0; j < 6; j++) {
                columns[j][i] = rows.get(i)[j];
            }
        }
        return CovariateLives.of(columns[0], columns[1], columns[2], columns[3])
                .withColumn("partB", columns[4])
                .withColumn("load", columns[5]);
    }
}
