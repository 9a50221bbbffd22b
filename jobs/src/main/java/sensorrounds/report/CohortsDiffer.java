package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sensorrounds.review.CohortComparison;
import sensorrounds.review.CohortComparison.Cohort;

/** The sentence that answers whether the cohorts differ. */
final class CohortsDiffer {
    /** Chance below which a difference is called one: the usual 5 %. */
    static final double CALLED = 0.05;

    private CohortsDiffer() {}

    static void write(Html h, List<CohortComparison> comparisons) {
        comparisons.stream().sorted(Comparator.comparing(CohortComparison::by)).forEach(c -> sentence(h, c));
    }

    private static void sentence(Html h, CohortComparison c) {
        h.open("p", "class", "differ");
        h.element("span", "Do the " + Words.many(c.by()) + " differ?", "class", "key");
        if (c.status() != CohortComparison.Status.TESTED) {
            h.text(" Not tested: " + c.note() + ".").close("p").line();
            return;
        }
        boolean differ = c.pValue() < CALLED;
        h.text((differ ? " Yes, by more than chance" : " Not by more than chance explains")
                + " (" + probability(c.pValue()) + "; chi-square " + Format.figure(c.chiSquare()) + " on "
                + Format.count(c.degreesOfFreedom(), "degree") + " of freedom)");
        Optional<Cohort> worst = c.cohorts().stream()
                .filter(g -> g.expected() > 0)
                .max(Comparator.comparingDouble((Cohort g) -> (g.failures() - g.expected()) / Math.sqrt(g.expected()))
                        .thenComparing(Cohort::name));
        if (differ && worst.isPresent()) {
            h.text("; most above what was to be expected is ").data(worst.get().name());
            h.text(", with " + Format.count(Math.round(worst.get().failures()), "failure") + " against "
                    + Format.fixed(worst.get().expected(), 1));
        }
        h.text(c.note().isEmpty() ? "." : "; " + c.note() + ".").close("p").line();
    }

    private static String probability(double p) {
        return p < 0.001 ? "p\u00a0<\u00a00.001" : "p\u00a0=\u00a0" + Format.fixed(p, 3);
    }
}
