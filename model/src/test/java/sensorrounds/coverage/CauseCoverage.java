package sensorrounds.coverage;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sensorrounds.causes.AalenJohansen;
import sensorrounds.causes.CauseSample;
import sensorrounds.causes.EndedLife;
import sensorrounds.causes.Incidence;
import sensorrounds.survival.Estimate;

/**
 * Limits of the incidence of causes: battery wears out (Weibull, shape 3, 7 years), a stem fails at a constant hazard (0.03 a
 * year), a tyre change breaks some (shape 0.8, 60 years); exact ages, vehicles met at up to 3 years, followed for 2 to 6.
 * Argument: fleets (default 1000). Results are in docs/coverage.md.
 */
public final class CauseCoverage {
    private static final double[] SHAPE = {3, 1, 0.8};
    private static final double[] SCALE = {7, 1 / 0.03, 60};
    private static final List<String> CAUSES = List.of("battery", "stem", "tyre change");

    private CauseCoverage() {}

    public static void main(String[] arguments) {
        int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        for (int lives : new int[] {100, 400, 1600}) {
            study(fleets, lives).print(fleets + " fleets of " + lives + " sensors met");
        }
    }

    static Tallies study(int fleets, int lives) {
        Tallies tallies = new Tallies();
        for (int fleet = 0; fleet < fleets; fleet++) {
            Random random = Tallies.random(33_000_000, fleet, lives);
            List<EndedLife<String>> rows = new ArrayList<>();
            while (rows.size() < lives) {
                double entry = random.nextDouble() < 0.5 ? 0 : 3 * random.nextDouble();
                double end = entry + 2 + 4 * random.nextDouble();
                double life = Double.POSITIVE_INFINITY;
                int by = -1;
                for (int k = 0; k < SHAPE.length; k++) {
                    double own = SCALE[k] * Math.pow(-Math.log(1 - random.nextDouble()), 1 / SHAPE[k]);
                    by = own < life ? k : by;
                    life = Math.min(life, own);
                }
                if (life > entry) {
                    rows.add(life <= end ? EndedLife.by(CAUSES.get(by), entry, life) : EndedLife.censored(entry, end));
                }
            }
            Incidence<String> incidence = AalenJohansen.withDefaults().fit(CauseSample.of(CAUSES, rows));
            for (int k = 0; k < SHAPE.length; k++) {
                for (double age : new double[] {3, 6}) {
                    Estimate limits = incidence.to() >= age
                            ? incidence.at(CAUSES.get(k), age)
                            : new Estimate(Double.NaN, Double.NaN, Double.NaN);
                    tallies.add(CAUSES.get(k) + " by " + (int) age + " | log(-log)", truth(k, age), limits);
                }
            }
        }
        return tallies;
    }

    /** Incidence by Simpson's rule in the cause's own hazard. */
    private static double truth(int cause, double age) {
        int steps = 2000;
        double all = Math.pow(age / SCALE[cause], SHAPE[cause]);
        double sum = 0;
        for (int i = 0; i <= steps; i++) {
            double at = SCALE[cause] * Math.pow(all * i / steps, 1 / SHAPE[cause]);
            double hazard = 0;
            for (int k = 0; k < SHAPE.length; k++) {
                hazard += Math.pow(at / SCALE[k], SHAPE[k]);
            }
            sum += Math.exp(-hazard) * (i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2);
        }
        return sum * all / steps / 3;
    }
}
