package sensorrounds.report;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import sensorrounds.analyst.CovariateEffect;
import sensorrounds.analyst.CovariateEffects;
import sensorrounds.analyst.Factor;
import sensorrounds.analyst.FamilyFit;
import sensorrounds.analyst.SetLikeness;
import sensorrounds.survival.Estimate;

/** For the analyst: what makes sensors last longer or shorter, and how alike those of one vehicle are. */
final class EffectsSection implements Section {
    /** Likeness is called likeness below this chance of none. */
    private static final double CALLED = 0.05;

    /** A drift test below this is named. */
    private static final double DRIFTS = 0.01;
    /** Distance in AIC from which a better family is named: common practice, no source. */
    private static final double BETTER = 10;

    @Override
    public String id() {
        return "effects";
    }

    @Override
    public String title() {
        return "What makes sensors last longer or shorter";
    }

    @Override
    public String question() {
        return "Which class, place, part or depot shortens lives, once the others are allowed for?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "Each factor stands beside all others. A life factor of 0.8 says: sensors here last 0.8 times as long as at "
                + "the reference level of the same factor. Where the limits hold 1, chance may explain it; with many rows, one "
                + "in twenty stands clear of 1 by chance alone. The limits allow for sensors of one vehicle failing alike. The "
                + "hazard ratio, by Cox regression, needs no law of life and is a check: it should lie on the other side of 1. "
                + "An effect is a difference between groups, not proof of its cause: depots differ in climate, roads and "
                + "people at once.";
    }

    @Override
    public void body(Html h, ReportData data) {
        if (data.survival().vehicles().isEmpty()) {
            Cells.nothing(h, "Nothing was compared.");
            return;
        }
        CovariateEffects effects = data.survival().vehicles().get().effects();
        if (effects.effects().isEmpty()) {
            Cells.nothing(h, "Too few failures to compare anything. What was left out stands below.");
        } else {
            rests(h, effects);
            EffectsChart.write(h, effects.effects());
            table(h, effects.effects());
            families(h, effects);
        }
        notes(h, effects);
        likeness(h, data.survival().vehicles().get().likeness());
    }

    private static void rests(Html h, CovariateEffects e) {
        String out = e.lives() < e.fleet()
                ? ", out of " + Format.whole(e.fleet()) + ": the rest is left out by name below"
                : "";
        String drawn = e.drawn() < e.lives()
                ? " The fleet is large: life factors rest on all of these, while the families of laws, hazard ratios and months of the"
                        + " year were fitted to " + Format.whole(e.drawn())
                        + " lives of whole vehicles drawn from it."
                : "";
        h.element(
                        "p",
                        "It rests on " + Format.count(e.lives(), "life", "lives") + " with "
                                + Format.count(e.failures(), "failure") + out + "." + drawn
                                + " Preventive replacements count as still working when they were taken out.")
                .line();
    }

    private static void table(Html h, List<CovariateEffect> effects) {
        List<CovariateEffect> rows = effects.stream()
                .sorted(Comparator.comparing(CovariateEffect::factor)
                        .thenComparing(e -> !e.reference())
                        .thenComparing(CovariateEffect::level))
                .toList();
        boolean other = rows.stream().anyMatch(e -> Double.isFinite(e.lifeFactorBest()));
        Grid<CovariateEffect> grid = new Grid<CovariateEffect>(
                        Grid.Shape.SCROLLS, "Length of life by factor, against its reference level, with 95 % limits")
                .column("Factor", (h1, e) -> h1.text(words(e.factor())))
                .column("Level", (h1, e) -> level(h1, e))
                .count("Lives", CovariateEffect::lives)
                .count("Failures", CovariateEffect::failures)
                .number("Life factor", e -> e.lifeFactor().value(), (h1, e) -> ratio(h1, e, e.lifeFactor()))
                .number("Hazard ratio (check)", e -> e.hazardRatio().value(), (h1, e) -> ratio(h1, e, e.hazardRatio()))
                .number("Drift with age, p", CovariateEffect::proportionalityP, (h1, e) -> drift(h1, e));
        if (other) {
            grid.number(
                    "Life factor, best family",
                    CovariateEffect::lifeFactorBest,
                    (h1, e) -> h1.text(e.reference() ? "1" : Format.fixed(e.lifeFactorBest(), 2)));
        }
        grid.write(h, rows);
    }

    private static void level(Html h, CovariateEffect e) {
        if (e.factor().numeric()) {
            h.text(e.level());
        } else if (e.factor() == Factor.PLACE) {
            h.text(place(e.level()));
        } else {
            h.data(e.level());
        }
        if (e.reference()) {
            h.element("span", "reference", "class", "under");
        }
    }

    /** Names of places are constants of ours, whatever was merged. */
    static String place(String level) {
        return level.toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static void ratio(Html h, CovariateEffect e, Estimate ratio) {
        if (e.reference()) {
            h.text("1");
            return;
        }
        h.element("span", Format.fixed(ratio.value(), 2), "class", "key");
        if (Double.isFinite(ratio.lower())) {
            h.element("span", Format.fixed(ratio.lower(), 2) + "–" + Format.fixed(ratio.upper(), 2), "class", "under");
        }
    }

    private static void drift(Html h, CovariateEffect e) {
        double p = e.proportionalityP();
        h.text(p < 0.001 ? "<\u00a00.001" : Format.fixed(p, 3));
        if (p < DRIFTS) {
            h.element("span", "changes with age", "class", "under");
        }
    }

    private static void families(Html h, CovariateEffects effects) {
        List<FamilyFit> fitted = effects.families().stream()
                .filter(f -> Double.isFinite(f.aic()))
                .sorted(Comparator.comparingDouble(FamilyFit::aicAboveBest))
                .toList();
        if (fitted.isEmpty()) {
            return;
        }
        FamilyFit best = fitted.get(0);
        double weibull = fitted.stream()
                .filter(f -> f.family().name().equals("WEIBULL"))
                .mapToDouble(FamilyFit::aicAboveBest)
                .findFirst()
                .orElse(Double.NaN);
        String words = weibull == 0
                ? "Of the families of laws, Weibull describes these lives best by Akaike’s criterion."
                : "By Akaike’s criterion the " + Words.ofName(best.family().name())
                        + " family describes these lives better than Weibull, by " + Format.fixed(weibull, 1) + "; "
                        + (weibull > BETTER
                                ? "compare the life factors of both before leaning on either."
                                : "that is little, and the life factors of both should agree.");
        h.element("p", words).line();
        h.open("details").element("summary", "The families compared");
        new Grid<FamilyFit>(Grid.Shape.CARDS, "Families of laws, fitted to the same lives with the same factors")
                .column("Family", (h1, f) -> h1.text(Words.ofName(f.family().name())))
                .number(
                        "AIC above the best",
                        FamilyFit::aicAboveBest,
                        (h1, f) -> h1.text(Format.fixed(f.aicAboveBest(), 1)))
                .number(
                        "Log-likelihood",
                        FamilyFit::logLikelihood,
                        (h1, f) -> h1.text(Format.fixed(f.logLikelihood(), 1)))
                .count("Parameters", FamilyFit::parameters)
                .column("Status", (h1, f) -> h1.text(Words.ofName(f.status().name())))
                .write(
                        h,
                        effects.families().stream()
                                .sorted(Comparator.comparingDouble(FamilyFit::aicAboveBest)
                                        .thenComparing(FamilyFit::family))
                                .toList());
        h.close("details").line();
    }

    private static void notes(Html h, CovariateEffects effects) {
        if (effects.notes().isEmpty()) {
            return;
        }
        h.open("ul", "class", "notes");
        effects.notes().forEach(n -> h.open("li").data(n).text(".").close("li"));
        h.close("ul").line();
    }

    private static void likeness(Html h, SetLikeness s) {
        h.element("h3", "Do the sensors of one vehicle fail together?");
        h.open("p");
        Estimate after = s.afterOneDeath();
        if (s.law().isEmpty()) {
            h.text("Not known. ").data(s.note()).text(".");
        } else if (s.pValue() < CALLED) {
            h.text("Yes. Beyond what the factors above explain, a sensor whose set-mate has failed is "
                    + Format.fixed(after.value(), 1) + " times as likely to fail at the same age as one whose set-mate"
                    + " lives (95 % limits " + limits(after) + "). It does not say why: one batch of batteries, one"
                    + " road, one climate.");
        } else {
            h.text("Not shown by these lives, beyond what the factors above explain. After one failure the others may"
                    + " be no likelier to fail, or up to " + Format.fixed(after.upper(), 1)
                    + " times as likely as those"
                    + " whose set-mates live; more than that is ruled out at 95 %.");
        }
        h.text(" " + Format.count(s.vehicles(), "vehicle") + " with " + Format.count(s.lives(), "life", "lives")
                        + " were looked at; the table set_likeness holds the figures.")
                .close("p")
                .line();
    }

    private static String limits(Estimate e) {
        return Format.fixed(e.lower(), 1) + "–" + Format.fixed(e.upper(), 1);
    }

    static String words(Factor factor) {
        return factor.words();
    }
}
