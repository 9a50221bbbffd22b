package sensorrounds.analyst;

import java.util.ArrayList;
import java.util.List;
import sensorrounds.analyst.SampledVehicle.SampledLife;
import sensorrounds.season.Climates;
import sensorrounds.season.ColdMonths;
import sensorrounds.season.SeasonFit;
import sensorrounds.season.SeasonFitter;
import sensorrounds.season.SeasonLife;
import sensorrounds.survival.Estimate;

/** What the cold does to sensors, from the lives of drawn vehicles, each class and depot compared within itself. */
final class SeasonEffect {
    private static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);
    private static final Estimate SAME = new Estimate(1, 1, 1);

    private final List<SeasonLife> lives = new ArrayList<>();
    private final SeasonFit fit;

    SeasonEffect(VehicleSample sample, Climates climates) {
        for (SampledVehicle vehicle : sample.vehicles()) {
            ColdMonths cold = climates.of(vehicle.depot());
            String stratum = vehicle.vehicleClass() + " at " + vehicle.depot();
            for (SampledLife life : vehicle.lives()) {
                if (life.fittedOn() != null) {
                    lives.add(new SeasonLife(life.life(), life.fittedOn(), cold, stratum));
                }
            }
        }
        fit = SeasonFitter.withDefaults().fit(lives);
    }

    SeasonFit fit() {
        return fit;
    }

    /** The season beside the factors of lives, where these could be compared: two rows, or a note why there are none. */
    CovariateEffects beside(CovariateEffects effects) {
        if (effects.effects().isEmpty()) {
            return effects;
        }
        if (!fit.converged()) {
            List<String> notes = new ArrayList<>(effects.notes());
            notes.add("the season is left out: " + fit.report().cause());
            return effects.with(effects.effects(), notes);
        }
        List<CovariateEffect> rows = new ArrayList<>(effects.effects());
        rows.add(row("other months", true, watched(false), fit.failuresOther(), SAME));
        rows.add(row("cold months", false, watched(true), fit.failuresCold(), fit.factor()));
        return effects.with(rows, effects.notes());
    }

    private static CovariateEffect row(String level, boolean reference, long lives, double failures, Estimate factor) {
        return new CovariateEffect(
                Factor.SEASON,
                level,
                reference,
                lives,
                Math.round(failures),
                reference ? SAME : NONE,
                Double.NaN,
                factor,
                Double.NaN);
    }

    /** Lives under observation on some cold day, or on some other. */
    private long watched(boolean cold) {
        return lives.stream()
                .filter(l -> {
                    int last = l.life().failed() ? l.life().upper() : l.life().lower();
                    int days = last - l.life().entry();
                    long coldDays = l.cold()
                            .daysBetween(
                                    l.fittedOn().plusDays(l.life().entry()),
                                    l.fittedOn().plusDays(last));
                    return cold ? coldDays > 0 : coldDays < days;
                })
                .count();
    }
}
