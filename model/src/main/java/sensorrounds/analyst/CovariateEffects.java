package sensorrounds.analyst;

import java.io.Serializable;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.regression.RegressionFit;
import sensorrounds.survival.Estimate;
import sensorrounds.survival.FitReport;

/**
 * What makes sensors last longer or shorter, one factor beside all others, and what that rests on.
 *
 * @param effects one row for each level; empty where nothing could be compared
 * @param families the families of laws, the best first; the gamma family up to 5,000 lives
 * @param lives lives to which the law of record is fitted
 * @param failures those that failed
 * @param drawn lives to which all else is fitted: fewer than {@code lives} where the fleet is large and vehicles were drawn
 * @param fleet lives of the fleet, whether they take part or not
 * @param reports what each fit says of itself, by its name
 * @param notes what was left out and why, and what failed; empty when nothing
 */
public record CovariateEffects(
        List<CovariateEffect> effects,
        List<FamilyFit> families,
        long lives,
        long failures,
        long drawn,
        long fleet,
        SortedMap<String, FitReport> reports,
        List<String> notes)
        implements Serializable {
    public CovariateEffects {
        effects = List.copyOf(effects);
        families = List.copyOf(families);
        reports = Collections.unmodifiableSortedMap(new TreeMap<>(reports));
        notes = List.copyOf(notes);
    }

    CovariateEffects with(List<CovariateEffect> newEffects, List<String> newNotes) {
        return new CovariateEffects(newEffects, families, lives, failures, drawn, fleet, reports, newNotes);
    }

    /** The same with the law of record fitted to all lives of the fleet instead of those drawn, where that fit converges. */
    CovariateEffects over(WholeFleet all, CovariateCode code) {
        RegressionFit fit = CovariateRegression.ofRecord().fit(all.lives(code));
        if (!fit.converged()) {
            List<String> more = new ArrayList<>(notes);
            more.add("life factors are those of the vehicles drawn, since among all " + fit.cause());
            return with(effects, more);
        }
        LevelCounts counts = all.counts(code);
        SortedMap<String, FitReport> ofAll = new TreeMap<>(reports);
        ofAll.put(CovariateRegression.reportOf(fit), rounded(fit.report()));
        return new CovariateEffects(
                effects.stream()
                        .map(e -> code.place(e.factor(), e.level()) < 0 ? e : over(fit, counts, e))
                        .toList(),
                families,
                counts.lives(),
                counts.failures(),
                drawn,
                fleet,
                ofAll,
                notes);
    }

    private static CovariateEffect over(RegressionFit fit, LevelCounts counts, CovariateEffect e) {
        FactorLevel level = new FactorLevel(
                e.factor(),
                e.level(),
                counts.livesAt(e.factor(), e.level()),
                counts.failuresAt(e.factor(), e.level()),
                e.reference());
        Estimate factor = e.reference() ? e.lifeFactor() : CovariateRegression.factor(fit, level);
        return new CovariateEffect(
                e.factor(),
                e.level(),
                e.reference(),
                level.lives(),
                level.failures(),
                new Estimate(rounded(factor.value()), rounded(factor.lower()), rounded(factor.upper())),
                e.lifeFactorBest(),
                e.hazardRatio(),
                e.proportionalityP());
    }

    private static FitReport rounded(FitReport r) {
        return FitReport.of(
                r.lives(), r.failures(), r.exposure(), r.iterations(), r.gradientNorm(), rounded(r.condition()));
    }

    /** Sums over partitions agree to ten digits and more, not to the last bit; nine are kept, so that the cut does not show. */
    private static double rounded(double value) {
        return Double.isFinite(value)
                ? new BigDecimal(value).round(new MathContext(9)).doubleValue()
                : value;
    }
}
