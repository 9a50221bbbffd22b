package sensorrounds.accuracy;

/**
 * What each unit stands for when its fate by an age is known: its weight times the inverse chance of having been kept in
 * sight so far, and 0 where it was lost before. Sums of these weights stand for all units that entered before the age, lost
 * ones included, as {@link BrierScore} adds them up; for sums of one's own, by group or by list.
 *
 * <p>Source: Robins and Rotnitzky (1992), AIDS Epidemiology, 297-331; for delayed entry the chance is that since each
 * unit's entry, as in {@link BrierScore}.
 */
public final class SightWeights {
    private SightWeights() {}

    /**
     * @return one per unit
     * @throws IllegalArgumentException if everybody in sight was lost before the age
     */
    public static double[] to(double age, FollowUp units) {
        double[] weights = CensoringCurve.of(units).weightsTo(age);
        for (int i = 0; i < weights.length; i++) {
            weights[i] *= units.weight(i);
        }
        return weights;
    }
}
