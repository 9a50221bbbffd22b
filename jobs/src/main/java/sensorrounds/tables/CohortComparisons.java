package sensorrounds.tables;

import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import sensorrounds.review.CohortComparison;
import sensorrounds.review.CohortComparison.Cohort;

/** Stored table of tests of whether cohorts differ. */
public final class CohortComparisons {
    public static final Table<CohortComparison> TABLE = new Table<>(
            "cohort_comparison",
            "Whether sensors of different classes, and of different parts, last differently by more than chance.",
            List.of(
                    word("divided_by", "What divides the sensors into cohorts.", CohortComparison::by),
                    word("status", "TESTED, or what stood against it.", CohortComparison::status),
                    text(
                            "cohorts",
                            "Curves compared, each with its failures and those expected if none differed.",
                            c -> c.cohorts().stream()
                                    .map(CohortComparisons::words)
                                    .collect(Collectors.joining("; "))),
                    number(
                            "chi_square",
                            "Score statistic of any difference; null when not tested.",
                            CohortComparison::chiSquare),
                    whole(
                            "degrees_of_freedom",
                            "Degrees of freedom of the statistic; 0 when not tested.",
                            CohortComparison::degreesOfFreedom),
                    number(
                            "p_value",
                            "Chance of so large a statistic if none differed; null when not tested.",
                            CohortComparison::pValue),
                    text("note", "Why there is no test, or what to know about it.", CohortComparison::note)));

    private CohortComparisons() {}

    private static String words(Cohort cohort) {
        String expected =
                Double.isNaN(cohort.expected()) ? "" : String.format(Locale.ROOT, ", %.1f expected", cohort.expected());
        return String.format(Locale.ROOT, "%s (%.0f failed%s)", cohort.name(), cohort.failures(), expected);
    }
}
