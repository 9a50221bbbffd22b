package sensorrounds.coverage;

import java.util.Random;
import java.util.stream.IntStream;
import sensorrounds.regression.Coefficient;
import sensorrounds.regression.CovariateLives;
import sensorrounds.regression.LifeFamily;
import sensorrounds.regression.LifeRegression;
import sensorrounds.regression.RegressionFit;

/**
 * Limits of regression coefficients where the four sensors of a vehicle are alike. Their hazards share a positive stable
 * factor of index 0.7 (Hougaard 1986, Biometrika 73:387): each sensor by itself then still follows a Weibull law with the
 * same effects on log life and 0.7 times the shape, so that the truth is known although the sensors depend on each other
 * (Kendall's tau 0.3). Intervals and delayed entry as in a fleet. Arguments: fleets (default 1000), seed. Results are in
 * docs/coverage.md.
 */
public final class ClusterCoverage {
    private static final double INDEX = 0.7;
    private static final double SHAPE = 3;
    private static final double SCALE = 7;
    private static final double COLD = -0.2;
    private static final double PART = 0.3;

    private ClusterCoverage() {}

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 23_000_000;
        for (int vehicles : new int[] {50, 200, 800}) {
            study(fleets, vehicles, seed).print(fleets + " fleets of " + vehicles + " vehicles");
        }
    }

    static Tallies study(int fleets, int vehicles, long seed) {
        Tallies tallies = new Tallies();
        for (int fleet = 0; fleet < fleets; fleet++) {
            CovariateLives lives = fleet(Tallies.random(seed, fleet, vehicles), vehicles);
            for (LifeRegression.Errors errors : LifeRegression.Errors.values()) {
                RegressionFit fit =
                        LifeRegression.of(LifeFamily.WEIBULL).with(errors).fit(lives);
                add(tallies, "cold depot (by vehicle) | " + errors, COLD, fit, "cold");
                add(tallies, "part (by wheel) | " + errors, PART, fit, "part");
                if (fit.converged()) {
                    tallies.add("scale | " + errors, SCALE, fit.at(0, 0).scale());
                    tallies.add("shape | " + errors, INDEX * SHAPE, fit.at(0, 0).shape());
                    double survival = Math.exp(-Math.pow(5 / SCALE, INDEX * SHAPE));
                    tallies.add("S(5) | " + errors, survival, fit.at(0, 0).survival(5));
                }
            }
        }
        return tallies;
    }

    private static void add(Tallies tallies, String name, double truth, RegressionFit fit, String column) {
        if (fit.converged()) {
            Coefficient c = fit.coefficient(Coefficient.Part.LOG_SCALE, column);
            tallies.add(name, truth, c.lower(), c.upper());
        } else {
            tallies.add(name, truth, Double.NaN, Double.NaN);
        }
    }

    private static CovariateLives fleet(Random random, int vehicles) {
        int most = 4 * vehicles;
        double[][] columns = new double[6][most];
        int[] cluster = new int[most];
        int n = 0;
        for (int vehicle = 0; vehicle < vehicles; vehicle++) {
            double factor = positiveStable(random);
            double cold = random.nextDouble() < 0.4 ? 1 : 0;
            double entry = 5 * random.nextDouble();
            double end = entry + 3;
            double[] visits = new double[8];
            int count = 0;
            for (double visit = entry + 0.5 + 0.5 * random.nextDouble(); visit < end; ) {
                visits[count++] = visit;
                visit += 0.5 + 0.5 * random.nextDouble();
            }
            for (int wheel = 0; wheel < 4; wheel++) {
                double part = random.nextInt(2);
                double scale = SCALE * Math.exp(COLD * cold + PART * part);
                double life = scale * Math.pow(-Math.log(1 - random.nextDouble()) / factor, 1 / SHAPE);
                if (life <= entry) {
                    continue;
                }
                double lower = entry;
                double upper = Double.POSITIVE_INFINITY;
                for (int v = 0; v < count && upper == Double.POSITIVE_INFINITY; v++) {
                    if (life > visits[v]) {
                        lower = visits[v];
                    } else {
                        upper = visits[v];
                    }
                }
                columns[0][n] = entry;
                columns[1][n] = lower;
                columns[2][n] = upper;
                columns[3][n] = 1;
                columns[4][n] = cold;
                columns[5][n] = part;
                cluster[n++] = vehicle;
            }
        }
        int[] rows = IntStream.range(0, n).toArray();
        for (int i = n; i < most; i++) {
            columns[2][i] = Double.POSITIVE_INFINITY;
            columns[3][i] = 1;
        }
        return CovariateLives.of(columns[0], columns[1], columns[2], columns[3])
                .withColumn("cold", columns[4])
                .withColumn("part", columns[5])
                .withClusters(cluster)
                .rows(rows);
    }

    /** With Laplace transform exp(-s^INDEX): Kanter (1975), Ann. Probab. 3:697 (from memory). */
    private static double positiveStable(Random random) {
        double angle = Math.PI * random.nextDouble();
        double exponential = -Math.log(1 - random.nextDouble());
        double first = Math.sin(INDEX * angle) / Math.pow(Math.sin(angle), 1 / INDEX);
        double second = Math.pow(Math.sin((1 - INDEX) * angle) / exponential, (1 - INDEX) / INDEX);
        return first * second;
    }
}
