package sensorrounds.survival;

import java.io.Serializable;

/**
 * The fit of one cohort for the tables.
 *
 * @param cohort name of the cohort
 * @param rung rung of the ladder in use: own fit, pooled shape, pooled
 * @param status what came of the cohort's own fit
 * @param lives lives in the cohort
 * @param failures failures among them
 * @param exposureYears unit-years under observation
 * @param shape Weibull shape in use; NaN when there is none
 * @param shapeLower lower 95 % limit
 * @param shapeUpper upper 95 % limit
 * @param scaleDays Weibull scale in use, days
 * @param scaleLower lower 95 % limit
 * @param scaleUpper upper 95 % limit
 * @param medianDays median life, days
 * @param logLikelihood of the cohort's own fit; NaN when it failed
 * @param iterations iterations it took
 * @param gradientNorm scaled gradient norm where it stopped
 * @param preventiveShare preventive replacements among these and the failures; NaN without either
 * @param note what to know about it, in a sentence; empty when nothing
 * @param npmle the curve without a shape beside the law
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
        NpmleCheck npmle)
        implements Serializable {

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
                check);
    }
}
