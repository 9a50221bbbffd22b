package sensorrounds.turnbull;

import java.util.Arrays;
import java.util.Locale;
import sensorrounds.survival.LifetimeSample;

/**
 * How long the nonparametric estimate takes, and how one gradient grows with the distinct ranges of lives. Run by hand: {@code mvn
 * -q -pl model test-compile} and {@code java -cp model/target/classes:model/target/test-classes
 * sensorrounds.turnbull.TurnbullBenchmark}.
 */
public final class TurnbullBenchmark {
    private TurnbullBenchmark() {}

    public static void main(String[] args) {
        LifetimeSample weekly = Rounds.sample(1, 100_000, 7, 6, 3);
        print("100 000 lives, weekly grid, first call of a fresh JVM", weekly, 1);
        print("the same, median of 9", weekly, 9);
        print("100 000 lives, daily grid", Rounds.sample(1, 100_000, 1, 6, 3), 5);
        print("100 000 lives, weekly grid, from new", Rounds.sample(1, 100_000, 7, 0, 12), 5);
        for (int lives = 12_500; lives <= 400_000; lives *= 2) {
            print("growth: weekly grid, " + lives + " lives", Rounds.sample(2, lives, 7, 6, 3), 3);
        }
    }

    private static void print(String what, LifetimeSample sample, int runs) {
        double[] millis = new double[runs];
        TurnbullFit fit = null;
        for (int run = 0; run < runs; run++) {
            long start = System.nanoTime();
            fit = Turnbull.withDefaults().fit(sample);
            millis[run] = (System.nanoTime() - start) / 1e6;
        }
        Arrays.sort(millis);
        System.out.printf(
                Locale.ROOT,
                "%-55s %8.1f ms  %6d groups, %5d intervals, %4d with mass, %3d iterations, gap %.1e, gradient"
                        + " %.0f us%n",
                what,
                millis[runs / 2],
                new PlacedLives(sample).problem().groups(),
                fit.intervals().size(),
                fit.masses().size(),
                fit.iterations(),
                fit.gap(),
                gradientMicros(sample));
    }

    /** Value of x and gradient once: O(groups + intervals), as are products with the information. */
    private static double gradientMicros(LifetimeSample sample) {
        PlacedLives lives = new PlacedLives(sample);
        HazardProblem problem = lives.problem();
        double[] hazard = new double[problem.size()];
        Arrays.fill(hazard, 0.01);
        double sink = 0;
        for (int i = 0; i < 300; i++) {
            sink += problem.pull(problem.reach(hazard))[0];
        }
        long start = System.nanoTime();
        for (int i = 0; i < 300; i++) {
            sink += problem.pull(problem.reach(hazard))[0];
        }
        double micros = (System.nanoTime() - start) / 1e3 / 300;
        return sink == 0 ? Double.NaN : micros;
    }
}
