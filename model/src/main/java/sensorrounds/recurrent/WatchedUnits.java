package sensorrounds.recurrent;

/**
 * How many units' worth of departures a variance rests on: Satterthwaite's degrees of freedom, (sum v_i)^2 / sum v_i^2, less the one
 * that the mean took. v_i = f a_i^2 + p_i is what unit i may be expected to add to the variance: p_i if its events came as a
 * Poisson count, and f a_i^2 for units that differ, a_i being its share of the mean and f such that all v_i add up to the variance
 * found. Units watched for long count for more, so that of twenty, most of which have left, fewer than twenty tell how units differ. Sources:
 * Satterthwaite (1946), Biometrics Bulletin 2:110-114; Bell and McCaffrey (2002), Survey Methodology 28:169-181, for a model at
 * work in the degrees of freedom of errors by cluster (both from memory).
 *
 * <p>Sums of powers over the units watched are carried along, whatever their number; of the others, sums that stay.
 */
final class WatchedUnits {
    /** A unit's share of the mean and its variance as a Poisson count. */
    record Own(double share, double poisson) {
        static final Own NOTHING = new Own(0, 0);
    }

    /** Sums over units of powers of their shares a and Poisson variances p. */
    private static final class Sums {
        double n;
        double a;
        double aa;
        double aaa;
        double aaaa;
        double p;
        double pp;
        double ap;
        double aap;

        void add(double count, Own own) {
            double square = own.share * own.share;
            n += count;
            a += count * own.share;
            aa += count * square;
            aaa += count * square * own.share;
            aaaa += count * square * square;
            p += count * own.poisson;
            pp += count * own.poisson * own.poisson;
            ap += count * own.share * own.poisson;
            aap += count * square * own.poisson;
        }

        /** Every unit's a grows by x and its p by y. */
        void grow(double x, double y) {
            aap += y * aa + 2 * x * (ap + y * a) + x * x * (p + n * y);
            ap += y * a + x * p + n * x * y;
            pp += y * (2 * p + n * y);
            p += n * y;
            aaaa += x * (4 * aaa + x * (6 * aa + x * (4 * a + n * x)));
            aaa += x * (3 * aa + x * (3 * a + n * x));
            aa += x * (2 * a + n * x);
            a += n * x;
        }
    }

    private final Sums watched = new Sums();
    private final Sums away = new Sums();
    private double share;
    private double poisson;

    /** Share and Poisson variance of a unit watched since the curve began. */
    Own total() {
        return new Own(share, poisson);
    }

    /** What a unit gathered that entered, with nothing of its own, when {@link #total()} was {@code since}. */
    Own since(Own since) {
        return new Own(share - since.share, poisson - since.poisson);
    }

    /** The mean rises by this much for every unit watched. */
    void rise(double ofShare, double ofPoisson) {
        share += ofShare;
        poisson += ofPoisson;
        watched.grow(ofShare, ofPoisson);
    }

    /** Units with so much of their own are watched from now on. */
    void enter(long count, Own own) {
        away.add(-count, own);
        watched.add(count, own);
    }

    /** Units with so much of their own are no longer watched. */
    void leave(long count, Own own) {
        watched.add(-count, own);
        away.add(count, own);
    }

    /** Degrees of freedom of a sum of squared departures; 1 or more, NaN before any event. */
    double degrees(double squares) {
        double ofPoisson = watched.p + away.p;
        double ofShares = watched.aa + away.aa;
        double excess = Math.max(0, (squares - ofPoisson) / ofShares);
        double sum = excess * ofShares + ofPoisson;
        double ofSquares = excess * excess * (watched.aaaa + away.aaaa)
                + 2 * excess * (watched.aap + away.aap)
                + watched.pp
                + away.pp;
        return Math.max(1, sum * sum / ofSquares - 1);
    }
}
