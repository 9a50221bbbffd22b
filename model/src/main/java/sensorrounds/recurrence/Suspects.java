package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.WheelPosition;

/**
 * What may be behind a recurring system warning: one of the sensors now on the vehicle, or no sensor at all. Exactly one
 * of them is taken as the cause; its posterior probability is its prior weight times the likelihood ratios of what was
 * seen, normalised (Bayes' rule with evidence independent given the cause; Good 1950, Probability and the Weighing of
 * Evidence). The weights are declared in {@link SuspectWeights} and each is printed beside its sign, so that a reader
 * can do the sum again.
 */
public final class Suspects {
    private static final Comparator<WheelPosition> NO_PLACE_LAST = Comparator.nullsLast(Comparator.naturalOrder());

    /** A candidate before the probabilities are normalised. */
    record Candidate(WheelPosition position, String sensorId, List<Evidence> evidence) {
        double logWeight() {
            return evidence.stream().mapToDouble(Evidence::logWeight).sum();
        }
    }

    private Suspects() {}

    /** Suspects, most probable first. Their probabilities add up to one; there is always "not a sensor" among them. */
    public static List<Suspect> of(
            VehicleHistory history, WakeModel model, RecurrenceSettings settings, LocalDate asOf) {
        return judge(history, model, SuspectFigures.declared(settings), Optional.empty(), settings, asOf)
                .suspects();
    }

    /**
     * Suspects with what speaks for the first of them.
     *
     * @param lead the strongest sign for the first suspect, in words
     * @param byAgeAlone true when the first suspect is a sensor and nothing but its age speaks for it
     */
    record Judgement(List<Suspect> suspects, String lead, boolean byAgeAlone) {}

    /**
     * @param dyingSet where sensors of the vehicle are found dead one after the other: the chance that one does not work a
     *     year from now, by its law of life. Earlier finds then speak against a cause outside the sensors, and the next
     *     of the set to go is sought
     */
    static Judgement judge(
            VehicleHistory history,
            WakeModel model,
            SuspectFigures figures,
            Optional<ToDoubleFunction<SensorLife>> dyingSet,
            RecurrenceSettings settings,
            LocalDate asOf) {
        List<WarningEpisode> episodes = Recurrence.inWindow(SystemWarnings.episodes(history, asOf), settings, asOf);
        List<Candidate> byWeight = candidates(history, episodes, model, figures, dyingSet, settings, asOf).stream()
                .sorted(Comparator.comparingDouble((Candidate c) -> -c.logWeight())
                        .thenComparing(Candidate::position, NO_PLACE_LAST))
                .toList();
        Candidate first = byWeight.get(0);
        boolean byAgeAlone =
                first.sensorId() != null && first.evidence().stream().noneMatch(e -> e.logWeight() > 0);
        boolean intermittent =
                dyingSet.isEmpty() && OnePlace.findings(history, settings, asOf).isEmpty();
        String condition = condition(history, episodes, intermittent, asOf);
        List<Suspect> suspects = suspects(byWeight, history, dyingSet.isPresent(), settings).stream()
                .map(s -> s.when(condition))
                .toList();
        return new Judgement(suspects, lead(first), byAgeAlone);
    }

    /** When the steps are worth taking; empty for now. */
    private static String condition(
            VehicleHistory history, List<WarningEpisode> episodes, boolean intermittent, LocalDate asOf) {
        // A set that dies one after the other, or a place that kills sensors, is looked at whether the last work holds
        // or not.
        String held = intermittent && Held.since(history, episodes, asOf).isPresent()
                ? "only if the warning comes back: "
                : "";
        String warned = setOf(onWheels(history, lastWarned(episodes)));
        return warned == null || warned.equals(setOf(onWheels(history)))
                ? held
                : held + "when wheel set " + warned + " is on again: ";
    }

    private static String setOf(List<SensorLife> on) {
        return on.isEmpty() ? null : on.get(0).wheelSet();
    }

    private static LocalDate lastWarned(List<WarningEpisode> episodes) {
        return episodes.stream()
                .map(WarningEpisode::lastSeen)
                .max(LocalDate::compareTo)
                .orElse(LocalDate.MAX);
    }

    private static String lead(Candidate first) {
        return first.evidence().stream()
                .filter(e -> e.logWeight() > 0)
                .min(Evidence.STRONGEST_FIRST)
                .map(Evidence::words)
                .orElse(first.sensorId() == null ? "nothing speaks for one sensor" : "by its age alone");
    }

    static List<Candidate> candidates(
            VehicleHistory history,
            List<WarningEpisode> episodes,
            WakeModel model,
            SuspectFigures figures,
            Optional<ToDoubleFunction<SensorLife>> dyingSet,
            RecurrenceSettings settings,
            LocalDate asOf) {
        ToDoubleFunction<SensorLife> failsWithinYear = dyingSet.orElse(life -> Double.NaN);
        List<SensorLife> on = onWheels(history, lastWarned(episodes));
        CodeEvidence codes = new CodeEvidence(CodeSigns.of(inWindow(history, settings, asOf), on.size()));
        SensorEvidence evidence = new SensorEvidence(history, episodes, model, codes, failsWithinYear, settings, asOf);
        List<Candidate> all = new ArrayList<>();
        for (SensorLife life : on) {
            all.add(new Candidate(life.position(), life.sensorId(), evidence.of(life, figures)));
        }
        long found = dyingSet.isEmpty()
                ? 0
                : episodes.stream().filter(WarningEpisode::lastingCause).count();
        all.add(new Outside(history, episodes, settings, asOf).candidate(found, codes, figures));
        return all;
    }

    /** The vehicle in figures, to learn from. */
    static SuspectCase caseOf(
            VehicleHistory history,
            List<WarningEpisode> episodes,
            WakeModel model,
            RecurrenceSettings settings,
            LocalDate asOf) {
        List<SensorLife> on = onWheels(history, lastWarned(episodes));
        CodeEvidence codes = new CodeEvidence(CodeSigns.of(inWindow(history, settings, asOf), on.size()));
        SensorEvidence evidence =
                new SensorEvidence(history, episodes, model, codes, life -> Double.NaN, settings, asOf);
        double outside = new Outside(history, episodes, settings, asOf)
                .declared().stream().mapToDouble(Evidence::logWeight).sum();
        return new SuspectCase(
                history.vehicleId(), on.stream().map(evidence::figures).toList(), codes.signs(), outside);
    }

    private static List<VisitSummary> inWindow(VehicleHistory history, RecurrenceSettings settings, LocalDate asOf) {
        LocalDate from = asOf.minusDays(settings.windowDays());
        return history.visits().stream()
                .filter(v -> !v.day().isBefore(from) && !v.day().isAfter(asOf))
                .toList();
    }

    /** Of a vehicle with wheel sensors none was ever read, so that none can be told from another, nor from other causes. */
    static boolean nobodyKnown(VehicleHistory history) {
        return !Outside.isIndirect(history) && onWheels(history).isEmpty();
    }

    /**
     * Sensors now on the wheels, front to back: of a vehicle with two wheel sets those of the set read last, and at one
     * place the sensor read last.
     */
    static List<SensorLife> onWheels(VehicleHistory history) {
        return onWheels(history, LocalDate.MAX);
    }

    /** The same of the set read last by that day: warnings speak of the set that was on when they came. */
    private static List<SensorLife> onWheels(VehicleHistory history, LocalDate by) {
        Comparator<SensorLife> byLastRead = Comparator.comparing(Suspects::lastRead);
        List<SensorLife> on =
                history.lives().stream().filter(SensorLife::onVehicle).toList();
        Optional<SensorLife> newest = on.stream().max(Comparator.comparing(l -> lastRead(l, by)));
        SortedMap<WheelPosition, SensorLife> byPlace = new TreeMap<>();
        for (SensorLife life : on) {
            if (Objects.equals(life.wheelSet(), newest.orElseThrow().wheelSet())) {
                byPlace.merge(life.position(), life, (a, b) -> byLastRead.compare(a, b) > 0 ? a : b);
            }
        }
        return List.copyOf(byPlace.values());
    }

    /** Last day read or fitted by that day; the far past for one read later only. */
    private static LocalDate lastRead(SensorLife life, LocalDate by) {
        return Stream.concat(life.readings().stream().map(LifeReading::day), Stream.ofNullable(life.fittedOn()))
                .filter(d -> !d.isAfter(by))
                .max(LocalDate::compareTo)
                .orElse(LocalDate.MIN);
    }

    private static LocalDate lastRead(SensorLife life) {
        LocalDate fitted = life.fittedOn() == null ? LocalDate.MIN : life.fittedOn();
        LocalDate read = life.lastReading().map(LifeReading::day).orElse(LocalDate.MIN);
        return read.isAfter(fitted) ? read : fitted;
    }

    private static List<Suspect> suspects(
            List<Candidate> byWeight, VehicleHistory history, boolean dyingSet, RecurrenceSettings settings) {
        double most = byWeight.get(0).logWeight();
        double total = byWeight.stream()
                .mapToDouble(c -> Math.exp(c.logWeight() - most))
                .sum();
        List<Suspect> suspects = new ArrayList<>();
        for (Candidate c : byWeight) {
            List<Evidence> evidence =
                    c.evidence().stream().sorted(Evidence.STRONGEST_FIRST).toList();
            suspects.add(new Suspect(
                    suspects.size() + 1,
                    c.position(),
                    c.sensorId(),
                    Math.exp(c.logWeight() - most) / total,
                    evidence.stream().map(Evidence::text).toList(),
                    c.sensorId() == null
                            ? Outside.step(c, history, settings)
                            : sensorStep(evidence, dyingSet, settings)));
        }
        return List.copyOf(suspects);
    }

    /** What would settle the strongest sign that speaks for the sensor. */
    private static String sensorStep(List<Evidence> strongestFirst, boolean dyingSet, RecurrenceSettings settings) {
        Evidence.Sign sign = strongestFirst.stream()
                .filter(e -> e.logWeight() > 0)
                .map(Evidence::sign)
                .findFirst()
                .orElse(Evidence.Sign.PRIOR);
        return switch (sign) {
            case KNOWN_FAILED -> "replace the sensor, then prove it by " + drive(settings);
            case SLOW_WAKING ->
                "wake it with another reader, cold and again warm: at the first try each time clears it, "
                        + "several tries again confirm it";
            case LOW_BATTERY -> "read its battery again in air no warmer than last time: low again confirms it";
            case FAULT_CODE ->
                "clear the code, make " + drive(settings) + " and read again: the same place named again confirms it";
            case PRESSURE_APART ->
                "gauge that tyre cold with another gauge and read the sensor at once: apart again condemns the sensor";
            case ACROSS_PLACES ->
                "change it over with a mate once more: trouble at the new place again condemns the sensor";
            case SILENCE -> "try it with another reader while the warning is on: silent again confirms it";
            case PRIOR, FITTED_AFTER, ONE_PLACE, FOUND_DEAD, NOT_LEARNED, NO_SENSOR ->
                dyingSet
                        ? "read every sensor of the set and count the tries: the slow or silent one is the next to go; "
                                + "weigh replacing the old ones together at one stop"
                        : "read it while the warning is on, before anything is cleared";
        };
    }

    static String drive(RecurrenceSettings settings) {
        return String.format(Locale.ROOT, "a drive of at least %.0f minutes", settings.proofDriveMinutes());
    }
}
