package sensorrounds.survival;

/** A positive number held likely to lie between two limits: normal on its log, 95 % between them. */
record LikelyRange(double low, double high) {
    private static final double Z95 = 1.959963984540054;

    boolean isRising() {
        return 0 < low && low < high && high < Double.POSITIVE_INFINITY;
    }

    /** Mean of the log. */
    double centre() {
        return Math.log(low * high) / 2;
    }

    /** Standard deviation of the log. */
    double spread() {
        return Math.log(high / low) / 2 / Z95;
    }
}
