package sensorrounds.turnbull;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import sensorrounds.survival.LifetimeSample;

/**
 * The nonparametric estimate of lives on a weekly grid for two programs: writes lower, upper and weight of the distinct
 * lives, entry left out, for the peer (doubles, column by column, big-endian), and times ours without entry and with it.
 * Arguments: file to write, lives, repetitions. Run by survival.sh in model/src/test/benchmarks.
 */
public final class PeerBenchmark {
    private PeerBenchmark() {}

    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments[0]);
        int repetitions = Integer.parseInt(arguments[2]);
        LifetimeSample entered = Rounds.sample(1, Integer.parseInt(arguments[1]), 7, 6, 3);
        int n = entered.size();
        double[][] columns = new double[4][n];
        for (int i = 0; i < n; i++) {
            columns[1][i] = entered.lower(i);
            columns[2][i] = entered.upper(i);
            columns[3][i] = entered.weight(i);
        }
        LifetimeSample plain = LifetimeSample.of(columns[0], columns[1], columns[2], columns[3]);
        if (!Files.exists(file)) {
            try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
                for (int column = 1; column < 4; column++) {
                    for (int i = 0; i < plain.size(); i++) {
                        out.writeDouble(column == 1 ? plain.lower(i) : column == 2 ? plain.upper(i) : plain.weight(i));
                    }
                }
            }
        }
        time("ours, weekly grid without entry", plain, repetitions);
        time("ours, weekly grid with entry", entered, repetitions);
    }

    private static void time(String what, LifetimeSample sample, int repetitions) {
        double[] seconds = new double[repetitions];
        TurnbullFit fit = null;
        for (int i = 0; i < repetitions; i++) {
            long start = System.nanoTime();
            fit = Turnbull.withDefaults().fit(sample);
            seconds[i] = (System.nanoTime() - start) / 1e9;
        }
        double first = seconds[0];
        Arrays.sort(seconds);
        System.out.printf(
                Locale.ROOT,
                "%s: median %.3f s, first call %.3f s, of %d; %.0f lives, %d distinct, log L %.6f, gap %.1e%n",
                what,
                seconds[repetitions / 2],
                first,
                repetitions,
                sample.lives(),
                sample.size(),
                fit.logLikelihood(),
                fit.gap());
    }
}
