package sensorrounds.recurrence;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import sensorrounds.condition.BatteryReports;
import sensorrounds.condition.ConditionSettings;
import sensorrounds.condition.SlowWaking;
import sensorrounds.condition.UnheardVisits;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.Finding;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.ReadOutcome;

/** Gathers what one vehicle's history says for and against each of its sensors, within the window of recurrence. */
final class SensorEvidence {
    /** Sensor and gauge this far apart disagree: kPa, and share of the gauge's figure (common practice, no source). */
    private static final double APART_KPA = 15;

    private static final double APART_SHARE = 0.05;
    /** Chance under which a number of tries is out of the ordinary for a sound sensor. */
    private static final double SELDOM = 0.05;

    private final WakeModel model;
    private final ToDoubleFunction<SensorLife> failsWithinYear;
    private final ConditionSettings condition;
    private final SuspectWeights weights;
    private final LocalDate asOf;
    private final List<VisitSummary> visits;
    private final Set<LocalDate> unheard;
    private final CodeEvidence codes;
    private final List<SensorLife> lives;
    private final LocalDate firstWarned;
    private final List<Finding> places;

    /**
     * @param episodes the episodes that make up the recurrence
     * @param failsWithinYear chance of not working a year from now by the law of life; NaN for the weight of its age
     */
    SensorEvidence(
            VehicleHistory history,
            List<WarningEpisode> episodes,
            WakeModel model,
            ToDoubleFunction<SensorLife> failsWithinYear,
            RecurrenceSettings settings,
            LocalDate asOf) {
        this.model = model;
        this.failsWithinYear = failsWithinYear;
        this.condition = settings.condition();
        this.weights = settings.weights();
        this.asOf = asOf;
        LocalDate from = asOf.minusDays(settings.windowDays());
        this.visits = history.visits().stream()
                .filter(v -> !v.day().isBefore(from) && !v.day().isAfter(asOf))
                .toList();
        this.unheard = UnheardVisits.days(history);
        this.codes = new CodeEvidence(visits, weights);
        this.lives = history.lives();
        this.places = OnePlace.findings(history, settings, asOf);
        this.firstWarned = episodes.stream()
                .filter(e -> !e.lastingCause())
                .map(WarningEpisode::firstSeen)
                .findFirst()
                .orElse(episodes.isEmpty() ? asOf : episodes.get(0).firstSeen());
    }

    List<Evidence> of(SensorLife life) {
        List<Evidence> all = new ArrayList<>();
        all.add(age(life));
        if (life.end() == LifeEnd.FAILED) {
            all.add(Evidence.of(
                    Evidence.Sign.KNOWN_FAILED,
                    "known failed since " + life.firstKnownFailed() + " and still on the wheel",
                    weights.knownFailed()));
        } else {
            slowWaking(life).ifPresent(all::add);
            silence(life).ifPresent(all::add);
        }
        battery(life).ifPresent(all::add);
        codes.of(life).ifPresent(all::add);
        pressureApart(life).ifPresent(all::add);
        acrossPlaces(life).ifPresent(all::add);
        fittedAfter(life).ifPresent(all::add);
        onePlace(life).ifPresent(all::add);
        return all;
    }

    private Evidence age(SensorLife life) {
        double chance = failsWithinYear.applyAsDouble(life);
        if (!Double.isNaN(chance)) {
            String words = String.format(
                    Locale.ROOT,
                    "%s, by its law of life %.0f %% not to work a year from now, before other evidence",
                    life.fittedOn() == null ? "age not known" : years(life),
                    100 * chance);
            return Evidence.of(Evidence.Sign.PRIOR, words, Math.max(weights.young(), chance));
        }
        if (life.fittedOn() == null || life.basis() == OriginBasis.UNKNOWN) {
            return Evidence.of(Evidence.Sign.PRIOR, "age not known, before other evidence", weights.unknownAge());
        }
        long days = Math.max(0, ChronoUnit.DAYS.between(life.fittedOn(), asOf));
        return Evidence.of(Evidence.Sign.PRIOR, years(life) + ", before other evidence", weights.ofAge(days));
    }

    private String years(SensorLife life) {
        long days = Math.max(0, ChronoUnit.DAYS.between(life.fittedOn(), asOf));
        return String.format(Locale.ROOT, "%.1f years old", days / SystemWarnings.DAYS_PER_YEAR);
    }

    /**
     * A sensor behind the warnings is slow with chance {@code slowIfCause}, another one with {@code slowPrior}; with R
     * the likelihood ratio of its reads, slow against sound, the weight is (c R + 1 - c) / (s R + 1 - s). Silent reads
     * are left to {@link #silence}.
     */
    private Optional<Evidence> slowWaking(SensorLife life) {
        List<LifeReading> reads = SlowWaking.countedReadings(life, condition, asOf, unheard).stream()
                .filter(LifeReading::answered)
                .filter(r -> !Double.isNaN(model.chance(r)))
                .toList();
        if (reads.isEmpty()) {
            return Optional.empty();
        }
        double logRatio = reads.stream()
                .mapToDouble(r -> SlowWaking.logRatio(r, model, condition))
                .sum();
        double ratio = Math.exp(Math.min(logRatio, 300));
        double cause = weights.slowIfCause();
        double other = condition.slowPrior();
        double weight = (cause * ratio + 1 - cause) / (other * ratio + 1 - other);
        double sound =
                reads.stream().mapToDouble(r -> 1 / model.chance(r)).average().orElse(Double.NaN);
        String tries = reads.stream().map(r -> Integer.toString(r.attempts())).collect(Collectors.joining(", "));
        String words = String.format(
                Locale.ROOT,
                "%s %s at its last %s, a sound sensor under the same readers needs %.1f",
                weight > 1 ? "needed" : "woke well, with",
                reads.size() == 1 && tries.equals("1") ? "1 try" : tries + " tries",
                reads.size() == 1 ? "read" : reads.size() + " reads",
                sound);
        return Optional.of(Evidence.of(Evidence.Sign.SLOW_WAKING, words, weight));
    }

    private Optional<Evidence> silence(SensorLife life) {
        Set<String> warned = visits.stream()
                .filter(v -> SystemWarnings.counts(v.warning()) && !unheard.contains(v.day()))
                .map(VisitSummary::visitId)
                .collect(Collectors.toSet());
        List<LifeReading> silent = life.readings().stream()
                .filter(r -> warned.contains(r.visitId()) && r.outcome() == ReadOutcome.NO_ANSWER)
                .toList();
        if (silent.isEmpty()) {
            return Optional.empty();
        }
        double weight = silent.stream()
                .limit(weights.silentVisits())
                .mapToDouble(this::silentWeight)
                .reduce(1, (a, b) -> a * b);
        String words = "silent at " + (silent.size() == 1 ? "a visit" : silent.size() + " visits")
                + " with the warning on, last on "
                + silent.get(silent.size() - 1).day();
        return Optional.of(Evidence.of(Evidence.Sign.SILENCE, words, weight));
    }

    private double silentWeight(LifeReading r) {
        double p = model.chance(r);
        int tries = r.attempts() == null ? 1 : r.attempts();
        double sound = Double.isNaN(p) ? weights.silentIfSound() : Math.pow(1 - p, tries);
        return Math.max(1, weights.silentIfCause() / Math.max(weights.silentIfSound(), sound));
    }

    private Optional<Evidence> battery(SensorLife life) {
        Optional<LifeReading> low = BatteryReports.standingLow(life, condition, asOf);
        if (low.isPresent()) {
            LifeReading r = low.get();
            return Optional.of(Evidence.of(
                    Evidence.Sign.LOW_BATTERY,
                    "battery reported " + r.battery().words() + " on " + r.day(),
                    weights.lowBattery()));
        }
        return BatteryReports.last(life, asOf)
                .map(r -> Evidence.of(
                        Evidence.Sign.LOW_BATTERY,
                        "battery reported " + r.battery().words() + " on " + r.day(),
                        weights.batteryOk()));
    }

    /**
     * Sensor and hand gauge far apart at a visit of the window. Where they are apart at most wheels of a visit it is the gauge,
     * or the time between, and speaks of nobody.
     */
    private Optional<Evidence> pressureApart(SensorLife life) {
        Set<String> recent = visits.stream().map(VisitSummary::visitId).collect(Collectors.toSet());
        return life.readings().stream()
                .filter(r -> recent.contains(r.visitId()) && apart(r) && !mostApart(r.visitId()))
                .reduce((a, b) -> b)
                .map(r -> Evidence.of(
                        Evidence.Sign.PRESSURE_APART,
                        String.format(
                                Locale.ROOT,
                                "sent %.0f kPa on %s where the hand gauge read %.0f",
                                r.pressureKpa(),
                                r.day(),
                                r.gaugePressureKpa()),
                        weights.pressureApart()));
    }

    private static boolean compared(LifeReading r) {
        return r.pressureKpa() != null && r.gaugePressureKpa() != null;
    }

    private static boolean apart(LifeReading r) {
        return compared(r)
                && Math.abs(r.pressureKpa() - r.gaugePressureKpa())
                        > Math.max(APART_KPA, APART_SHARE * r.gaugePressureKpa());
    }

    private boolean mostApart(String visitId) {
        List<LifeReading> there = lives.stream()
                .flatMap(l -> l.readings().stream())
                .filter(r -> visitId.equals(r.visitId()) && compared(r))
                .toList();
        return 2 * there.stream().filter(SensorEvidence::apart).count() > there.size();
    }

    /** One ID in trouble at more than one place: the trouble went with the sensor. */
    private Optional<Evidence> acrossPlaces(SensorLife life) {
        List<String> troubled = life.readings().stream()
                .filter(r -> r.position() != null && !r.day().isAfter(asOf) && !unheard.contains(r.day()))
                .filter(this::inTrouble)
                .map(r -> r.position().words())
                .distinct()
                .toList();
        return troubled.size() < 2
                ? Optional.empty()
                : Optional.of(Evidence.of(
                        Evidence.Sign.ACROSS_PLACES,
                        "silent or slow at " + String.join(" and at ", troubled) + ": the trouble went with the sensor",
                        weights.acrossPlaces()));
    }

    /** Silent, or so many tries that a sound sensor seldom needs as many. */
    private boolean inTrouble(LifeReading r) {
        if (r.outcome() == ReadOutcome.NO_ANSWER) {
            return true;
        }
        double p = model.chance(r);
        return r.answered() && r.attempts() != null && !Double.isNaN(p) && Math.pow(1 - p, r.attempts() - 1) <= SELDOM;
    }

    private Optional<Evidence> fittedAfter(SensorLife life) {
        if (life.basis() != OriginBasis.RECORDED_FITTING
                || life.fittedOn() == null
                || !life.fittedOn().isAfter(firstWarned)) {
            return Optional.empty();
        }
        return Optional.of(Evidence.of(
                Evidence.Sign.FITTED_AFTER,
                "fitted on " + life.fittedOn() + ", the warning was there on " + firstWarned,
                weights.fittedAfter()));
    }

    private Optional<Evidence> onePlace(SensorLife life) {
        boolean here = places.stream()
                .anyMatch(f -> life.position().equals(f.position()) && Objects.equals(life.wheelSet(), f.wheelSet()));
        return here
                ? Optional.of(Evidence.of(
                        Evidence.Sign.ONE_PLACE,
                        "sensors before it fell silent at the same place",
                        weights.placeAgainstSensor()))
                : Optional.empty();
    }
}
