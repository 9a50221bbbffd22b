package sensorrounds.numeric;

import java.io.Serializable;

/**
 * Sums that do not depend on the order of their terms nor on how they were split and merged: terms are rounded to whole
 * multiples of 2^-60 and added as integers, in two words. The rounding of one term is at most 2^-61; terms up to 2^33
 * in size are taken exactly to that grid, and a sum may grow to 2^42. Not thread safe.
 */
public final class ExactSums implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double UNIT = 0x1p20;
    private static final double SUB_UNIT = 0x1p40;
    private static final long SUB_UNITS = 1L << 40;
    /** Beyond this the integer words could overflow or lose the grid. */
    private static final double LARGEST = 0x1p42;

    private final long[] units;
    private final long[] subUnits;

    /** @param size number of sums kept side by side, all 0 */
    public ExactSums(int size) {
        units = new long[size];
        subUnits = new long[size];
    }

    /** @throws IllegalArgumentException when the term is not a finite number up to 2^42 in size */
    public void add(int i, double term) {
        if (!(Math.abs(term) <= LARGEST)) {
            throw new IllegalArgumentException(
                    "a term of " + term + " in an exact sum; expected a finite number up to " + LARGEST + " in size");
        }
        double scaled = term * UNIT;
        double whole = Math.rint(scaled);
        units[i] += (long) whole;
        subUnits[i] += (long) Math.rint((scaled - whole) * SUB_UNIT);
        carry(i);
    }

    /** @throws IllegalArgumentException when the other holds another number of sums */
    public void merge(ExactSums other) {
        if (other.units.length != units.length) {
            throw new IllegalArgumentException(other.units.length + " sums do not add to " + units.length);
        }
        for (int i = 0; i < units.length; i++) {
            units[i] += other.units[i];
            subUnits[i] += other.subUnits[i];
            carry(i);
        }
    }

    public double value(int i) {
        return units[i] / UNIT + subUnits[i] / (UNIT * SUB_UNIT);
    }

    public int size() {
        return units.length;
    }

    /** Keeps the lower word in [0, 2^40), so that equal sums have equal words. */
    private void carry(int i) {
        long over = subUnits[i] >> 40;
        units[i] += over;
        subUnits[i] -= over * SUB_UNITS;
    }
}
