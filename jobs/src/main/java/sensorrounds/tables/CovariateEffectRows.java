package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.flag;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.analyst.CovariateEffect;
import sensorrounds.analyst.FamilyFit;
import sensorrounds.analyst.SetLikeness;

/** Stored tables of what makes sensors last longer or shorter, how the families of laws compare, and likeness within vehicles. */
public final class CovariateEffectRows {
    public static final Table<CovariateEffect> TABLE = new Table<>(
            "covariate_effects",
            "What each level of a factor does to the length of life beside all other factors, against the factor's reference"
                    + " level; limits robust to likeness within vehicles. Levels with few failures are merged or left out (the"
                    + " report says which). An effect is a difference between groups, not proof of a cause.",
            List.of(
                    word("factor", "Factor.", CovariateEffect::factor),
                    text("level", "Level; of several merged ones their names.", CovariateEffect::level),
                    flag("reference", "Whether the others are compared with it.", CovariateEffect::reference),
                    count(
                            "lives",
                            "Lives at this level; for the season those watched on some day of such months.",
                            CovariateEffect::lives),
                    count(
                            "failures",
                            "Those that failed; for the season those that most likely did in such months.",
                            CovariateEffect::failures),
                    number(
                            "life_factor",
                            "How many times as long sensors last as at the reference level (Weibull, accelerated failure time);"
                                    + " null without a fit, and for the season, which every life goes through.",
                            e -> e.lifeFactor().value()),
                    number(
                            "life_factor_lower",
                            "Lower 95 % limit.",
                            e -> e.lifeFactor().lower()),
                    number(
                            "life_factor_upper",
                            "Upper 95 % limit.",
                            e -> e.lifeFactor().upper()),
                    number(
                            "life_factor_best_family",
                            "The same by the family of least AIC; null where that is the Weibull.",
                            CovariateEffect::lifeFactorBest),
                    number(
                            "hazard_ratio",
                            "How many times as often they fail at any age (Cox); a check. For the season by the likelihood of"
                                    + " failure intervals, as in season_effect. Null without a fit.",
                            e -> e.hazardRatio().value()),
                    number(
                            "hazard_ratio_lower",
                            "Lower 95 % limit.",
                            e -> e.hazardRatio().lower()),
                    number(
                            "hazard_ratio_upper",
                            "Upper 95 % limit.",
                            e -> e.hazardRatio().upper()),
                    number(
                            "proportionality_p",
                            "Chance of as much drift of the hazard ratio with age if there were none; a small one says that one"
                                    + " ratio for all ages does not tell it all.",
                            CovariateEffect::proportionalityP)));

    public static final Table<FamilyFit> FAMILIES = new Table<>(
            "life_families",
            "How well the families of laws of life describe the same lives, covariates included; the best first. The gamma"
                    + " family is fitted up to 5000 lives.",
            List.of(
                    word("family", "Family.", FamilyFit::family),
                    word("status", "What came of the fit.", FamilyFit::status),
                    whole("parameters", "Number of parameters; 0 without a fit.", FamilyFit::parameters),
                    number("log_likelihood", "Null without a fit, as aic.", FamilyFit::logLikelihood),
                    number("aic", "Akaike's criterion, the smaller the better.", FamilyFit::aic),
                    number("aic_above_best", "Distance to the best.", FamilyFit::aicAboveBest),
                    text("note", "Why there is no fit; empty when there is one.", FamilyFit::note)));

    public static final Table<SetLikeness> LIKENESS = new Table<>(
            "set_likeness",
            "How alike the sensors of one vehicle are beyond the covariates: shared gamma frailty. One row.",
            List.of(
                    word("status", "What came of the fit.", SetLikeness::status),
                    text("note", "Why there is no figure; empty when there is one.", SetLikeness::note),
                    whole("vehicles", "Vehicles that took part.", SetLikeness::vehicles),
                    count("lives", "Their lives.", SetLikeness::lives),
                    number(
                            "variance",
                            "Variance of frailty over vehicles.",
                            s -> s.variance().value()),
                    number(
                            "variance_lower",
                            "Lower 95 % likelihood-ratio limit.",
                            s -> s.variance().lower()),
                    number(
                            "variance_upper",
                            "Upper 95 % likelihood-ratio limit.",
                            s -> s.variance().upper()),
                    number(
                            "after_one_death",
                            "How many times as likely a sensor is to fail at an age when a set-mate has failed at it than when"
                                    + " that mate lives; 1 + variance.",
                            s -> s.afterOneDeath().value()),
                    number(
                            "after_one_death_lower",
                            "Lower 95 % limit.",
                            s -> s.afterOneDeath().lower()),
                    number(
                            "after_one_death_upper",
                            "Upper 95 % limit.",
                            s -> s.afterOneDeath().upper()),
                    number("kendall_tau", "Rank correlation of two lives of one vehicle.", SetLikeness::kendallTau),
                    number("p_value", "Chance of as much likeness if there were none.", SetLikeness::pValue)));

    private CovariateEffectRows() {}
}
