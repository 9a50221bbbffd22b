package sensorrounds.replacement;

import java.io.Serializable;

/**
 * Age replacement: replace at failure, at cost cf, or at age T, at cost cp, whichever comes first. By renewal-reward the
 * long-run cost per unit of time is
 *
 * <pre>c(T) = (cf F(T) + cp S(T)) / integral of S from 0 to T</pre>
 *
 * With a rising hazard h it is least where h(T) integral_0^T S - F(T) = cp/(cf - cp), and there c = (cf - cp) h(T). There
 * is no finite optimum when the hazard does not rise, or not far enough: then run to failure, c = cf/mean. Source: Barlow
 * and Proschan (1965), Mathematical Theory of Reliability, ch. 4 sec. 2.
 */
public final class AgeReplacement {
    /**
     * Cheapest policy.
     *
     * @param age age to replace at; infinite for running to failure
     * @param costRate long-run cost per unit of time under it
     */
    public record Optimum(double age, double costRate) implements Serializable {
        public boolean finite() {
            return age < Double.POSITIVE_INFINITY;
        }
    }

    private final AgeingLaw law;
    private final double planned;
    private final double afterFailure;

    /**
     * @param planned cost of a planned replacement, over 0
     * @param afterFailure cost of a replacement after failure, over 0
     */
    public AgeReplacement(AgeingLaw law, double planned, double afterFailure) {
        if (!(planned > 0 && afterFailure > 0 && planned + afterFailure < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("cost of a planned replacement " + planned + ", after a failure "
                    + afterFailure + "; both must be amounts over 0, see the costs in the settings");
        }
        this.law = law;
        this.planned = planned;
        this.afterFailure = afterFailure;
    }

    /** c(T): long-run cost per unit of time of replacing at this age. */
    public double costRate(double age) {
        double s = law.survival(age);
        return (afterFailure * (1 - s) + planned * s) / law.meanUpTo(age);
    }

    public double runToFailureCostRate() {
        return afterFailure / law.mean();
    }

    /**
     * The optimum, by bisection of the first-order condition to the last bit. An optimum past {@link AgeingLaw#lastAge},
     * which no unit reaches, counts as none.
     */
    public Optimum optimum() {
        Optimum none = new Optimum(Double.POSITIVE_INFINITY, runToFailureCostRate());
        if (afterFailure <= planned) {
            return none;
        }
        double low = 0;
        double high = law.lastAge();
        if (!(condition(high) > 0)) {
            return none;
        }
        while (true) {
            double middle = (low + high) / 2;
            if (middle <= low || middle >= high) {
                return new Optimum(high, costRate(high));
            }
            if (condition(middle) > 0) {
                high = middle;
            } else {
                low = middle;
            }
        }
    }

    private double condition(double age) {
        return law.hazard(age) * law.meanUpTo(age) - (1 - law.survival(age)) - planned / (afterFailure - planned);
    }
}
