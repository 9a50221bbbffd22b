package sensorrounds.regression;

import java.util.Locale;

/**
 * Time of a Weibull regression with five covariates, entry and intervals, on lives simulated once. Arguments: lives
 * (default 1000000), repetitions (default 10). The command and measured figures are in docs/benchmarks-regression.md.
 */
public final class RegressionBenchmark {
    private RegressionBenchmark() {}

    public static void main(String[] arguments) {
        int lives = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1_000_000;
        int repetitions = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 10;
        CovariateLives fleet = SimulatedFleet.of(20261125, lives);
        for (CovariateLives.Threads threads : CovariateLives.Threads.values()) {
            for (LifeRegression.Errors errors : LifeRegression.Errors.values()) {
                double best = Double.POSITIVE_INFINITY;
                double last = 0;
                RegressionFit fit = null;
                for (int i = 0; i < repetitions; i++) {
                    long start = System.nanoTime();
                    fit = LifeRegression.of(LifeFamily.WEIBULL).with(errors).fit(fleet.with(threads));
                    last = (System.nanoTime() - start) / 1e9;
                    best = Math.min(best, last);
                }
                System.out.printf(
                        Locale.ROOT,
                        "%s, %s: best %.2f s, last %.2f s; %.0f lives, %.0f failures, %d Newton steps over all lives,"
                                + " log L %.6f%n",
                        threads,
                        errors,
                        best,
                        last,
                        fit.lives(),
                        fit.failures(),
                        fit.iterations(),
                        fit.logLikelihood());
            }
        }
    }
}
