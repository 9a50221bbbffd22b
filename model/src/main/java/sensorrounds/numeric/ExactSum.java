package sensorrounds.numeric;

import java.io.Serializable;

/**
 * A sum that does not depend on the order of its terms nor on how they were split and merged: terms are rounded to whole
 * multiples of 2^-60 and added as integers, in two words. The rounding of one term is at most 2^-61; terms up to 2^33
 * in size are taken exactly to that grid, and the sum may grow to 2^42. Not thread safe.
 */
public final class ExactSum implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double UNIT = 0x1p20;
    private static final double SUB_UNIT = 0x1p40;
    private static final long SUB_UNITS = 1L << 40;
    /** Beyond this the integer words could overflow or lose the grid. */
    private static final double LARGEST = 0x1p42;

    private long units;
    private long subUnits;

    /** @throws IllegalArgumentException when the term is not a finite number up to 2^42 in size */
    public void add(double term) {
        if (!(Math.abs(term) <= LARGEST)) {
            throw new IllegalArgumentException(
                    "a term of " + term + " in an exact sum; expected a finite number up to " + LARGEST + " in size");
        }
        double scaled = term * UNIT;
        double whole = Math.rint(scaled);
        units += (long) whole;
        subUnits += (long) Math.rint((scaled - whole) * SUB_UNIT);
        carry();
    }

    public void merge(ExactSum other) {
        units += other.units;
        subUnits += other.subUnits;
        carry();
    }

    public double value() {
        return units / UNIT + subUnits / (UNIT * SUB_UNIT);
    }

    /** Keeps the lower word in [0, 2^40), so that equal sums have equal words. */
    private void carry() {
        long over = Math.floorDiv(subUnits, SUB_UNITS);
        units += over;
        subUnits -= over * SUB_UNITS;
    }
}
