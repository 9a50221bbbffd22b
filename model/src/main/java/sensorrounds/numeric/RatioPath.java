package sensorrounds.numeric;

/**
 * Where a profile likelihood has fallen by as much as its limit allows: the root likelihood ratio is followed from the
 * maximum outwards. Each search for the other parameters begins where the one next to it towards the maximum ended, for
 * far out the likelihood may have other maxima, and a step too far is taken back. Source of the limits: Meeker and Escobar
 * (1998), Statistical Methods for Reliability Data, 8.3; of the root: Dowell and Jarratt (1971), BIT 11:168-174
 * (from memory).
 */
public final class RatioPath {
    /** A point lost so far beyond the limit tells nothing about where the limit lies. */
    private static final double FARTHEST_OVER = 2;

    private static final double SHORTEST_STEP = 1e-9;
    private static final int MAX_STEPS = 400;

    private final Profile profile;
    private final double z;
    private final double tolerance;

    /** A profile likelihood. */
    @FunctionalInterface
    public interface Profile {
        /**
         * Root of twice the loss against the maximum.
         *
         * @param offset of the quantity from its value at the maximum
         * @param others where to begin with the other parameters; left where they are best
         * @return NaN when no maximum was found
         */
        double rootRatio(double offset, double[] others);
    }

    /**
     * @param z root ratio at a limit
     * @param tolerance of the offset, and of the root ratio
     */
    public RatioPath(Profile profile, double z, double tolerance) {
        this.profile = profile;
        this.z = z;
        this.tolerance = tolerance;
    }

    /**
     * Offset of the limit.
     *
     * @param start the other parameters at the maximum
     * @param firstStep its sign gives the side
     * @param furthest offset (without sign) beyond which the limit counts as infinite
     * @return infinite where the likelihood never falls low enough; NaN where it cannot be followed
     */
    public double limit(double[] start, double firstStep, double furthest) {
        double[] others = start.clone();
        double inner = 0;
        double atInner = -z;
        double step = firstStep;
        for (int i = 0; i < MAX_STEPS; i++) {
            if (Math.abs(inner) > furthest) {
                return Math.copySign(Double.POSITIVE_INFINITY, firstStep);
            }
            if (Math.abs(step) < SHORTEST_STEP * Math.abs(firstStep)) {
                return Double.NaN;
            }
            double[] there = others.clone();
            double at = profile.rootRatio(inner + step, there) - z;
            if (at < 0) {
                inner += step;
                atInner = at;
                others = there;
                step *= 1.5;
            } else if (at <= FARTHEST_OVER * z) {
                return between(others, inner, atInner, inner + step, at);
            } else {
                step /= 2;
            }
        }
        return Double.NaN;
    }

    /** Illinois: the end that stays loses half its say, or the steps would creep. */
    private double between(double[] start, double from, double atFrom, double to, double atTo) {
        double[] others = start;
        double inner = from;
        double atInner = atFrom;
        double outer = to;
        double atOuter = atTo;
        for (int i = 0; i < MAX_STEPS && Math.abs(outer - inner) > tolerance; i++) {
            double next = inner - atInner * (outer - inner) / (atOuter - atInner);
            double[] there = others.clone();
            double at = profile.rootRatio(next, there) - z;
            if (Double.isNaN(at) || Math.abs(at) < tolerance) {
                return Double.isNaN(at) ? Double.NaN : next;
            }
            if (at > 0) {
                outer = next;
                atOuter = at;
                atInner /= 2;
            } else {
                inner = next;
                atInner = at;
                others = there;
                atOuter /= 2;
            }
        }
        return (inner + outer) / 2;
    }
}
