package sensorrounds.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import sensorrounds.causes.CauseSample;
import sensorrounds.causes.PreventiveView;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.Curves;
import sensorrounds.survival.FitReport;
import sensorrounds.survival.LifetimeSample;
import sensorrounds.survival.NpmleCheck;
import sensorrounds.turnbull.InnermostInterval;
import sensorrounds.turnbull.Turnbull;
import sensorrounds.turnbull.TurnbullFit;

/**
 * What stands beside the law of a cohort so that it can be doubted: curves counted without a shape, the bound that
 * preventive replacement sets, and the causes. Reckoned on the cohort's {@link AgeGrid}.
 *
 * @param curves Kaplan-Meier; the pessimistic bound, where any sensor was replaced preventively; the nonparametric
 *     maximum likelihood estimate, where there is one
 * @param report what that estimate says of itself
 * @param caution what to know before the curves are used; empty when nothing
 */
record CohortDiagnostics(
        List<CurvePoint> curves, List<CauseIncidence> incidence, NpmleCheck npmle, FitReport report, String caution) {

    /** @param warningShare share of preventive ends above which to warn */
    static CohortDiagnostics of(String cohort, LifeCells days, double warningShare) {
        AgeGrid grid = AgeGrid.of(days.size());
        LifeCells cells = days.on(grid);
        LifetimeSample sample = cells.sample();
        CauseSample<EndCause> causes = cells.causes();
        PreventiveView.Result<EndCause> view =
                PreventiveView.withDefaults().withWarningShare(warningShare).of(causes, EndCause.PREVENTIVE);
        TurnbullFit fit = Turnbull.withDefaults().fit(sample);
        List<CurvePoint> curves =
                new ArrayList<>(Curves.steps(cohort, CurvePoint.Method.KAPLAN_MEIER, view.independent()));
        if (causes.ends(EndCause.PREVENTIVE) > 0) {
            curves.addAll(Curves.steps(cohort, CurvePoint.Method.PESSIMISTIC, view.pessimistic()));
        }
        curves.addAll(points(cohort, fit, sample));
        List<String> cautions = new ArrayList<>();
        view.warning().ifPresent(cautions::add);
        collapse(view.pessimistic().collapsedAt(), cautions);
        return new CohortDiagnostics(
                curves,
                CauseIncidence.of(cohort, view.incidence()),
                check(
                        fit,
                        sample,
                        grid == AgeGrid.DAYS
                                ? ""
                                : "ages in " + grid.words() + ", for " + days.size() + " different lives"),
                fit.report(sample),
                String.join("; ", cautions));
    }

    private static void collapse(OptionalDouble age, List<String> cautions) {
        age.ifPresent(a -> cautions.add("all sensors under observation at age " + (long) Math.ceil(a)
                + " days ended there though others entered later: from that age the counted curves and the causes say"
                + " nothing"));
    }

    private static NpmleCheck check(TurnbullFit fit, LifetimeSample sample, String gridNote) {
        boolean maximum = fit.converged() || fit.status() == TurnbullFit.Status.COLLAPSED;
        String note =
                fit.cause().isEmpty() || gridNote.isEmpty() ? fit.cause() + gridNote : fit.cause() + "; " + gridNote;
        return new NpmleCheck(
                fit.status().name(),
                maximum && sample.failures() > 0 ? fit.firstSupportedAge() : Double.NaN,
                maximum ? fit.uniqueness().name() : "",
                note);
    }

    /** Both ends of every step, so that straight lines between the points show where the curve is not determined. */
    private static List<CurvePoint> points(String cohort, TurnbullFit fit, LifetimeSample sample) {
        if (!fit.converged()) {
            return List.of();
        }
        TreeMap<Integer, Double> survival = new TreeMap<>();
        survival.put((int) fit.survival().from(), 1.0);
        double before = 1;
        for (InnermostInterval step : fit.masses()) {
            if (!step.beyondData()) {
                // A failure known to its day: the day before is the last at the old level.
                survival.putIfAbsent((int) (step.exact() ? step.lower() - 1 : step.lower()), before);
                survival.put((int) step.upper(), step.survivalAfter());
                before = step.survivalAfter();
            }
        }
        survival.putIfAbsent((int) fit.survival().to(), before);
        return Curves.withoutLimits(cohort, CurvePoint.Method.TURNBULL, survival, sample);
    }
}
