package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import sensorrounds.numeric.GammaFunction;

/**
 * How many vehicles of the recurring ones are no worse than their peers: their long-run rate of warnings is not above the mean, and chance
 * put them there.
 *
 * @param cohort vehicle class, or {@link PeerRates#ALL}
 * @param listed vehicles
 * @param expected number expected: its posterior mean (Newton et al. 2004, Biostatistics 5:155; Müller, Parmigiani and Rice 2006,
 *     Bayesian Statistics 8) and three quarters of its standard deviation over the laws of rates that the counts allow
 * @param upperLimit number not passed with a chance of {@link #LIMIT_CHANCE}
 */
public record FalseFlags(String cohort, long listed, double expected, long upperLimit) implements Serializable {
    /** Chance with which the upper limit holds. */
    public static final double LIMIT_CHANCE = 0.9;

    /** So many standard deviations over the laws, that the statement errs on the safe side. */
    private static final double ALLOWANCE = 0.75;

    /** Of all vehicles listed; none listed is none false. */
    public static FalseFlags ofAll(PeerCells list, PeerRates peers) {
        return of(PeerRates.ALL, list, peers);
    }

    /** Of each class with a vehicle listed, and of all. */
    public static List<FalseFlags> byClass(PeerCells list, PeerRates peers) {
        List<FalseFlags> rows = new ArrayList<>();
        for (String vehicleClass : list.classes()) {
            rows.add(of(vehicleClass, list, peers));
        }
        rows.add(ofAll(list, peers));
        return rows;
    }

    private static FalseFlags of(String cohort, PeerCells list, PeerRates peers) {
        double[] byLaw = new double[RateLaws.LAWS];
        long listed = 0;
        for (var e : list.vehicles().entrySet()) {
            PeerCells.Key cell = e.getKey();
            if (!cohort.equals(PeerRates.ALL) && !cohort.equals(cell.vehicleClass())) {
                continue;
            }
            String vehicleClass = cell.vehicleClass().isEmpty() ? null : cell.vehicleClass();
            double[] noWorse = peers.noWorse(vehicleClass, cell.events(), cell.years());
            for (int i = 0; i < byLaw.length; i++) {
                byLaw[i] += e.getValue() * noWorse[i];
            }
            listed += e.getValue();
        }
        double mean = 0;
        for (double x : byLaw) {
            mean += x / byLaw.length;
        }
        double variance = 0;
        for (double x : byLaw) {
            variance += (x - mean) * (x - mean) / byLaw.length;
        }
        return new FalseFlags(
                cohort,
                listed,
                Math.min(listed, mean + ALLOWANCE * Math.sqrt(variance)),
                Math.min(listed, limit(byLaw)));
    }

    /** Share of the list; NaN for an empty one. */
    public double share() {
        return listed == 0 ? Double.NaN : expected / listed;
    }

    /** The limit as a share of the list; NaN for an empty one. */
    public double upperShare() {
        return listed == 0 ? Double.NaN : (double) upperLimit / listed;
    }

    /**
     * Under each law the number is taken as Poisson, whose upper limits are no smaller than those of a sum of unlike chances; the
     * laws weigh alike.
     */
    private static long limit(double[] byLaw) {
        long low = -1;
        long high = 1;
        while (chanceUpTo(high, byLaw) < LIMIT_CHANCE) {
            low = high;
            high *= 2;
        }
        while (high - low > 1) {
            long middle = (low + high) / 2;
            if (chanceUpTo(middle, byLaw) < LIMIT_CHANCE) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private static double chanceUpTo(long number, double[] byLaw) {
        double sum = 0;
        for (double mean : byLaw) {
            sum += mean > 0 ? Math.exp(GammaFunction.logRegularizedUpper(number + 1.0, mean)) : 1;
        }
        return sum / byLaw.length;
    }
}
