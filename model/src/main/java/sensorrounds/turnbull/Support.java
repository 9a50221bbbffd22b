package sensorrounds.turnbull;

import java.util.Arrays;
import sensorrounds.survival.LifetimeSample;

/**
 * The innermost intervals of a sample: a left end of a life followed at once by a right end of a life or by an entry.
 * Only they can carry mass: anywhere else it could move to one of them and raise the likelihood. Entries count as right
 * ends because mass before an entry is no loss to the life that entered there.
 *
 * <p>Sources: Turnbull (1976), JRSS B 38:290-295; entries as ends: Frydman (1994), JRSS B 56:71-74, and Hudgens (2005),
 * JRSS B 67:573-587. Ends at one age come in the order: left end of an exact failure, right end or entry, left end of
 * an interval; so exact failures stand alone and (0, 1] does not touch (1, 2].
 */
final class Support {
    private static final int EXACT = 1;
    private static final int RIGHT = 2;
    private static final int LEFT = 4;

    private final double[] lower;
    private final double[] upper;

    private Support(double[] lower, double[] upper) {
        this.lower = lower;
        this.upper = upper;
    }

    static Support of(LifetimeSample sample) {
        double[] ages = distinctAges(sample);
        byte[] ends = new byte[ages.length];
        for (int i = 0; i < sample.size(); i++) {
            mark(ends, ages, sample.entry(i), RIGHT);
            mark(ends, ages, sample.lower(i), sample.exact(i) ? EXACT | RIGHT : LEFT);
            if (sample.failed(i)) {
                mark(ends, ages, sample.upper(i), RIGHT);
            }
        }
        double[] lower = new double[2 * ages.length + 1];
        double[] upper = new double[2 * ages.length + 1];
        int size = 0;
        double open = Double.NaN;
        for (int a = 0; a < ages.length; a++) {
            if ((ends[a] & EXACT) != 0) {
                open = ages[a];
            }
            if ((ends[a] & RIGHT) != 0 && !Double.isNaN(open)) {
                lower[size] = open;
                upper[size++] = ages[a];
                open = Double.NaN;
            }
            if ((ends[a] & LEFT) != 0) {
                open = ages[a];
            }
        }
        if (!Double.isNaN(open)) {
            lower[size] = open;
            upper[size++] = Double.POSITIVE_INFINITY;
        }
        return new Support(Arrays.copyOf(lower, size), Arrays.copyOf(upper, size));
    }

    private static double[] distinctAges(LifetimeSample sample) {
        double[] ages = new double[3 * sample.size()];
        int n = 0;
        for (int i = 0; i < sample.size(); i++) {
            ages[n++] = sample.entry(i);
            ages[n++] = sample.lower(i);
            ages[n++] = sample.failed(i) ? sample.upper(i) : sample.lower(i);
        }
        Arrays.sort(ages);
        int distinct = 0;
        for (int i = 0; i < n; i++) {
            if (i == 0 || ages[i] > ages[i - 1]) {
                ages[distinct++] = ages[i];
            }
        }
        return Arrays.copyOf(ages, distinct);
    }

    private static void mark(byte[] ends, double[] ages, double age, int end) {
        ends[Arrays.binarySearch(ages, age)] |= (byte) end;
    }

    int size() {
        return lower.length;
    }

    double lower(int i) {
        return lower[i];
    }

    double upper(int i) {
        return upper[i];
    }

    /** Index of the first interval that lies wholly after the age. */
    int firstAfter(double age) {
        int low = 0;
        int high = lower.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            boolean after = lower[middle] > age || lower[middle] == age && upper[middle] > age;
            if (after) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    /** Number of intervals that lie wholly at or before the age. */
    int endUpTo(double age) {
        int low = 0;
        int high = upper.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (upper[middle] <= age) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Intervals in which a life known to have ended in (from, to], or at from = to, can have ended. */
    IntervalRange within(double from, double to) {
        int first = firstAfter(from);
        boolean exactHere = from == to && first > 0 && lower[first - 1] == from && upper[first - 1] == from;
        return new IntervalRange(exactHere ? first - 1 : first, endUpTo(to));
    }
}
