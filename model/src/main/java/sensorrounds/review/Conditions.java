package sensorrounds.review;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import sensorrounds.condition.ColdSeason;
import sensorrounds.condition.HiddenCohorts;
import sensorrounds.condition.HiddenFit;
import sensorrounds.condition.HiddenFitter;
import sensorrounds.condition.HiddenLadder;
import sensorrounds.condition.HiddenModel;
import sensorrounds.condition.HiddenOutlooks;
import sensorrounds.condition.HiddenPass;
import sensorrounds.condition.HiddenReadings;
import sensorrounds.condition.HiddenSettings;
import sensorrounds.condition.WakeChances;
import sensorrounds.condition.WakeModel;
import sensorrounds.condition.WarningSigns;
import sensorrounds.condition.WeakStages;
import sensorrounds.history.VehicleHistory;
import sensorrounds.survival.LifeLaw;

/**
 * The steps of fitting the hidden condition of a fleet's sensors. A large fleet is fitted on a sample of its vehicles first,
 * so that the walks over all of it are few; where the walks are made is the caller's affair.
 */
public final class Conditions implements Serializable {
    private static final long serialVersionUID = 1;
    /** Sensors among which the search for the maximum begins, about. */
    private static final double SAMPLE = 20_000;

    private final Estimates estimates;
    private final HiddenModel model;
    private final LocalDate asOf;
    private final double sampled;

    private Conditions(Estimates estimates, HiddenModel model, LocalDate asOf, double sampled) {
        this.estimates = estimates;
        this.model = model;
        this.asOf = asOf;
        this.sampled = sampled;
    }

    /** Where the readings of all vehicles are, and of a part of them. */
    public interface Fleet {
        /** A walk over the readings of the vehicles that pass. */
        HiddenPass sample(HiddenModel model);

        /** A walk over the readings of all. */
        HiddenPass all(HiddenModel model);
    }

    /** The fit of a fleet; one without values, with the reason, where nothing can be fitted. */
    public static HiddenFit fit(
            FleetCounts counts, Estimates estimates, LocalDate asOf, Function<Conditions, Fleet> fleet) {
        if (estimates.wake().status() == WakeModel.Status.NO_READS) {
            return HiddenFit.withoutWakeModel(estimates.wake());
        }
        if (estimates.laws().isEmpty()) {
            return HiddenFit.withoutLaw();
        }
        HiddenSettings settings = estimates.settings().hidden().overLaws();
        SortedMap<String, LifeLaw> laws = new TreeMap<>();
        estimates.laws().forEach((cohort, law) -> laws.put(cohort, law.life()));
        HiddenModel model = new HiddenModel(
                settings,
                new WakeChances(estimates.wake(), estimates.settings().condition()),
                HiddenCohorts.of(laws, settings),
                WarningSigns.of(counts.warningSigns()),
                WeakStages.ONE,
                ColdSeason.of(Set.copyOf(estimates.climates().of(null).months())));
        double share = SAMPLE / Math.max(1, counts.sensorsInService());
        Conditions conditions = new Conditions(estimates, model, asOf, share);
        Fleet walks = fleet.apply(conditions);
        HiddenLadder ladder = HiddenLadder.of(model);
        if (share < 0.5) {
            HiddenFit rough = ladder.fit(walks::sample);
            if (rough.converged()) {
                return HiddenFitter.of(rough.model())
                        .withStart(rough.parameters())
                        .fit(walks.all(rough.model()))
                        .with(rough.decision().onSample(rough.sensors()));
            }
        }
        return ladder.fit(walks::all);
    }

    /** Whether a vehicle belongs to the sample: by its name alone, so that no order of vehicles shows in it. */
    public boolean inSample(VehicleHistory history) {
        // Fibonacci hashing spreads names that differ in the last letter only; Knuth (1998), vol. 3, 6.4.
        int spread = history.vehicleId().hashCode() * 0x9E3779B9;
        return (spread >>> 1) < sampled * Integer.MAX_VALUE;
    }

    /** Readings of a vehicle's sensors, as the fit takes them. */
    public List<HiddenReadings> readings(VehicleHistory history) {
        return HiddenOutlooks.readings(
                history, estimates, life -> CohortParts.of(history.vehicle(), life), model, asOf);
    }

    /** A fleet in the memory of one machine. */
    public static Function<Conditions, Fleet> inMemory(List<VehicleHistory> histories) {
        return conditions -> {
            List<HiddenReadings> all = histories.stream()
                    .flatMap(h -> conditions.readings(h).stream())
                    .toList();
            List<HiddenReadings> part = histories.stream()
                    .filter(conditions::inSample)
                    .flatMap(h -> conditions.readings(h).stream())
                    .toList();
            return new Fleet() {
                @Override
                public HiddenPass sample(HiddenModel model) {
                    return HiddenPass.over(part, model);
                }

                @Override
                public HiddenPass all(HiddenModel model) {
                    return HiddenPass.over(all, model);
                }
            };
        };
    }
}
