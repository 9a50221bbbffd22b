package sensorrounds.replacement;

import java.io.Serializable;
import sensorrounds.numeric.Quadrature;

/**
 * Replacement at stops that happen anyway, and at no other time: a sensor is replaced at the first stop from age T on, or
 * after its failure. Stops come every tau days; a new sensor meets their rhythm anywhere. A failure is found at the next
 * stop, at the price of the piece alone, unless a call-out comes before it, after an exponential time of mean D, and costs B
 * more. With w the piece and its work, F and S the law of life, the long-run cost per day is by renewal-reward
 *
 * <pre>
 * c(T) = (w + B Q(T)) / (M(T) + D Q(T))
 * Q(T) = 1/tau integral_0^tau F(T + r) (1 - exp(-(tau - r)/D)) dr    chance of a call-out
 * M(T) = integral_0^T S + integral_0^tau S(T + r) (1 - r/tau) dr      expected days working
 * </pre>
 *
 * Q by integration by parts of the chance that a failure at age s meets no stop in time, averaged over the rhythm. It is
 * least where B Q'(T) = c (M'(T) + D Q'(T)), with
 *
 * <pre>
 * tau Q'(T) = integral_0^tau f(T + r) (1 - exp(-(tau - r)/D)) dr,    tau M'(T) = integral_0^tau S(T + r) dr
 * </pre>
 *
 * which, divided by S(T), are what leaving a sensor of age T from one stop to the next brings: the marginal form, the same
 * comparison that is made for every single sensor at its stop. Source of the form: Dekker and Dijkstra (1992), Naval Research
 * Logistics 39; Dekker and Smeitink (1991), EJOR 52 (both from memory; there stops are a Poisson process and failures are
 * found at once); renewal-reward: Barlow and Proschan (1965), ch. 4.
 *
 * <p>Limits: with tau and D to 0 every moment is a stop, and it is age replacement at w against w + B; with tau to infinity
 * there is no stop, and it is running to failure.
 */
public final class OpportunityReplacement {
    /**
     * Cheapest policy of this kind.
     *
     * @param age age from which the next stop is taken; infinite for running to failure
     * @param costRate long-run cost per day under it
     */
    public record Optimum(double age, double costRate) implements Serializable {
        public boolean finite() {
            return age < Double.POSITIVE_INFINITY;
        }
    }

    /** Halvings of the ages in question: the age to a millionth of a day or so. */
    private static final int HALVINGS = 36;

    /** Panels of the mean life; each is exact for polynomials of degree 31. */
    private static final int PANELS = 64;

    /** Call-out times before a stop within which a failure may be found by it; beyond, fewer than 1 in 50,000 are. */
    private static final double NEAR = 11;

    private final AgeingLaw law;
    private final double piece;
    private final double breakdown;
    private final double gapDays;
    private final double noticeDays;
    private final double width;
    private final double[] meanBefore = new double[PANELS + 1];

    /** Integrals over one gap from an age on, as far as the long-run cost needs them. */
    private record Gap(double called, double calledRate, double alive, double aliveShare) {}

    /**
     * @param piece w, over 0
     * @param breakdown B, 0 or more
     * @param gapDays tau, over 0
     * @param noticeDays D, over 0
     */
    public OpportunityReplacement(AgeingLaw law, double piece, double breakdown, double gapDays, double noticeDays) {
        if (!(piece > 0 && breakdown >= 0 && gapDays > 0 && noticeDays > 0 && piece + breakdown < 1e15)) {
            throw new IllegalArgumentException("piece with its work " + piece + ", breakdown " + breakdown
                    + ", days between stops " + gapDays + ", days to a call-out " + noticeDays
                    + "; all must be over 0, the breakdown may be 0: see the costs in the settings");
        }
        this.law = law;
        this.piece = piece;
        this.breakdown = breakdown;
        this.gapDays = gapDays;
        this.noticeDays = noticeDays;
        this.width = law.lastAge() / PANELS;
        for (int i = 0; i < PANELS; i++) {
            meanBefore[i + 1] = meanBefore[i] + Quadrature.panel(law::survival, i * width, (i + 1) * width);
        }
    }

    /** c(T). */
    public double costRate(double age) {
        Gap gap = gap(age);
        return (piece + breakdown * gap.called) / (meanUpTo(age) + gap.aliveShare + noticeDays * gap.called);
    }

    /** Cost per day when nothing is replaced before it fails. */
    public double runToFailureCostRate() {
        double called = 1 + noticeDays / gapDays * Math.expm1(-gapDays / noticeDays);
        return (piece + breakdown * called) / (meanBefore[PANELS] + noticeDays * called);
    }

    /** The optimum, by bisection of the marginal condition, which changes sign once at most, from below. */
    public Optimum optimum() {
        double low = 0;
        double high = law.lastAge();
        if (!(excess(high) > 0)) {
            return new Optimum(Double.POSITIVE_INFINITY, runToFailureCostRate());
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (excess(middle) > 0) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return new Optimum(high, costRate(high));
    }

    /** B Q' (M + D Q) - (w + B Q) (M' + D Q'), per sensor alive: over 0 where replacing at this age comes too late. */
    private double excess(double age) {
        Gap gap = gap(age);
        double cost = piece + breakdown * gap.called;
        double days = meanUpTo(age) + gap.aliveShare + noticeDays * gap.called;
        return breakdown * gap.calledRate * days - cost * (gap.alive + noticeDays * gap.calledRate);
    }

    private Gap gap(double age) {
        double split = Math.max(0, gapDays - NEAR * noticeDays);
        Gap far = part(age, 0, split);
        Gap near = part(age, split, gapDays);
        return new Gap(
                far.called + near.called,
                far.calledRate + near.calledRate,
                far.alive + near.alive,
                far.aliveShare + near.aliveShare);
    }

    private Gap part(double age, double from, double to) {
        double[] after = Quadrature.at(r -> r, from, to);
        double[] weights = Quadrature.weights(from, to);
        double called = 0;
        double calledRate = 0;
        double alive = 0;
        double aliveShare = 0;
        for (int i = 0; i < after.length; i++) {
            double working = law.survival(age + after[i]);
            double late = -weights[i] * Math.expm1(-(gapDays - after[i]) / noticeDays) / gapDays;
            called += (1 - working) * late;
            calledRate += working > 0 ? working * law.hazard(age + after[i]) * late : 0;
            alive += working * weights[i] / gapDays;
            aliveShare += working * weights[i] * (1 - after[i] / gapDays);
        }
        return new Gap(called, calledRate, alive, aliveShare);
    }

    private double meanUpTo(double age) {
        int before = (int) Math.min(PANELS, Math.floor(age / width));
        return meanBefore[before] + (before == PANELS ? 0 : Quadrature.panel(law::survival, before * width, age));
    }
}
