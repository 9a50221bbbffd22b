package sensorrounds.replacement;

import java.util.Arrays;
import sensorrounds.numeric.Quadrature;
import sensorrounds.outlook.SurvivalAhead;

/**
 * What replacing one sensor at a stop that happens anyway is worth, against leaving it for some days more:
 *
 * <pre>gain(t) = P(t) B - g m(t)</pre>
 *
 * P(t) is the chance of not working t days on, B the cost of a breakdown, m(t) = integral of 1 - P(s) over 0..t the working
 * days given up, and g what one of them is worth: the least long-run cost per day of an ordinary sensor of the cohort that
 * is replaced at such stops or at its failure, {@link AgeReplacement} with w against B + w, w the piece with its work. It
 * is the one-step marginal rule of renewal-reward theory; for short t it changes sign at the optimal age. Source: Barlow and
 * Proschan (1965), ch. 4; Berg (1980), A marginal cost analysis for preventive replacement policies, EJOR 4 (from memory);
 * at opportunities: Dekker and Dijkstra (1992), Opportunity-based age replacement, Naval Research Logistics 39 (from
 * memory).
 *
 * @param piece w, cost of the piece with its work
 * @param breakdown B
 * @param rate g, per day
 */
record SensorValue(SurvivalAhead ahead, double piece, double breakdown, double rate) {
    /** Cumulative hazards between which the break-even is sought: P from 1e-13 to 1 - 4e-18. */
    private static final double LEAST_HAZARD = 1e-13;

    private static final double MOST_HAZARD = 40;

    double failedAlready() {
        return ahead.failureBy(0);
    }

    /** The part of the gain that comes from failures still to come: a stop reads its sensors, and finds the dead. */
    double gainAhead(int days) {
        return (ahead.failureBy(days) - failedAlready()) * breakdown - givenUp(days);
    }

    private double givenUp(int days) {
        return days == 0 ? 0 : rate * Quadrature.panel(s -> 1 - ahead.failureBy(s), 0, days);
    }

    /**
     * The P from which the gain ahead covers the hurdle for a sensor that answers at the stop, if this one's hazard from
     * today on is multiplied by whatever it takes; what it may have died of before is in P as it is. As the gain rises with
     * that factor, gain over hurdle and P over break-even are the same thing. NaN when no P suffices.
     *
     * @param asked least gain asked for
     */
    double breakEven(int days, double asked) {
        if (!(breakdown > asked)) {
            return Double.NaN;
        }
        double before = ahead.hazardBy(0);
        double whole = ahead.hazardBy(days) - before;
        boolean plain = whole > 0 && whole < Double.POSITIVE_INFINITY;
        // Share of the hazard up to the horizon that falls before each point.
        double[] shares = Quadrature.at(s -> plain ? (ahead.hazardBy(s) - before) / whole : s / days, 0, days);
        double[] working = new double[shares.length];
        double low = Math.log(LEAST_HAZARD);
        double high = Math.log(MOST_HAZARD);
        // 40 halvings of 34 log units: the break-even is right to 3e-11 of itself.
        for (int i = 0; i < 40; i++) {
            double middle = (low + high) / 2;
            double hazard = Math.exp(middle);
            Arrays.setAll(working, n -> Math.exp(-hazard * shares[n]));
            double gain = -Math.expm1(-hazard) * breakdown - rate * Quadrature.panel(working, 0, days);
            if (gain > asked) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return -Math.expm1(-before - Math.exp(high));
    }
}
