package sensorrounds.coverage;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.KaplanMeierFit;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.PiecewiseExponentialFit;
import sensorrounds.survival.PiecewiseExponentialFitter;

/**
 * Limits of curves without a law: Kaplan-Meier and Nelson-Aalen on exact ages with delayed entry, and the hazard by bands on
 * intervals with delayed entry. Arguments: fleets (default 1000), seed. Results are in docs/coverage.md.
 */
public final class CurveCoverage {
    private static final double[] AGES = {2, 4, 6, 8};
    private static final double[] EDGES = {2, 4, 6};
    private static final double[] RATES = {0.02, 0.06, 0.15, 0.3};

    private static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);

    private CurveCoverage() {}

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 13_000_000;
        for (int lives : new int[] {50, 200, 800, 3200}) {
            curves(fleets, lives, seed).print(fleets + " fleets of " + lives + " sensors met, exact ages");
            bands(fleets, lives, seed)
                    .print(fleets + " fleets of " + lives + " sensors met, intervals, hazard by bands");
        }
    }

    static Tallies curves(int fleets, int lives, long seed) {
        Tallies tallies = new Tallies();
        for (int fleet = 0; fleet < fleets; fleet++) {
            Random random = Tallies.random(seed, fleet, lives);
            LifetimeSample sample = sample(random, lives, false);
            for (KaplanMeier.Band band : KaplanMeier.Band.values()) {
                KaplanMeierFit fit = KaplanMeier.withDefaults().with(band).fit(sample);
                for (double age : AGES) {
                    String name = "S(" + (int) age + ") | Kaplan-Meier, " + band;
                    boolean seen = fit.survival().covers(age);
                    tallies.add(
                            name,
                            Math.exp(-hazard(age)),
                            seen ? fit.lower().at(age) : Double.NaN,
                            seen ? fit.upper().at(age) : Double.NaN);
                }
            }
            add(tallies, KaplanMeier.withDefaults().fit(sample));
        }
        return tallies;
    }

    private static void add(Tallies tallies, KaplanMeierFit fit) {
        for (double age : AGES) {
            boolean seen = fit.survival().covers(age);
            tallies.add(
                    "H(" + (int) age + ") | Nelson-Aalen, as of a count",
                    hazard(age),
                    seen ? fit.cumulativeHazardLimits(age) : NONE);
        }
        tallies.add("median | Kaplan-Meier, inverted", ageAt(Math.log(2)), fit.median());
        boolean seen = fit.survival().covers(6);
        tallies.add(
                "mean within 6 | Kaplan-Meier, as of a count",
                restrictedMean(),
                seen ? fit.restrictedMeanLimits(6, 0.95) : NONE);
        boolean late = seen && fit.survival().at(2) > 0;
        tallies.add(
                "mean from 2 to 6, given alive at 2 | Kaplan-Meier, as of a count",
                (restrictedMean() - meanWithinTwo()) / Math.exp(-hazard(2)),
                late ? fit.meanResidualLifeLimits(2, 6, 0.95) : NONE);
    }

    static Tallies bands(int fleets, int lives, long seed) {
        Tallies tallies = new Tallies();
        for (int fleet = 0; fleet < fleets; fleet++) {
            Random random = Tallies.random(~seed, fleet, lives);
            PiecewiseExponentialFit fit =
                    PiecewiseExponentialFitter.withBands(EDGES).fit(sample(random, lives, true));
            for (int band = 0; band < RATES.length; band++) {
                boolean there = fit.converged() && band < fit.bands().size();
                tallies.add(
                        "rate of band " + (band + 1) + " | Wald on log",
                        RATES[band],
                        there ? fit.bands().get(band).rate() : NONE);
            }
            for (double age : AGES) {
                boolean there = fit.converged() && fit.covers(0, age);
                tallies.add(
                        "S(" + (int) age + ") | hazard by bands, log H",
                        Math.exp(-hazard(age)),
                        there ? fit.survival(age) : NONE);
            }
        }
        return tallies;
    }

    /** Ages in years; met at a uniform age up to 6, followed for up to 4, looked at about every 0.75 years. */
    private static LifetimeSample sample(Random random, int lives, boolean intervals) {
        List<double[]> rows = new ArrayList<>();
        while (rows.size() < lives) {
            double entry = 6 * random.nextDouble();
            double life = ageAt(-Math.log(1 - random.nextDouble()));
            double end = entry + 1 + 3 * random.nextDouble();
            if (life <= entry) {
                continue;
            }
            if (!intervals) {
                rows.add(new double[] {entry, Math.min(life, end), life <= end ? life : Double.POSITIVE_INFINITY});
                continue;
            }
            double lower = entry;
            double upper = Double.POSITIVE_INFINITY;
            for (double visit = entry; upper == Double.POSITIVE_INFINITY; ) {
                visit += 0.5 + 0.5 * random.nextDouble();
                if (visit > end) {
                    break;
                }
                if (life > visit) {
                    lower = visit;
                } else {
                    upper = visit;
                }
            }
            rows.add(new double[] {entry, lower, upper});
        }
        double[][] columns = new double[4][lives];
        for (int i = 0; i < lives; i++) {
            for (int j = 0; j < 3; j++) {
                columns[j][i] = rows.get(i)[j];
            }
            columns[3][i] = 1;
        }
        return LifetimeSample.of(columns[0], columns[1], columns[2], columns[3]);
    }

    private static double hazard(double age) {
        double sum = 0;
        for (int band = 0; band < RATES.length; band++) {
            double from = band == 0 ? 0 : EDGES[band - 1];
            double to = band < EDGES.length ? EDGES[band] : Double.POSITIVE_INFINITY;
            sum += RATES[band] * Math.max(0, Math.min(age, to) - from);
        }
        return sum;
    }

    private static double ageAt(double hazard) {
        double left = hazard;
        for (int band = 0; band < EDGES.length; band++) {
            double from = band == 0 ? 0 : EDGES[band - 1];
            double all = RATES[band] * (EDGES[band] - from);
            if (left <= all) {
                return from + left / RATES[band];
            }
            left -= all;
        }
        return EDGES[EDGES.length - 1] + left / RATES[EDGES.length];
    }

    private static double meanWithinTwo() {
        return -Math.expm1(-RATES[0] * 2) / RATES[0];
    }

    private static double restrictedMean() {
        double sum = 0;
        for (int band = 0; band < EDGES.length; band++) {
            double from = band == 0 ? 0 : EDGES[band - 1];
            sum += (Math.exp(-hazard(from)) - Math.exp(-hazard(EDGES[band]))) / RATES[band];
        }
        return sum;
    }
}
