package sensorrounds.condition;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.outlook.LifeLaws;
import sensorrounds.outlook.OutlookSettings;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.UnknownAge;

/**
 * Outlooks of the sensors in service on a vehicle by their hidden condition, with the outlook by survival model and last
 * report as the declared fallback wherever the condition cannot speak: a fit that failed, a sensor never heard. Which of
 * the two an outlook rests on is said in it.
 *
 * <p>A sensor whose age is not known is filtered at each of a few ages it may have had when it was first heard
 * ({@link UnknownAge}), and the answers are weighted by how likely each age makes what was seen.
 */
public final class HiddenOutlooks {
    static final String CONTRADICTORY = "its readings contradict each other";
    private static final int AGES = 16;
    /** A probability that rounds to 1 would make hazards infinite, and what is computed from them undefined. */
    private static final double CERTAIN = 1 - 1e-15;

    private final HiddenFit fit;
    private final HiddenFilter filter;
    private final SetLikeness likeness;
    private final LifeLaws laws;
    private final PartOfVehicle parts;
    private final OutlookSettings settings;
    private final LocalDate asOf;
    /** Of the vehicle in hand. */
    private SetCells.SetCount set;

    private double ratio;
    private Map<String, SensorLife> lives;
    private UnheardVisits unheard;
    private RoadVisits visits;

    /** Holds work space: one per thread. */
    public HiddenOutlooks(
            HiddenFit fit,
            SetLikeness likeness,
            LifeLaws laws,
            PartOfVehicle parts,
            OutlookSettings settings,
            LocalDate asOf) {
        this.fit = fit;
        this.likeness = likeness;
        this.parts = parts;
        this.filter = fit.converged() ? fit.filter() : null;
        this.laws = laws;
        this.settings = settings;
        this.asOf = asOf;
    }

    /**
     * Outlooks of a vehicle, in the order of the fallback's. Under the hidden condition the failure ratio is the one that
     * brings the cohort's law to the filter's probability at the horizon.
     *
     * @param fallback outlooks of the same vehicle by survival model and last report, as of the same day
     */
    public List<SensorOutlook> of(VehicleHistory history, List<SensorOutlook> fallback) {
        if (filter == null) {
            return fallback.stream()
                    .map(o -> o.because("no fit of the hidden condition: " + fit.cause()))
                    .toList();
        }
        take(history);
        List<SensorOutlook> all = new ArrayList<>();
        for (SensorOutlook o : fallback) {
            all.add(of(history, o));
        }
        return all;
    }

    private void take(VehicleHistory history) {
        lives = new HashMap<>();
        history.lives().forEach(l -> lives.put(l.lifeId(), l));
        unheard = UnheardVisits.of(history);
        visits = visits(history, fit.model());
        set = SetCells.count(history, laws, life -> parts.of(history, life));
        ratio = likeness.ratio(set);
    }

    /**
     * Condition over time of sensors of one vehicle, in the order of their outlooks; none of those without a hidden condition.
     * What the failures of set-mates and the age of a sensor of unknown age tell is what is known of them now.
     *
     * @param outlooks of this vehicle, by {@link #of}
     */
    public List<ConditionMoment> overTime(VehicleHistory history, List<SensorOutlook> outlooks) {
        List<ConditionMoment> all = new ArrayList<>();
        if (filter == null || outlooks.isEmpty()) {
            return all;
        }
        take(history);
        for (SensorOutlook o : outlooks) {
            if (o.grounds().method() == SensorOutlook.Method.HIDDEN_CONDITION) {
                addMoments(all, o, mixture(history, lives.get(o.sensor().lifeId()), o));
            }
        }
        return all;
    }

    private void addMoments(List<ConditionMoment> all, SensorOutlook o, List<Mixed> mixture) {
        TreeMap<LocalDate, double[]> byDay = new TreeMap<>();
        double total = 0;
        for (Mixed m : mixture) {
            List<HiddenFilter.Condition> path = filter.afterReads(m.readings());
            double weight = m.weight() * likelihood(mixture.size());
            total += weight;
            for (HiddenFilter.Condition c : path) {
                HiddenFilter.Condition own = HiddenFilter.faster(c, ratio);
                double[] sum = byDay.computeIfAbsent(m.fitted().plusDays(c.ageDays()), d -> new double[2]);
                sum[0] += weight * own.weak();
                sum[1] += weight * own.dead();
            }
        }
        double sum = total;
        byDay.forEach((day, c) -> all.add(new ConditionMoment(
                o.sensor().vehicleId(),
                o.sensor().position(),
                o.sensor().wheelSet(),
                o.sensor().sensorId(),
                day,
                c[0] / sum,
                c[1] / sum)));
    }

    /** Readings of every life of a vehicle that can have them, for the fit. */
    public static List<HiddenReadings> readings(
            VehicleHistory history, LifeLaws laws, PartOf parts, HiddenModel model, LocalDate asOf) {
        List<HiddenReadings> all = new ArrayList<>();
        UnheardVisits unheard = UnheardVisits.of(history);
        RoadVisits visits = visits(history, model);
        for (SensorLife life : history.lives()) {
            laws.of(history.vehicle().vehicleClass(), parts.of(life))
                    .flatMap(law -> HiddenReadings.of(life, visits, unheard.days(life), model, law.cohort(), asOf))
                    .ifPresent(all::add);
        }
        return all;
    }

    /** The part a sensor counts as in its cohort. */
    @FunctionalInterface
    public interface PartOf {
        String of(SensorLife life);
    }

    /** The same on any vehicle. */
    @FunctionalInterface
    public interface PartOfVehicle extends Serializable {
        String of(VehicleHistory history, SensorLife life);
    }

    private static RoadVisits visits(VehicleHistory history, HiddenModel model) {
        return RoadVisits.of(history, model.warnings().shows(history.vehicle().vehicleClass()));
    }

    private SensorOutlook of(VehicleHistory history, SensorOutlook simpler) {
        SensorLife life = lives.get(simpler.sensor().lifeId());
        if (simpler.grounds().cohort() == null) {
            return simpler.because("no law of life could be fitted for sensors like it");
        }
        boolean ageKnown = ageKnown(life);
        Optional<String> exclusion =
                ageKnown || life.end() == LifeEnd.PLACE_SUSPECTED ? HiddenReadings.exclusion(life) : Optional.empty();
        if (exclusion.isPresent()) {
            return simpler.because(exclusion.get());
        }
        if (!ageKnown && life.firstAnswered() == null) {
            return simpler.because("it never answered, and its age is not known");
        }
        List<Mixed> mixture = mixture(history, life, simpler);
        if (mixture.isEmpty()) {
            return simpler.because("its age is past what the model reckons with");
        }
        return chances(mixture, simpler).map(simpler::byCondition).orElseGet(() -> simpler.because(CONTRADICTORY));
    }

    private static boolean ageKnown(SensorLife life) {
        return life.basis() != OriginBasis.UNKNOWN && life.fittedOn() != null;
    }

    /** Readings at one age it may have, with the weight of that age and the day it was then fitted. */
    record Mixed(HiddenReadings readings, double weight, LocalDate fitted) {}

    private List<Mixed> mixture(VehicleHistory history, SensorLife life, SensorOutlook simpler) {
        return ageKnown(life)
                ? HiddenReadings.of(
                                life,
                                visits,
                                unheard.days(life),
                                fit.model(),
                                simpler.grounds().cohort(),
                                asOf)
                        .stream()
                        .map(r -> new Mixed(r, 1, life.fittedOn()))
                        .toList()
                : ages(history, life, simpler);
    }

    private List<Mixed> ages(VehicleHistory history, SensorLife life, SensorOutlook simpler) {
        LocalDate first = life.firstAnswered();
        LocalDate used = history.vehicle().firstUsed();
        double most = used == null ? Double.POSITIVE_INFINITY : Math.max(0, ChronoUnit.DAYS.between(used, first));
        LocalDate before = life.fittedNotBefore();
        double cap = before == null ? Double.POSITIVE_INFINITY : Math.max(0, ChronoUnit.DAYS.between(before, first));
        LifeLaws.Law law = laws.of(
                        simpler.sensor().vehicleClass(), simpler.sensor().part())
                .orElseThrow();
        double firstSensor = laws.firstSensorFactor(history.vehicle().originalPart(), life.part());
        List<Mixed> all = new ArrayList<>();
        for (UnknownAge.Share share : new UnknownAge(law, 0, most, cap, firstSensor).shares(AGES)) {
            LocalDate fitted = first.minusDays(Math.round(share.ageDays()));
            HiddenReadings.of(
                            life,
                            visits,
                            unheard.days(life),
                            fit.model(),
                            simpler.grounds().cohort(),
                            asOf,
                            fitted,
                            first)
                    .ifPresent(r -> all.add(new Mixed(r, share.weight(), fitted)));
        }
        return all;
    }

    /** Empty where the readings cannot happen at any age. */
    Optional<SensorOutlook.Chances> chances(List<Mixed> mixture, SensorOutlook simpler) {
        double[] weights = new double[mixture.size()];
        HiddenFilter.Condition[] now = new HiddenFilter.Condition[weights.length];
        double total = 0;
        for (int i = 0; i < weights.length; i++) {
            HiddenReadings readings = mixture.get(i).readings();
            now[i] = filter.at(readings, readings.lastAge());
            weights[i] = mixture.get(i).weight() * likelihood(weights.length);
            total += weights[i];
            now[i] = HiddenFilter.faster(now[i], ratio);
        }
        if (!(total > 0)) {
            return Optional.empty();
        }
        double weak = 0;
        double dead = 0;
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= total;
            weak += weights[i] * now[i].weak();
            dead += weights[i] * now[i].dead();
        }
        double horizon = failure(now, weights, settings.horizonDays());
        double[] limits = limits(mixture, weights, now, horizon);
        return Optional.of(new SensorOutlook.Chances(
                ratio(simpler, horizon),
                dead,
                failure(now, weights, 30),
                failure(now, weights, 90),
                failure(now, weights, 180),
                failure(now, weights, 365),
                horizon,
                limits[0],
                limits[1],
                weak,
                set.failed(),
                ratio));
    }

    /** How likely the readings just filtered are; one age alone is not weighed, unless it makes them impossible. */
    private double likelihood(int ages) {
        double log = filter.logLikelihood();
        return ages == 1 && log > Double.NEGATIVE_INFINITY ? 1 : Math.exp(log);
    }

    private double failure(HiddenFilter.Condition[] now, double[] weights, int days) {
        double p = 0;
        for (int i = 0; i < weights.length; i++) {
            p += weights[i] * filter.failureWithin(now[i], days, ratio);
        }
        return p;
    }

    /** Limits at the known age; else the least and the greatest over the middle 95 % of the ages: wide on purpose. */
    private double[] limits(List<Mixed> mixture, double[] weights, HiddenFilter.Condition[] now, double middle) {
        double lower = middle;
        double upper = middle;
        double below = 0;
        int first = -1;
        int last = 0;
        for (int i = 0; i < weights.length; i++) {
            // Ages rise with i, the vehicle's own age last.
            below += weights[i];
            first = first < 0 && below >= 0.025 ? i : first;
            last = below - weights[i] < 0.975 ? i : last;
        }
        for (int i : first == last ? new int[] {first} : new int[] {first, last}) {
            HiddenReadings readings = mixture.get(i).readings();
            double[] limits = filter.limits(readings, now[i].ageDays(), settings.horizonDays());
            double plain = filter.failureWithin(filter.at(readings, now[i].ageDays()), settings.horizonDays());
            double own = filter.failureWithin(now[i], settings.horizonDays(), ratio);
            double factor =
                    ratio == 1 ? 1 : Math.log1p(-Math.min(own, CERTAIN)) / Math.log1p(-Math.min(plain, CERTAIN));
            lower = Math.min(lower, -Math.expm1(factor * Math.log1p(-Math.min(limits[0], CERTAIN))));
            upper = Math.max(upper, -Math.expm1(factor * Math.log1p(-Math.min(limits[1], CERTAIN))));
        }
        return new double[] {lower, upper};
    }

    /**
     * The fallback's failure ratio times the filter's cumulative hazard over the fallback's, both from the last answer to
     * the horizon; NaN where the fallback has no law.
     */
    private static double ratio(SensorOutlook simpler, double p) {
        return simpler.chances().failureRatio()
                * Math.log1p(-Math.min(p, CERTAIN))
                / Math.log1p(-Math.min(simpler.chances().pHorizon(), CERTAIN));
    }
}
