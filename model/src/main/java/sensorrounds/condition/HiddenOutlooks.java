package sensorrounds.condition;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.OutlookSettings;
import sensorrounds.outlook.SensorOutlook;

/**
 * Outlooks of the sensors in service on a vehicle by their hidden condition, with the outlook by survival model and last
 * report as the declared fallback wherever the condition cannot speak: a fit that failed, a sensor without a known age.
 * Which of the two an outlook rests on is said beside it.
 */
public final class HiddenOutlooks {
    /** What the probabilities of an outlook rest on. */
    public enum Basis {
        HIDDEN_CONDITION,
        SURVIVAL_AND_LAST_REPORT
    }

    /**
     * An outlook and what it rests on.
     *
     * @param outlook under HIDDEN_CONDITION its probabilities are those of the filter, and its failure ratio is the one
     *     that brings the cohort's law to the filter's probability at the horizon, so that what is computed from the
     *     outlook and the law stays right at the horizon
     * @param why why the fallback was taken; empty under HIDDEN_CONDITION
     * @param weak probability of being weak on the as-of day; NaN under the fallback
     * @param dead probability of being dead already; NaN under the fallback
     */
    public record HiddenOutlook(SensorOutlook outlook, Basis basis, String why, double weak, double dead)
            implements Serializable {}

    private final HiddenFit fit;
    private final HiddenFilter filter;
    private final OutlookSettings settings;
    private final LocalDate asOf;

    /** Holds work space: one per thread. */
    public HiddenOutlooks(HiddenFit fit, OutlookSettings settings, LocalDate asOf) {
        this.fit = fit;
        this.filter = fit.converged() ? fit.filter() : null;
        this.settings = settings;
        this.asOf = asOf;
    }

    /**
     * Outlooks of a vehicle, in the order of the fallback's.
     *
     * @param fallback outlooks of the same vehicle by survival model and last report, as of the same day
     */
    public List<HiddenOutlook> of(VehicleHistory history, List<SensorOutlook> fallback) {
        Map<String, SensorLife> lives = new HashMap<>();
        history.lives().forEach(l -> lives.put(l.lifeId(), l));
        Set<LocalDate> unheard = UnheardVisits.days(history);
        List<HiddenOutlook> all = new ArrayList<>();
        for (SensorOutlook o : fallback) {
            all.add(of(lives.get(o.lifeId()), o, unheard));
        }
        return all;
    }

    private HiddenOutlook of(SensorLife life, SensorOutlook simpler, Set<LocalDate> unheard) {
        if (filter == null) {
            return fallback(simpler, "no fit of the hidden condition: " + fit.cause());
        }
        Optional<String> exclusion = HiddenReadings.exclusion(life);
        if (exclusion.isPresent()) {
            return fallback(simpler, exclusion.get());
        }
        Optional<HiddenReadings> readings = HiddenReadings.of(life, unheard, fit.wake(), fit.settings(), asOf);
        int age = Math.toIntExact(ChronoUnit.DAYS.between(life.fittedOn(), asOf));
        if (readings.isEmpty() || age > HiddenSettings.MAX_AGE_DAYS - 1) {
            return fallback(simpler, "its age of " + age + " days is past what the model reckons with");
        }
        HiddenFilter.Condition now = filter.at(readings.get(), age);
        double[] limits = filter.limits(readings.get(), age, settings.horizonDays());
        double atHorizon = filter.failureWithin(now, settings.horizonDays());
        SensorOutlook outlook = new SensorOutlook(
                simpler.vehicleId(),
                simpler.depot(),
                simpler.vehicleClass(),
                simpler.position(),
                simpler.wheelSet(),
                simpler.sensorId(),
                simpler.lifeId(),
                simpler.part(),
                simpler.ageDays(),
                simpler.basis(),
                simpler.lastReport(),
                simpler.lastReadOn(),
                ratio(simpler, atHorizon),
                now.dead(),
                filter.failureWithin(now, 30),
                filter.failureWithin(now, 90),
                filter.failureWithin(now, 180),
                filter.failureWithin(now, 365),
                atHorizon,
                limits[0],
                limits[1],
                simpler.cohort(),
                simpler.rung());
        return new HiddenOutlook(outlook, Basis.HIDDEN_CONDITION, "", now.weak(), now.dead());
    }

    private static HiddenOutlook fallback(SensorOutlook outlook, String why) {
        return new HiddenOutlook(outlook, Basis.SURVIVAL_AND_LAST_REPORT, why, Double.NaN, Double.NaN);
    }

    /**
     * The fallback's failure ratio times the filter's cumulative hazard over the fallback's, both from the last answer to
     * the horizon; NaN where the fallback has no law.
     */
    private static double ratio(SensorOutlook simpler, double p) {
        // A probability that rounds to 1 would make it infinite, and what is computed from it undefined.
        double certain = Math.min(p, 1 - 1e-15);
        return simpler.failureRatio() * Math.log1p(-certain) / Math.log1p(-Math.min(simpler.pHorizon(), 1 - 1e-15));
    }
}
