package sensorrounds.regression;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A million lives for two programs: writes them for the peer (doubles, column by column, big-endian) and times the fit
 * without entry, as the peer has none, and with it. Arguments: file to write, lives, repetitions. Run by survival.sh in
 * model/src/test/benchmarks.
 */
public final class PeerBenchmark {
    private PeerBenchmark() {}

    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments[0]);
        int lives = Integer.parseInt(arguments[1]);
        int repetitions = Integer.parseInt(arguments[2]);
        double[][] columns = SimulatedFleet.columns(20261125, lives);
        if (!Files.exists(file)) {
            try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
                for (double[] column : columns) {
                    for (double value : column) {
                        out.writeDouble(value);
                    }
                }
            }
        }
        time("ours, intervals without entry", lives(columns, new double[lives]), repetitions);
        time("ours, intervals with entry", lives(columns, columns[0]), repetitions);
    }

    private static CovariateLives lives(double[][] columns, double[] entry) {
        double[] weight = new double[entry.length];
        Arrays.fill(weight, 1);
        CovariateLives lives = CovariateLives.of(entry, columns[1], columns[2], weight);
        for (int j = 0; j < SimulatedFleet.NAMES.size(); j++) {
            lives = lives.withColumn(SimulatedFleet.NAMES.get(j), columns[3 + j]);
        }
        return lives;
    }

    private static void time(String what, CovariateLives lives, int repetitions) {
        double[] seconds = new double[repetitions];
        RegressionFit fit = null;
        for (int i = 0; i < repetitions; i++) {
            long start = System.nanoTime();
            fit = LifeRegression.of(LifeFamily.WEIBULL).fit(lives);
            seconds[i] = (System.nanoTime() - start) / 1e9;
        }
        double first = seconds[0];
        String all = Arrays.stream(seconds)
                .mapToObj(s -> String.format(Locale.ROOT, "%.2f", s))
                .collect(Collectors.joining(" "));
        Arrays.sort(seconds);
        RegressionFit last = fit;
        System.out.printf(
                Locale.ROOT,
                "%s: median %.2f s, first call %.2f s (%s); log L %.4f; %s%n",
                what,
                seconds[repetitions / 2],
                first,
                all,
                last.logLikelihood(),
                IntStream.range(0, last.coefficients().size())
                        .mapToObj(i -> String.format(
                                Locale.ROOT, "%.6f", last.coefficients().get(i).value()))
                        .collect(Collectors.joining(" ")));
    }
}
