package sensorrounds.survival;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/** What a law from a weak prior rests on, in a sentence for the tables. */
final class WeakPriorWords {
    private static final double DAYS_PER_YEAR = 365.25;
    /** Standard deviations beyond which the data contradict the prior. */
    private static final double FAR = 2;

    private WeakPriorWords() {}

    static String of(WeakPriorFit fit) {
        WeakPrior prior = fit.prior();
        WeakPriorFit.Comparison life = fit.medianLife();
        WeakPriorFit.Comparison shape = fit.shapeAgainstPrior();
        String words = "a prior was declared (median life "
                + years(prior.medianLifeLow(), prior.medianLifeHigh()) + ", shape "
                + range(prior.shapeLow(), prior.shapeHigh()) + "); with the data: median life "
                + years(life.posterior().lower(), life.posterior().upper()) + ", shape "
                + range(shape.posterior().lower(), shape.posterior().upper())
                + "; the prior's part of what is known is " + percent(life.fromPrior()) + " for the life, "
                + percent(shape.fromPrior()) + " for the shape";
        boolean far = Math.abs(life.moved()) > FAR || Math.abs(shape.moved()) > FAR;
        return far ? words + "; the data lie far from the prior: declare another" : words;
    }

    private static String years(double lowDays, double highDays) {
        return range(lowDays / DAYS_PER_YEAR, highDays / DAYS_PER_YEAR) + " years";
    }

    /** One decimal, none where it is 0. */
    private static String range(double low, double high) {
        return new DecimalFormat("0.#", DecimalFormatSymbols.getInstance(Locale.ROOT)).format(low)
                + " to "
                + new DecimalFormat("0.#", DecimalFormatSymbols.getInstance(Locale.ROOT)).format(high);
    }

    private static String percent(double share) {
        return Math.round(100 * Math.min(1, share)) + " %";
    }
}
