package sensorrounds.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import sensorrounds.history.FailureCause;
import sensorrounds.report.ReportData.ReportRatio;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CohortLadder;
import sensorrounds.survival.CurvePoint;
import sensorrounds.survival.NpmleCheck;

/** Section 9: for the analyst, how long sensors last and what that rests on. */
final class SurvivalSection implements Section {
    /** Cohorts drawn one by one; the table of fits holds all. */
    static final int CHARTS = 12;

    @Override
    public String id() {
        return "survival";
    }

    @Override
    public String title() {
        return "How long sensors last";
    }

    @Override
    public String question() {
        return "What fails at which age, in which cohort, and how much data stands behind it?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "A curve gives the share of sensors still working at an age. Sensors come under observation at different "
                + "ages, so a curve at any age rests only on those watched at that age: the number at risk may rise before "
                + "it falls. Where few are at risk the limits widen, and beyond the last observed age nothing is drawn. "
                + "A failure is known only to lie between the last good reading and the first silent one. The fitted curve "
                + "uses that whole interval and is the one the chances rest on; Kaplan–Meier stands beside it as a check. "
                + "If the two part, believe neither far out. The curve without a shape is drawn from the same intervals as "
                + "Weibull: slanted where the visits leave open when it fell, and shaky at early ages, where few sensors "
                + "were watched. The pessimistic bound counts each preventive replacement as a failure.";
    }

    @Override
    public void body(Html h, ReportData data) {
        if (data.fits().isEmpty() && data.curves().isEmpty()) {
            Cells.nothing(
                    h,
                    "No curve could be fitted. It takes sensors of known age with at least a few failures among them: "
                            + "record fittings, or first use in the fleet register.");
        } else {
            cautions(h, data);
            charts(h, data);
            CohortsDiffer.write(h, data.survival().comparisons());
            fits(h, data);
            CausesPart.write(h, data.survival().incidence());
        }
        ratios(h, data);
        causes(h, data);
    }

    private static void cautions(Html h, ReportData data) {
        priorPart(data.fits())
                .ifPresent(words ->
                        h.open("p", "class", "owed").text(words).close("p").line());
        double much = data.survival().preventiveWarningShare();
        List<CohortFit> many = data.fits().stream()
                .filter(f -> f.preventiveShare() > much)
                .sorted(Comparator.comparing(CohortFit::cohort))
                .toList();
        if (many.isEmpty()) {
            return;
        }
        h.open("p", "class", "owed");
        h.text("More than " + Format.chance(much) + " of the ends are preventive replacements in: ");
        for (int i = 0; i < many.size(); i++) {
            h.text(i == 0 ? "" : ", ").data(many.get(i).cohort());
            h.text(" (" + Format.share(many.get(i).preventiveShare()) + ")");
        }
        h.text(". Crews replace what looks weak, so the true curve may lie below the one drawn, though not below the "
                        + "pessimistic bound, which counts each of them as a failure.")
                .close("p")
                .line();
    }

    /** How much of what is said of lives comes from a declared prior and how much from this fleet; empty without one. */
    static Optional<String> priorPart(List<CohortFit> fits) {
        return fits.stream()
                .filter(f -> f.cohort().equals(CohortLadder.POOL))
                .filter(f -> f.law().shares().prior() > 0)
                .findFirst()
                .map(f -> "This fleet has " + Format.count(f.failures(), "failure")
                        + " of sensors of known age, too few for a law of life of its own: "
                        + Format.chance(f.law().shares().prior())
                        + " of what is known of the median life comes from the prior that the settings declare, "
                        + Format.chance(f.law().shares().own())
                        + " from the fleet. The limits are as wide as that.");
    }

    private static void charts(Html h, ReportData data) {
        h.element("h3", "Curves");
        List<String> cohorts = Stream.concat(
                        data.fits().stream()
                                .sorted(Comparator.comparingLong(CohortFit::lives)
                                        .reversed()
                                        .thenComparing(CohortFit::cohort))
                                .map(CohortFit::cohort),
                        data.curves().stream().map(CurvePoint::cohort).sorted())
                .distinct()
                .toList();
        if (cohorts.size() > CHARTS) {
            h.element(
                    "p",
                    "The " + CHARTS + " largest of " + Format.whole(cohorts.size()) + " cohorts are drawn.",
                    "class",
                    "cut");
        }
        h.open("div", "class", "charts");
        CohortsChart.write(h, data.fits(), data.curves());
        cohorts.stream().limit(CHARTS).forEach(c -> new SurvivalChart(c, data.curves()).write(h));
        h.close("div").line();
    }

    private static void fits(Html h, ReportData data) {
        if (data.fits().isEmpty()) {
            return;
        }
        h.element("h3", "Fits");
        List<CohortFit> rows = data.fits().stream()
                .sorted(Comparator.comparing(CohortFit::cohort))
                .toList();
        new Grid<CohortFit>(
                        Grid.Shape.SCROLLS, "Laws of life by cohort: the law in use, and the Weibull with 95 % limits")
                .column("Cohort", (h1, f) -> h1.data(f.cohort()))
                .column("Status of its own fit", (h1, f) -> h1.data(Words.ofName(f.status())))
                .column("Stands on", SurvivalSection::basis)
                .column("To know", (h1, f) -> note(h1, f.note()))
                .column("Without a shape", (h1, f) -> note(h1, npmle(f.npmle())))
                .count("Lives", CohortFit::lives)
                .count("Failures", CohortFit::failures)
                .number("Unit-years", CohortFit::exposureYears, (h1, f) -> h1.text(Format.whole(f.exposureYears())))
                .number(
                        "Weibull shape",
                        CohortFit::shape,
                        (h1, f) -> limits(
                                h1,
                                Format.figure(f.shape()),
                                Format.figure(f.shapeLower()),
                                Format.figure(f.shapeUpper())))
                .number(
                        "Weibull scale, years",
                        CohortFit::scaleDays,
                        (h1, f) -> limits(h1, inYears(f.scaleDays()), inYears(f.scaleLower()), inYears(f.scaleUpper())))
                .column("Law in use", (h1, f) -> law(h1, f))
                .number("Median life, years", CohortFit::medianDays, (h1, f) -> h1.text(inYears(f.medianDays())))
                .number(
                        "Log-likelihood",
                        CohortFit::logLikelihood,
                        (h1, f) -> h1.text(Format.fixed(f.logLikelihood(), 1)))
                .number("Iterations", CohortFit::iterations, (h1, f) -> h1.text(Format.whole(f.iterations())))
                .number("Gradient", CohortFit::gradientNorm, (h1, f) -> h1.text(scientific(f.gradientNorm())))
                .number("Preventive", CohortFit::preventiveShare, (h1, f) -> h1.text(Format.share(f.preventiveShare())))
                .write(h, rows);
    }

    /** The rung, and whose experience it is where it is not the cohort's own alone. */
    private static void basis(Html h, CohortFit f) {
        CohortFit.Shares shares = f.law().shares();
        h.open("span", "class", "key").data(Words.ofName(f.rung())).close();
        if (shares.own() < 1) {
            List<String> words = new ArrayList<>();
            words.add(shares.own() > 0 ? Format.chance(shares.own()) + " its own lives" : "");
            words.add(shares.others() > 0 ? Format.chance(shares.others()) + " other cohorts’ or all lives" : "");
            words.add(shares.prior() > 0 ? Format.chance(shares.prior()) + " the declared prior" : "");
            words.removeIf(String::isEmpty);
            h.element("span", String.join(", ", words), "class", "under");
        }
    }

    private static void note(Html h, String note) {
        if (note.isBlank()) {
            h.text("nothing");
        } else {
            h.open("span", "class", "sentence").data(note).close();
        }
    }

    private static void law(Html h, CohortFit f) {
        if (f.law().form() == null) {
            h.text(Format.NONE);
            return;
        }
        h.element("span", Words.of(f.law().form()), "class", "key");
        if (f.law().form() == CohortFit.Form.EARLY_AND_WEAR) {
            h.element(
                    "span",
                    "early: shape " + Format.figure(f.law().earlyShape()) + ", scale "
                            + inYears(f.law().earlyScaleDays())
                            + " years; wear-out: shape " + Format.figure(f.law().wearShape()) + ", scale "
                            + inYears(f.law().wearScaleDays()) + " years",
                    "class",
                    "under");
        }
    }

    private static void limits(Html h, String value, String lower, String upper) {
        h.element("span", value, "class", "key");
        h.element("span", lower + "–" + upper, "class", "under");
    }

    private static String npmle(NpmleCheck check) {
        String words = Words.ofName(check.status());
        words += Double.isFinite(check.fromDays()) ? ", failures from age " + Format.age((int) check.fromDays()) : "";
        words += check.uniqueness().isEmpty() ? "" : ", " + Words.ofName(check.uniqueness());
        return check.note().isEmpty() ? words : words + ": " + check.note();
    }

    private static String inYears(double days) {
        return Format.figure(Format.inYears(days));
    }

    /** A gradient norm matters only by its order of magnitude. */
    private static String scientific(double x) {
        return Double.isFinite(x) ? String.format(Locale.ROOT, "%.0e", x) : Format.NONE;
    }

    private static void ratios(Html h, ReportData data) {
        h.element("h3", "What the last report says");
        if (data.ratios().isEmpty()) {
            Cells.nothing(h, "Too few failures followed a report to tell what a last report says.");
            return;
        }
        h.element(
                "p",
                "A ratio of 3 means: sensors with this last report fail three times as often as sensors of their age do. "
                        + "It is failures seen to failures expected, drawn towards the value in the settings where few "
                        + "were seen, and multiplies the hazard behind each chance in this report.");
        List<ReportRatio> rows = data.ratios().stream()
                .sorted(Comparator.comparing(ReportRatio::report))
                .toList();
        new Grid<ReportRatio>(Grid.Shape.CARDS, "Failures after a last report, seen and expected from age alone")
                .column("Last report", (h1, r) -> h1.text(Words.of(r.report())))
                .number("Ratio used", ReportRatio::ratio, (h1, r) -> h1.text(Format.fixed(r.ratio(), 1)))
                .count("Failures seen", ReportRatio::observed)
                .number("Expected from age", ReportRatio::expected, (h1, r) -> h1.text(Format.fixed(r.expected(), 1)))
                .write(h, rows);
    }

    private static void causes(Html h, ReportData data) {
        h.element("h3", "Causes of failure");
        long all = data.failureCauses().values().stream()
                .mapToLong(Long::longValue)
                .sum();
        if (all == 0) {
            Cells.nothing(h, "No failure is on record, so there are no causes to count.");
            return;
        }
        List<Map.Entry<FailureCause, Long>> rows = data.failureCauses().entrySet().stream()
                .sorted(Map.Entry.<FailureCause, Long>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .toList();
        new Grid<Map.Entry<FailureCause, Long>>(Grid.Shape.CARDS, "Failures by cause, as the logs give it")
                .column("Cause", (h1, e) -> h1.text(Words.of(e.getKey())))
                .count("Failures", Map.Entry::getValue)
                .number("Share", Map.Entry::getValue, (h1, e) -> h1.text(Format.share(e.getValue(), all)))
                .write(h, rows);
    }
}
