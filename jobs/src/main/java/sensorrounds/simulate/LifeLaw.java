package sensorrounds.simulate;

/**
 * The true law a simulated life follows: Weibull, {@code S(t) = exp(-(t/scaleDays)^shape)}. Written here once more, apart
 * from the estimators, so that a slip in theirs cannot hide behind the same slip in the data.
 *
 * @param shape above 0; above 1 for wear-out
 * @param scaleDays age by which 63.2 % have failed, days; above 0
 */
public record LifeLaw(double shape, double scaleDays) {
    public LifeLaw {
        if (!(shape > 0) || !(scaleDays > 0)) {
            throw new IllegalArgumentException(
                    "no Weibull law with shape " + shape + " and scale " + scaleDays + " days: both must be above 0");
        }
    }

    /** Share still alive at this age, days. */
    public double survival(double days) {
        return days <= 0 ? 1 : StrictMath.exp(-StrictMath.pow(days / scaleDays, shape));
    }

    /** Age at which the share alive has fallen to {@code survival}, days; the inverse of {@link #survival}. */
    double age(double survival) {
        return scaleDays * StrictMath.pow(-StrictMath.log(survival), 1 / shape);
    }
}
