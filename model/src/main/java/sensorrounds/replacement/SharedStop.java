package sensorrounds.replacement;

import java.util.BitSet;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Which sensors of a vehicle to replace at one stop, exactly. With own gains c and chances p of having failed already,
 * unnoticed, a choice N brings
 *
 * <pre>f(N) = sum of c_i over N + B (product of (1 - p_i) outside N - product of (1 - p_i) over all)</pre>
 *
 * B is what a breakdown costs: sensors that are dead already cause one call-out between them, so the second term is B
 * times the chance that those of N, and no others, would have caused it. The set-up of the stop is paid once and does not
 * bear on which sensors are best, only on whether the stop pays.
 *
 * <p>With y = sum of l_i = -ln(1 - p_i) over N, f = sum of c + const e^y is convex and rising in (sum of c, y). So its
 * greatest value over all subsets is taken at a vertex of the zonotope that they span, and f's gradient there, (1, k) with
 * k over 0, is a direction that the vertex is extreme in: N = {i : c_i + k l_i > 0}. Hence it is one of the n + 1 sets met
 * when sensors are added by rising -c_i/l_i to those with c_i over 0; all are tried, in n log n steps. This is the exact
 * form, for one stop now, of grouping maintenance by shared set-up: Wildeman, Dekker and Smit (1997), A dynamic policy for
 * grouping maintenance activities, EJOR 99 (from memory).
 */
final class SharedStop {
    /** Chances nearer to certainty than this add nothing. */
    static final double MOST = 1 - 1e-12;

    /**
     * The best choice.
     *
     * @param chosen sensors to replace
     * @param value f of it, 0 for none
     */
    record Choice(BitSet chosen, double value) {}

    private SharedStop() {}

    static Choice best(double[] gains, double[] failedAlready, double breakdown) {
        double[] logs = new double[gains.length];
        double all = breakdown;
        for (int i = 0; i < gains.length; i++) {
            logs[i] = -Math.log1p(-Math.min(MOST, failedAlready[i]));
            all *= 1 - Math.min(MOST, failedAlready[i]);
        }
        int[] order = IntStream.range(0, gains.length)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(i -> price(gains[i], logs[i]))
                        .thenComparing(Comparator.naturalOrder()))
                .mapToInt(i -> i)
                .toArray();
        double gain = 0;
        double log = 0;
        double best = 0;
        int taken = 0;
        for (int n = 0; n < order.length; n++) {
            gain += gains[order[n]];
            log += logs[order[n]];
            double value = gain + all * Math.expm1(log);
            if (value > best) {
                best = value;
                taken = n + 1;
            }
        }
        BitSet chosen = new BitSet();
        IntStream.of(order).limit(taken).forEach(chosen::set);
        return new Choice(chosen, best);
    }

    /** What a unit of y must be worth before the sensor joins; nothing for one that pays by itself. */
    private static double price(double gain, double log) {
        return gain > 0 ? Double.NEGATIVE_INFINITY : log > 0 ? -gain / log : Double.POSITIVE_INFINITY;
    }
}
