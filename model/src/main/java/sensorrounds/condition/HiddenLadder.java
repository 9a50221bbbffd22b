package sensorrounds.condition;

import java.io.Serializable;
import java.util.Locale;
import java.util.function.Function;
import sensorrounds.condition.HiddenFit.Status;
import sensorrounds.numeric.StandardNormal;

/**
 * Which of the models of the hidden condition a fleet can carry, by declared steps. First, one stage of weakness or two: both
 * have the same parameters, and the likelier is taken (Akaike 1974, IEEE Trans. AC 19:716). Then the season: its factor stays
 * where it adds {@link #TELLING} to the log-likelihood, else the rates know no season. What was decided stands in the fit.
 */
public final class HiddenLadder {
    /** Half the 0.95 quantile of the chi-squared law of one degree, 3.84: a likelihood ratio test at 5 %. */
    static final double TELLING = 1.92;

    private final HiddenModel model;

    private HiddenLadder(HiddenModel model) {
        this.model = model;
    }

    /** @param model with the season that is to be tried; its stages do not matter */
    public static HiddenLadder of(HiddenModel model) {
        return new HiddenLadder(model);
    }

    /**
     * What was decided, in words.
     *
     * @param stages on the stages of weakness
     * @param season on the season of the rates
     */
    public record Decision(String stages, String season) implements Serializable {
        /** The same, taken on a part of the fleet. */
        public Decision onSample(long sensors) {
            String part = " (looked at " + sensors + " sensors)";
            return new Decision(stages + part, season + part);
        }

        static Decision none() {
            return new Decision("as set", "as set");
        }
    }

    /** The fit of the model that was chosen; the failure of the simplest where none can be fitted. */
    public HiddenFit fit(Function<HiddenModel, HiddenPass> walk) {
        HiddenModel simplest = model.with(WeakStages.ONE).with(ColdSeason.none());
        HiddenFit one = fit(simplest, HiddenParameters.centre(model.settings()), walk);
        if (one.status() == Status.TOO_FEW || one.status() == Status.IMPOSSIBLE_DATA) {
            return one;
        }
        HiddenModel staged = simplest.with(WeakStages.TWO);
        HiddenParameters start = one.converged() ? one.parameters() : HiddenParameters.centre(model.settings());
        HiddenFit two = fit(staged, start, walk);
        if (!one.converged() && !two.converged()) {
            return one;
        }
        HiddenFit best = likelier(one, two);
        String stages = stages(one, two);
        if (!model.season().turns()) {
            return best.with(new Decision(stages, "no season in the rates: no month is cold here, or all are"));
        }
        HiddenFit seasonal =
                fit(best.model().with(model.season()), best.parameters().withColdRateFactor(1), walk);
        boolean tells = seasonal.converged() && seasonal.logLikelihood() - best.logLikelihood() >= TELLING;
        return (tells ? seasonal : best).with(new Decision(stages, season(best, seasonal)));
    }

    private static HiddenFit fit(HiddenModel model, HiddenParameters start, Function<HiddenModel, HiddenPass> walk) {
        return HiddenFitter.of(model).withStart(start).fit(walk.apply(model));
    }

    private static HiddenFit likelier(HiddenFit one, HiddenFit two) {
        return !two.converged() || one.converged() && one.logLikelihood() >= two.logLikelihood() ? one : two;
    }

    private static String stages(HiddenFit one, HiddenFit two) {
        if (!one.converged() || !two.converged()) {
            HiddenFit failed = one.converged() ? two : one;
            return "the other number could not be fitted: " + failed.cause();
        }
        double gain = two.logLikelihood() - one.logLikelihood();
        return String.format(
                Locale.ROOT,
                "%s %s the readings likelier, by %.1f in log-likelihood%s",
                gain > 0 ? "two" : "one",
                gain > 0 ? "make" : "makes",
                Math.abs(gain),
                Math.abs(gain) < TELLING ? ", which hardly tells them apart" : "");
    }

    private static String season(HiddenFit without, HiddenFit with) {
        if (!with.converged()) {
            return "no season in the rates: its factor could not be fitted, " + with.cause();
        }
        double gain = with.logLikelihood() - without.logLikelihood();
        double at = Math.log(with.parameters().coldRateFactor());
        int i = with.parameters().coldRate();
        double half = StandardNormal.quantile(0.975) * Math.sqrt(with.covariance()[i][i]);
        return gain >= TELLING
                ? String.format(Locale.ROOT, "it adds %.1f to the log-likelihood", gain)
                : String.format(
                        Locale.ROOT,
                        "no season in the rates: a factor of %.2f (%.2f to %.2f) in cold months adds %.1f to the"
                                + " log-likelihood, under the %.2f asked for",
                        Math.exp(at),
                        Math.exp(at - half),
                        Math.exp(at + half),
                        Math.max(0, gain),
                        TELLING);
    }
}
