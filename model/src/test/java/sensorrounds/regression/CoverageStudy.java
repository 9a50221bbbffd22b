package sensorrounds.regression;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import sensorrounds.coverage.FleetSeed;
import sensorrounds.survival.Estimate;

/**
 * How often 95 % limits hold the truth: fleets of four-wheeled vehicles with Weibull lives, shape 2.5 and scale 7 years, met at a
 * uniform age (a sensor dead by then is never seen) and visited every 0.5 to 1 year. Each fleet has its own seed. Argument:
 * fleets (default 1000). Results are in docs/coverage.md.
 */
public final class CoverageStudy {
    private static final double YEAR = 365.25;
    private static final double SHAPE = 2.5;
    private static final double SCALE = 7 * YEAR;
    private static final double AGE = 5 * YEAR;
    private static final double WINDOW = 90;

    private CoverageStudy() {}

    /**
     * How a fleet is seen.
     *
     * @param latestEntry highest age at which a vehicle is met, years
     * @param followUp how long it is visited, years
     */
    private record Scene(int vehicles, double latestEntry, double followUp) {}

    /** Where a truth fell, over fleets. */
    private static final class Tally {
        int held;
        int below;
        int above;
        int open;
        int failed;

        void add(double truth, Estimate limits) {
            if (Double.isNaN(limits.lower()) || Double.isNaN(limits.upper())) {
                failed++;
            } else if (truth < limits.lower()) {
                below++;
            } else if (truth > limits.upper()) {
                above++;
            } else {
                held++;
            }
            open += Double.isInfinite(limits.upper()) ? 1 : 0;
        }
    }

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        for (Scene scene : List.of(new Scene(50, 6, 3), new Scene(200, 6, 3), new Scene(50, 3, 1))) {
            study(fleets, scene);
        }
    }

    private static void study(int fleets, Scene scene) {
        long start = System.nanoTime();
        Map<String, Tally> tallies = new LinkedHashMap<>();
        Map<RegressionStatus, Integer> statuses = new TreeMap<>();
        double failures = 0;
        double lives = 0;
        int fewest = Integer.MAX_VALUE;
        for (int fleet = 0; fleet < fleets; fleet++) {
            CovariateLives seen =
                    fleet(FleetSeed.of(1_000_000, fleet, scene.vehicles() + (int) scene.latestEntry()), scene);
            RegressionFit fit = LifeRegression.of(LifeFamily.WEIBULL).fit(seen);
            statuses.merge(fit.status(), 1, Integer::sum);
            failures += fit.failures();
            lives += fit.lives();
            fewest = Math.min(fewest, (int) fit.failures());
            if (fit.converged()) {
                add(tallies, seen, fit);
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%n%d fleets, %s: %.1f lives and %.1f failures on average, %d at least; fits %s; %.1f s%n",
                fleets,
                scene,
                lives / fleets,
                failures / fleets,
                fewest,
                statuses,
                (System.nanoTime() - start) / 1e9);
        tallies.forEach((name, t) -> {
            int all = t.held + t.below + t.above;
            double share = (double) t.held / all;
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %.1f %% | %.1f | %d | %d | %d | %d |%n",
                    name,
                    100 * share,
                    100 * Math.sqrt(share * (1 - share) / all),
                    t.below,
                    t.above,
                    t.open,
                    t.failed);
        });
    }

    private static void add(Map<String, Tally> tallies, CovariateLives seen, RegressionFit fit) {
        double survival = Math.exp(-Math.pow(AGE / SCALE, SHAPE));
        double within = -Math.expm1(Math.pow(AGE / SCALE, SHAPE) - Math.pow((AGE + WINDOW) / SCALE, SHAPE));
        FittedLaw wald = fit.at();
        ProfileLimits profile = ProfileLimits.of(seen, fit);
        tally(tallies, "shape | Wald on log").add(SHAPE, wald.shape());
        tally(tallies, "shape | profile").add(SHAPE, profile.shape());
        tally(tallies, "scale | Wald on log").add(SCALE, wald.scale());
        tally(tallies, "scale | profile").add(SCALE, profile.scale());
        tally(tallies, "S(5 y) | Wald on log(-log)").add(survival, wald.survival(AGE));
        tally(tallies, "S(5 y) | profile").add(survival, profile.survival(AGE));
        tally(tallies, "P(fail within 90 d) at 5 y | Wald on log hazard").add(within, wald.failureWithin(AGE, WINDOW));
        tally(tallies, "P(fail within 90 d) at 5 y | profile").add(within, profile.failureWithin(AGE, WINDOW));
    }

    private static Tally tally(Map<String, Tally> tallies, String name) {
        return tallies.computeIfAbsent(name, n -> new Tally());
    }

    /** A fleet of the scene with few failures. */
    static CovariateLives youngFleet(int number) {
        return fleet(50_000_000L + number, new Scene(50, 3, 1));
    }

    private static CovariateLives fleet(long seed, Scene scene) {
        Random random = new Random(seed);
        List<double[]> rows = new ArrayList<>();
        for (int vehicle = 0; vehicle < scene.vehicles(); vehicle++) {
            double entry = Math.round(scene.latestEntry() * YEAR * random.nextDouble());
            double[] visits = new double[8];
            int count = 0;
            double age = entry;
            while (true) {
                age = Math.round(age + YEAR * (0.5 + 0.5 * random.nextDouble()));
                if (age > entry + scene.followUp() * YEAR) {
                    break;
                }
                visits[count++] = age;
            }
            for (int wheel = 0; wheel < 4; wheel++) {
                double life = SCALE * Math.pow(-Math.log(1 - random.nextDouble()), 1 / SHAPE);
                double lower = entry;
                double upper = Double.POSITIVE_INFINITY;
                for (int v = 0; v < count && upper == Double.POSITIVE_INFINITY; v++) {
                    if (life > visits[v]) {
                        lower = visits[v];
                    } else {
                        upper = visits[v];
                    }
                }
                if (life > entry) {
                    rows.add(new double[] {entry, lower, upper, 1});
                }
            }
        }
        double[][] columns = new double[4][rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            for (int j = 0; j < 4; j++) {
                columns[j][i] = rows.get(i)[j];
            }
        }
        return CovariateLives.of(columns[0], columns[1], columns[2], columns[3]);
    }
}
