package sensorrounds.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sensorrounds.review.CauseIncidence;
import sensorrounds.review.CohortBy;
import sensorrounds.review.CohortComparison;
import sensorrounds.review.CohortComparison.Cohort;
import sensorrounds.review.CohortComparison.Status;
import sensorrounds.review.EndCause;

/** Invented causes and comparisons of the cohorts of {@link SampleCurves}. */
final class SampleCauses {
    private SampleCauses() {}

    static SurvivalFacts facts() {
        List<CauseIncidence> rows = new ArrayList<>();
        for (String cohort : List.of("all", "van", "truck")) {
            rise(rows, cohort, EndCause.BATTERY, 0.55);
            rise(rows, cohort, EndCause.STEM_OR_CORROSION, 0.12);
            rise(rows, cohort, EndCause.INGRESS, 0);
            rise(rows, cohort, EndCause.PREVENTIVE, 0.14);
        }
        return new SurvivalFacts(
                rows,
                List.of(
                        new CohortComparison(
                                CohortBy.VEHICLE_CLASS,
                                Status.TESTED,
                                List.of(
                                        new Cohort("car", 196, 4, 14.2),
                                        new Cohort("truck", 402, 58, 41.3),
                                        new Cohort("van", 812, 121, 127.5)),
                                15.37,
                                2,
                                0.00046,
                                ""),
                        new CohortComparison(
                                CohortBy.PART,
                                Status.ONE_COHORT,
                                List.of(),
                                Double.NaN,
                                0,
                                Double.NaN,
                                "a comparison needs two cohorts or more")),
                0.20,
                SampleLives.ahead(),
                SampleLives.calendar(),
                Optional.of(SampleLives.vehicles("van")));
    }

    /** Facts of a cohort with this name. */
    static SurvivalFacts facts(String text) {
        List<CauseIncidence> rows = new ArrayList<>();
        rise(rows, "all", EndCause.BATTERY, 0.5);
        rise(rows, text, EndCause.BATTERY, 0.5);
        return new SurvivalFacts(
                rows,
                List.of(new CohortComparison(
                        CohortBy.PART,
                        Status.TESTED,
                        List.of(new Cohort(text, 9, 3, 1), new Cohort("other", 9, 1, 3)),
                        6.1,
                        1,
                        0.0135,
                        text)),
                0.20,
                SampleLives.ahead(),
                SampleLives.calendar(),
                Optional.of(SampleLives.vehicles(text)));
    }

    private static void rise(List<CauseIncidence> rows, String cohort, EndCause cause, double last) {
        for (int age = 0; age <= 3276; age += 91) {
            double share = last * Math.pow(age / 3276.0, 2);
            boolean limits = share > 0;
            rows.add(new CauseIncidence(
                    cohort,
                    cause,
                    age,
                    share,
                    limits ? 0.9 * share : Double.NaN,
                    limits ? 1.1 * share : Double.NaN,
                    90,
                    Math.floor(100 * share)));
        }
    }
}
