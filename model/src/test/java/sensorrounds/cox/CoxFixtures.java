package sensorrounds.cox;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/** Samples for tests: invented rows, and the same rows put in other words. */
final class CoxFixtures {
    private CoxFixtures() {}

    /** Rows of whole weights as that many rows. */
    static CoxSample repeated(CoxSample sample) {
        return pick(
                sample,
                IntStream.range(0, sample.size())
                        .flatMap(i -> IntStream.range(0, (int) sample.weight(i)).map(k -> i))
                        .toArray());
    }

    /** These rows, weight 1. */
    static CoxSample pick(CoxSample sample, int[] rows) {
        int p = sample.columns().size();
        double[] entry = new double[rows.length];
        double[] exit = new double[rows.length];
        boolean[] failed = new boolean[rows.length];
        double[][] x = new double[rows.length][p];
        int[] stratum = new int[rows.length];
        int[] cluster = new int[rows.length];
        for (int r = 0; r < rows.length; r++) {
            entry[r] = sample.entry(rows[r]);
            exit[r] = sample.exit(rows[r]);
            failed[r] = sample.failed(rows[r]);
            stratum[r] = sample.stratum(rows[r]);
            cluster[r] = sample.cluster(rows[r]);
            for (int j = 0; j < p; j++) {
                x[r][j] = sample.covariate(rows[r], j);
            }
        }
        return CoxSample.of(sample.columns(), entry, exit, failed, x)
                .withStrata(stratum)
                .withClusters(cluster);
    }

    /** One covariate without delayed entry; {@code failed} by 1 and 0. */
    static CoxSample of(double[] exit, int[] failed, double[] x) {
        boolean[] events = new boolean[exit.length];
        double[][] rows = new double[exit.length][];
        for (int i = 0; i < exit.length; i++) {
            events[i] = failed[i] == 1;
            rows[i] = new double[] {x[i]};
        }
        return CoxSample.of(List.of("x"), new double[exit.length], exit, events, rows);
    }

    /**
     * Invented sensors: hazard rising with age, log hazard ratios .7 per unit of cold and -.4 for a late build, entry up
     * to 4 years, 3 years' follow-up, ages in days rounded up to weeks so that there are ties; four to a vehicle.
     */
    static CoxSample fleet(long seed, int units) {
        Random random = new Random(seed);
        List<double[]> rows = new ArrayList<>();
        while (rows.size() < units) {
            double cold = random.nextGaussian();
            double late = random.nextInt(3) == 0 ? 1 : 0;
            double risk = Math.exp(0.7 * cold - 0.4 * late);
            double life = 2500 * Math.pow(-Math.log(1 - random.nextDouble()) / risk, 1 / 2.5);
            double entry = 7 * random.nextInt(200);
            double last = 7 * Math.ceil(Math.min(life, entry + 1095) / 7);
            if (last > entry) {
                rows.add(new double[] {entry, last, life <= entry + 1095 ? 1 : 0, cold, late});
            }
        }
        double[][] x = rows.stream().map(r -> Arrays.copyOfRange(r, 3, 5)).toArray(double[][]::new);
        boolean[] failed = new boolean[units];
        for (int i = 0; i < units; i++) {
            failed[i] = rows.get(i)[2] == 1;
        }
        return CoxSample.of(
                        List.of("cold", "late build"),
                        rows.stream().mapToDouble(r -> r[0]).toArray(),
                        rows.stream().mapToDouble(r -> r[1]).toArray(),
                        failed,
                        x)
                .withClusters(IntStream.range(0, units).map(i -> i / 4).toArray());
    }
}
