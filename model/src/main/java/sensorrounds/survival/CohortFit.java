package sensorrounds.survival;

import java.io.Serializable;
import java.util.Optional;

/**
 * The fit of one cohort for the tables.
 *
 * @param cohort name of the cohort
 * @param rung rung of the ladder in use: own fit, partly pooled, pooled shape, pooled, weak prior, none
 * @param status what came of the cohort's own fit
 * @param lives lives in the cohort
 * @param failures failures among them
 * @param exposureYears unit-years under observation
 * @param shape Weibull shape: of the law in use, or of the Weibull fitted beside it; NaN when there is none
 * @param shapeLower lower 95 % limit, by the likelihood ratio where an own fit has fewer than 50 failures; NaN where they set none
 * @param shapeUpper upper 95 % limit
 * @param scaleDays Weibull scale, days, as the shape
 * @param scaleLower lower 95 % limit
 * @param scaleUpper upper 95 % limit
 * @param medianDays median life by the law in use, days
 * @param logLikelihood of the cohort's own Weibull fit; NaN when it failed
 * @param iterations iterations it took
 * @param gradientNorm scaled gradient norm where it stopped
 * @param preventiveShare preventive replacements among these and the failures; NaN without either
 * @param note what to know about it, in a sentence; empty when nothing
 * @param npmle the curve without a shape beside the law
 * @param law the law in use
 */
public record CohortFit(
        String cohort,
        String rung,
        String status,
        long lives,
        long failures,
        double exposureYears,
        double shape,
        double shapeLower,
        double shapeUpper,
        double scaleDays,
        double scaleLower,
        double scaleUpper,
        double medianDays,
        double logLikelihood,
        int iterations,
        double gradientNorm,
        double preventiveShare,
        String note,
        NpmleCheck npmle,
        LawInUse law)
        implements Serializable {

    /** Form of a law of life. */
    public enum Form {
        WEIBULL,
        /** {@link EarlyWearLife}. */
        EARLY_AND_WEAR
    }

    /**
     * Whose experience the scale of a law rests on, in shares that add up to 1; NaN where there is no law or they cannot be told.
     *
     * @param own of the cohort's own lives; for the pool of all cohorts, of all lives
     * @param others of the other cohorts, or of all lives together
     * @param prior of a declared prior
     */
    public record Shares(double own, double others, double prior) implements Serializable {
        public static final Shares OWN = new Shares(1, 0, 0);
        static final Shares OTHERS = new Shares(0, 1, 0);
        static final Shares NONE = new Shares(Double.NaN, Double.NaN, Double.NaN);
    }

    /**
     * The law in use where it is not the Weibull of the columns before.
     *
     * @param form null when there is no law
     * @param earlyShape shape of the early hazard, 1 when it is constant; NaN but for two hazards, as the three that follow
     * @param earlyScaleDays its scale, days
     * @param wearShape shape of the wear-out beside it
     * @param wearScaleDays its scale, days
     * @param aicGain by how much Akaike's criterion prefers the best law of two hazards to the Weibull; NaN without one
     * @param shares what its scale rests on
     */
    public record LawInUse(
            Form form,
            double earlyShape,
            double earlyScaleDays,
            double wearShape,
            double wearScaleDays,
            double aicGain,
            Shares shares)
            implements Serializable {
        /** A Weibull law from a cohort's own lives. */
        public static LawInUse weibull(double aicGain) {
            return plain(Form.WEIBULL, aicGain, Shares.OWN);
        }

        static LawInUse of(Optional<LifeLaw> law, double aicGain, Shares shares) {
            if (law.isPresent() && law.get() instanceof EarlyWearLife two) {
                return new LawInUse(
                        Form.EARLY_AND_WEAR,
                        two.earlyShape(),
                        two.earlyScaleDays(),
                        two.wearShape(),
                        two.wearScaleDays(),
                        aicGain,
                        shares);
            }
            return plain(law.isPresent() ? Form.WEIBULL : null, aicGain, shares);
        }

        private static LawInUse plain(Form form, double aicGain, Shares shares) {
            return new LawInUse(form, Double.NaN, Double.NaN, Double.NaN, Double.NaN, aicGain, shares);
        }
    }

    /** The fit with the curve without a shape beside it. */
    public CohortFit with(NpmleCheck check) {
        return copy(note, check);
    }

    /** The fit with one more thing to know about it; the same when there is none. */
    public CohortFit noted(String more) {
        return more.isEmpty() ? this : copy(note.isEmpty() ? more : note + "; " + more, npmle);
    }

    private CohortFit copy(String newNote, NpmleCheck check) {
        return new CohortFit(
                cohort,
                rung,
                status,
                lives,
                failures,
                exposureYears,
                shape,
                shapeLower,
                shapeUpper,
                scaleDays,
                scaleLower,
                scaleUpper,
                medianDays,
                logLikelihood,
                iterations,
                gradientNorm,
                preventiveShare,
                newNote,
                check,
                law);
    }
}
