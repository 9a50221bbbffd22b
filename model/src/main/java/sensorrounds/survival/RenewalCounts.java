package sensorrounds.survival;

import java.io.Serializable;

/**
 * Expected renewals M(t) of a place where what fails is replaced at once, from new at 0: M(t) = F(t) + integral of
 * M(t - u) dF(u). Riemann-Stieltjes sums at half-steps: Xie (1989), Communications in Statistics, Simulation 18:281-293
 * (from memory); the equation: Cox (1962), Renewal Theory, ch. 4. Past the grid M rises by one per mean life.
 */
public final class RenewalCounts implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double STEP_DAYS = 30;
    /** Just over 40 years. */
    private static final int STEPS = 488;

    private final double[] expected = new double[STEPS + 1];
    private final double beyondPerDay;

    private RenewalCounts(double beyondPerDay) {
        this.beyondPerDay = beyondPerDay;
    }

    public static RenewalCounts of(LifeLaw law) {
        RenewalCounts counts = new RenewalCounts(1 / law.mean());
        double[] half = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            half[i] = -Math.expm1(-law.cumulativeHazard((i + 0.5) * STEP_DAYS));
        }
        double[] m = counts.expected;
        for (int i = 1; i <= STEPS; i++) {
            double sum = -Math.expm1(-law.cumulativeHazard(i * STEP_DAYS)) - half[0] * m[i - 1];
            for (int j = 1; j < i; j++) {
                sum += half[i - j] * (m[j] - m[j - 1]);
            }
            m[i] = sum / (1 - half[0]);
        }
        return counts;
    }

    /** M(days); 0 up to day 0. */
    public double by(double days) {
        if (!(days > 0)) {
            return 0;
        }
        double at = days / STEP_DAYS;
        if (at >= STEPS) {
            return expected[STEPS] + (days - STEPS * STEP_DAYS) * beyondPerDay;
        }
        int i = (int) at;
        return expected[i] + (at - i) * (expected[i + 1] - expected[i]);
    }
}
