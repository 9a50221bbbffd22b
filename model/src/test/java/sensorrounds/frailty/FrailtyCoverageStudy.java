package sensorrounds.frailty;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.coverage.FleetSeed;

/**
 * How often 95 % limits of a frailty fit hold the truth, over fleets of {@link SimulatedSets} with a seed of their own.
 * Arguments: fleets (default 500), vehicles (default 200). Results are in docs/coverage.md.
 */
public final class FrailtyCoverageStudy {
    private FrailtyCoverageStudy() {}

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 500;
        int vehicles = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 200;
        for (double variance : new double[] {0.5, 0}) {
            long start = System.nanoTime();
            Map<FrailtyStatus, Integer> statuses = new TreeMap<>();
            int[] held = new int[3];
            int converged = 0;
            int likely = 0;
            for (int fleet = 0; fleet < fleets; fleet++) {
                long seed = FleetSeed.of(7_000_000, fleet, (int) (10 * variance));
                FrailtyFit fit = FrailtyFitter.withDefaults().fit(SimulatedSets.of(seed, vehicles, variance));
                statuses.merge(fit.status(), 1, Integer::sum);
                if (!fit.converged()) {
                    continue;
                }
                converged++;
                held[0] += holds(Math.log(SimulatedSets.SCALE), fit, 0);
                held[1] += holds(Math.log(SimulatedSets.SHAPE), fit, 1);
                held[2] += variance >= fit.variance().lower()
                                && variance <= fit.variance().upper()
                        ? 1
                        : 0;
                likely += fit.pValue() < 0.05 ? 1 : 0;
            }
            System.out.printf(
                    Locale.ROOT,
                    "%d fleets of %d vehicles, variance %s: %s; %.1f s%n| %s | %.1f %% | %.1f %% | %.1f %% | %.1f %% |%n",
                    fleets,
                    vehicles,
                    variance,
                    statuses,
                    (System.nanoTime() - start) / 1e9,
                    variance,
                    100.0 * held[0] / converged,
                    100.0 * held[1] / converged,
                    100.0 * held[2] / converged,
                    100.0 * likely / converged);
        }
    }

    private static int holds(double truth, FrailtyFit fit, int coefficient) {
        return truth >= fit.coefficients().get(coefficient).lower()
                        && truth <= fit.coefficients().get(coefficient).upper()
                ? 1
                : 0;
    }
}
