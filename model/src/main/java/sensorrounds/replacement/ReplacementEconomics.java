package sensorrounds.replacement;

import java.io.Serializable;
import java.util.Arrays;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import sensorrounds.fleet.Part;
import sensorrounds.history.Finding;
import sensorrounds.numeric.Quadrature;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.SurvivalAhead;
import sensorrounds.survival.LifeLaw;

/**
 * What replacing a sensor now is expected to save against keeping it over the planning horizon h and replacing it then,
 * or at its failure if that comes first:
 *
 * <pre>
 * now   = cp
 * later = P cf + (1 - P) cp - g m
 * saving = later - now = P (cf - cp) - g m
 * </pre>
 *
 * P is the chance of not working by the horizon, m = integral of 1 - P(s) over 0..h the working days still to come in it,
 * and g the least long-run cost per day of an ordinary sensor of the cohort (ratio 1), {@link AgeReplacement}: each day
 * still used puts every later replacement off by a day, worth g. This is the one-step marginal rule of renewal-reward
 * theory; for short horizons the saving changes sign at the optimal age. Source: Barlow and Proschan (1965), ch. 4;
 * marginal cost view: Berg (1980), A marginal cost analysis for preventive replacement policies, EJOR 4 (from memory).
 *
 * <p>At a stop that happens anyway cp is without the visit's set-up, in the rule and in g alike: the next chance is taken
 * to be such a stop too. Source of the opportunity view: Dekker and Smeitink (1991), opportunity-based block replacement
 * (from memory).
 *
 * <p>The break-even probability is the P at which the saving is 0 for a sensor of this age and last answer whose hazard is
 * multiplied by whatever it takes; as the saving rises with that factor, saving over 0 and P over break-even are the same
 * thing. NaN when failure costs no more than planned work.
 */
public final class ReplacementEconomics implements Serializable {
    private static final long serialVersionUID = 1;
    /** Cumulative hazards between which the break-even is sought: P from 1e-13 to 1 - 4e-18. */
    private static final double LEAST_HAZARD = 1e-13;

    private static final double MOST_HAZARD = 40;

    private record RateKey(LifeLaw law, double planned, double afterFailure) implements Serializable {}

    private final Costs costs;
    private final int horizonDays;
    /** Few laws and few prices, many sensors. */
    private final Map<RateKey, Double> rates = new ConcurrentHashMap<>();

    public ReplacementEconomics(Costs costs, int horizonDays) {
        this.costs = costs;
        this.horizonDays = horizonDays;
    }

    /** Price of the sensor to fit: the part's, or the default when the part is not in the list (null). */
    public double priceOf(Part part) {
        return part == null ? costs.defaultSensorPrice() : part.price();
    }

    /**
     * One line of the list, not yet ranked (rank 0).
     *
     * @param law law of the outlook's cohort; null when none was fitted, and then saving is NaN and nothing is advised
     * @param sensorPrice price of the sensor to fit
     * @param findings findings of the vehicle, for places where sensors keep failing
     */
    public RankedReplacement advise(
            SensorOutlook outlook, LifeLaw law, double sensorPrice, Collection<Finding> findings) {
        double planned = costs.planned(sensorPrice);
        boolean placeKeepsFailing = findings.stream()
                .anyMatch(f -> f.kind() == Finding.Kind.PLACE_KEEPS_FAILING
                        && outlook.position().equals(f.position())
                        && Objects.equals(outlook.wheelSet(), f.wheelSet()));
        if (law == null || Double.isNaN(outlook.pHorizon())) {
            Advice advice = placeKeepsFailing ? Advice.CHECK_PLACE_FIRST : Advice.KEEP;
            String reason = AdviceWords.withoutLaw(outlook, advice);
            return new RankedReplacement(0, outlook, planned, Double.NaN, Double.NaN, Double.NaN, advice, reason);
        }
        double afterFailure = costs.afterFailure(sensorPrice);
        Window window = new Window(new SurvivalAhead(outlook, law, horizonDays), horizonDays, outlook.pHorizon());
        double rate = rate(law, planned, afterFailure);
        double saving = window.saving(planned, afterFailure, rate);
        double standing = planned - costs.plannedVisit();
        double savingStanding = window.saving(standing, afterFailure, rate(law, standing, afterFailure));
        double breakEven = afterFailure > planned ? window.breakEven(planned, afterFailure, rate) : Double.NaN;
        Advice advice = placeKeepsFailing
                ? Advice.CHECK_PLACE_FIRST
                : saving > 0 ? Advice.REPLACE_NOW : savingStanding > 0 ? Advice.AT_NEXT_STOP : Advice.KEEP;
        String reason = AdviceWords.reason(outlook, horizonDays, saving, breakEven, costs.currency(), advice);
        return new RankedReplacement(0, outlook, planned, planned + saving, saving, breakEven, advice, reason);
    }

    /** Least long-run cost per day of an ordinary sensor with this law. */
    double rate(LifeLaw law, double planned, double afterFailure) {
        return rates.computeIfAbsent(
                new RateKey(law, planned, afterFailure),
                k -> new AgeReplacement(new FittedAgeing(k.law()), k.planned(), k.afterFailure())
                        .optimum()
                        .costRate());
    }

    /** The horizon of one sensor. */
    private record Window(SurvivalAhead ahead, int days, double p) {
        double saving(double planned, double afterFailure, double rate) {
            return p * (afterFailure - planned) - rate * Quadrature.panel(s -> 1 - ahead.failureBy(s), 0, days);
        }

        double breakEven(double planned, double afterFailure, double rate) {
            double[] shares = Quadrature.at(this::share, 0, days);
            double[] working = new double[shares.length];
            double low = Math.log(LEAST_HAZARD);
            double high = Math.log(MOST_HAZARD);
            // 40 halvings of 34 log units: the break-even is right to 3e-11 of itself.
            for (int i = 0; i < 40; i++) {
                double middle = (low + high) / 2;
                double hazard = Math.exp(middle);
                Arrays.setAll(working, n -> Math.exp(-hazard * shares[n]));
                double gain =
                        -Math.expm1(-hazard) * (afterFailure - planned) - rate * Quadrature.panel(working, 0, days);
                if (gain > 0) {
                    high = middle;
                } else {
                    low = middle;
                }
            }
            return -Math.expm1(-Math.exp(high));
        }

        /** Share of the cumulative hazard since the last answer to the horizon that falls before day s. */
        private double share(double s) {
            double whole = ahead.hazardBy(days);
            boolean plain = whole > 0 && whole < Double.POSITIVE_INFINITY;
            return plain ? ahead.hazardBy(s) / whole : s / days;
        }
    }

    /** Amount in words, for reasons. */
    static String money(double amount, String currency) {
        return String.format(Locale.ROOT, "%.2f %s", amount, currency);
    }
}
