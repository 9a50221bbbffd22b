package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.survival.CohortFit;

/** Stored table of fitted laws of life. */
public final class SurvivalFits {
    public static final Table<CohortFit> TABLE = new Table<>(
            "survival_fits",
            "The law of life of each cohort: which fit is in use, how sure it is, and why when it is not the cohort's own.",
            List.of(
                    text("cohort", "Cohort; 'all' is every life together.", CohortFit::cohort),
                    text("rung", "Rung of the fallback ladder in use.", CohortFit::rung),
                    text("status", "What came of the cohort's own fit.", CohortFit::status),
                    count("lives", "Lives in the cohort.", CohortFit::lives),
                    count("failures", "Failures among them.", CohortFit::failures),
                    number("exposure_years", "Sensor-years under observation.", CohortFit::exposureYears),
                    number(
                            "shape",
                            "Weibull shape, of the law in use or fitted beside it; above 1 means wearing out.",
                            CohortFit::shape),
                    number("shape_lower", "Lower 95 % limit; null where the failures set none.", CohortFit::shapeLower),
                    number("shape_upper", "Upper 95 % limit; null where the failures set none.", CohortFit::shapeUpper),
                    number("scale_days", "Weibull scale, days, as the shape.", CohortFit::scaleDays),
                    number(
                            "scale_lower",
                            "Lower 95 % limit, days; null where the failures set none.",
                            CohortFit::scaleLower),
                    number(
                            "scale_upper",
                            "Upper 95 % limit, days; null where the failures set none.",
                            CohortFit::scaleUpper),
                    number("median_days", "Median life by the law in use, days.", CohortFit::medianDays),
                    number(
                            "log_likelihood",
                            "Of the cohort's own Weibull fit; null when it failed.",
                            CohortFit::logLikelihood),
                    whole("iterations", "Iterations it took.", CohortFit::iterations),
                    number(
                            "gradient_norm",
                            "Scaled gradient norm where it stopped, 0 below 1e-9.",
                            f -> FitReports.aboveRounding(f.gradientNorm())),
                    number(
                            "preventive_share",
                            "Preventive replacements among these and the failures; null without either.",
                            CohortFit::preventiveShare),
                    text("note", "What to know about it.", CohortFit::note),
                    text(
                            "npmle_status",
                            "What came of the estimate without a shape (TURNBULL in survival_curves).",
                            f -> f.npmle().status()),
                    number(
                            "npmle_from_days",
                            "Lowest age at which the data can place a failure, days; null when there is none.",
                            f -> f.npmle().fromDays()),
                    text(
                            "npmle_uniqueness",
                            "Whether other curves fit as well; empty without an estimate.",
                            f -> f.npmle().uniqueness()),
                    text(
                            "npmle_note",
                            "Why there is no curve, or on what grid of ages it stands.",
                            f -> f.npmle().note()),
                    word(
                            "form",
                            "Form of the law in use; null when there is none.",
                            f -> f.law().form()),
                    number(
                            "early_shape",
                            "Shape of the early hazard, 1 when constant; null for a Weibull.",
                            f -> f.law().earlyShape()),
                    number("early_scale_days", "Its scale, days.", f -> f.law().earlyScaleDays()),
                    number(
                            "wear_shape",
                            "Shape of the wear-out beside it.",
                            f -> f.law().wearShape()),
                    number("wear_scale_days", "Its scale, days.", f -> f.law().wearScaleDays()),
                    number(
                            "aic_gain",
                            "By how much Akaike's criterion prefers two hazards to the Weibull; null when not fitted.",
                            f -> f.law().aicGain()),
                    number(
                            "own_share",
                            "What the scale rests on, in shares that add up to 1: the cohort's own lives.",
                            f -> f.law().shares().own()),
                    number(
                            "others_share",
                            "The lives of the other cohorts, or of all together.",
                            f -> f.law().shares().others()),
                    number(
                            "prior_share",
                            "A prior declared in the settings.",
                            f -> f.law().shares().prior())));

    private SurvivalFits() {}
}
