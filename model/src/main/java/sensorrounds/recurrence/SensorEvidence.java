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
import sensorrounds.condition.ConditionSettings;
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
    private final Set<String> recent;
    private final Set<String> warned;
    private final ReadWords words;
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
            CodeEvidence codes,
            ToDoubleFunction<SensorLife> failsWithinYear,
            RecurrenceSettings settings,
            LocalDate asOf) {
        this.model = model;
        this.failsWithinYear = failsWithinYear;
        this.condition = settings.condition();
        this.weights = settings.weights();
        this.asOf = asOf;
        LocalDate from = asOf.minusDays(settings.windowDays());
        List<VisitSummary> visits = history.visits().stream()
                .filter(v -> !v.day().isBefore(from) && !v.day().isAfter(asOf))
                .toList();
        this.recent = visits.stream().map(VisitSummary::visitId).collect(Collectors.toSet());
        this.warned = history.visits().stream()
                .filter(v -> SystemWarnings.counts(v.warning()))
                .map(VisitSummary::visitId)
                .collect(Collectors.toSet());
        this.unheard = UnheardVisits.days(history);
        this.words = new ReadWords(unheard, warned, model, condition, asOf);
        this.codes = codes;
        this.lives = history.lives();
        this.places = OnePlace.findings(history, settings, asOf);
        this.firstWarned = episodes.stream()
                .filter(e -> !e.lastingCause())
                .map(WarningEpisode::firstSeen)
                .findFirst()
                .orElse(episodes.isEmpty() ? asOf : episodes.get(0).firstSeen());
    }

    /** Signs of one sensor, as weighed by figures. */
    List<Evidence> of(SensorLife life, SuspectFigures figures) {
        List<Evidence> all = new ArrayList<>();
        all.add(age(life, figures));
        all.addAll(declared(life));
        fittedAfter(life).ifPresent(all::add);
        SensorReads reads = reads(life);
        double tries = logRatio(reads, SensorReads.Counted.ANSWERS, figures);
        double silence = logRatio(reads, SensorReads.Counted.ANSWERS_AND_SILENCE, figures);
        double battery = logRatio(reads, SensorReads.Counted.ALL, figures);
        double told = 0;
        if (life.end() != LifeEnd.FAILED) {
            Optional<String> waking = words.waking(life, tries > 0);
            waking.ifPresent(w -> all.add(new Evidence(Evidence.Sign.SLOW_WAKING, w, tries)));
            told = waking.isPresent() ? tries : 0;
            Optional<String> silent = words.silence(life);
            double spoken = told;
            silent.ifPresent(w -> all.add(new Evidence(Evidence.Sign.SILENCE, w, silence - spoken)));
            told = silent.isPresent() ? silence : told;
        }
        double before = told;
        words.battery(life).ifPresent(w -> all.add(new Evidence(Evidence.Sign.LOW_BATTERY, w, battery - before)));
        codes.evidence(codes.own(life), figures).ifPresent(all::add);
        pressureApart(life, figures).ifPresent(all::add);
        return all;
    }

    /** The same signs in figures, to learn from. */
    SuspectCase.Sensor figures(SensorLife life) {
        Gauged gauged = gauged(life);
        return new SuspectCase.Sensor(
                ageClass(life),
                fittedAfter(life).map(Evidence::logWeight).orElse(0.0),
                declared(life).stream().mapToDouble(Evidence::logWeight).sum(),
                reads(life),
                gauged.compared(),
                gauged.apart().size(),
                codes.own(life));
    }

    /** Signs whose weights are declared: they are too rare for a fleet to tell. */
    private List<Evidence> declared(SensorLife life) {
        List<Evidence> all = new ArrayList<>();
        if (life.end() == LifeEnd.FAILED) {
            all.add(Evidence.of(
                    Evidence.Sign.KNOWN_FAILED,
                    "known failed since " + life.firstKnownFailed() + " and still on the wheel",
                    weights.knownFailed()));
        }
        acrossPlaces(life).ifPresent(all::add);
        onePlace(life).ifPresent(all::add);
        return all;
    }

    private SensorReads reads(SensorLife life) {
        return SensorReads.of(words.counted(life), firstWarned, warned, life.end() == LifeEnd.FAILED, model, condition);
    }

    private static double logRatio(SensorReads reads, SensorReads.Counted counted, SuspectFigures f) {
        return Math.log(new ReadLikelihood(reads, counted, f.missed(), f.coldLow()).ratio(new ReadLikelihood.Laws(f)));
    }

    private int ageClass(SensorLife life) {
        return life.fittedOn() == null || life.basis() == OriginBasis.UNKNOWN
                ? SuspectFigures.unknownAge()
                : SuspectFigures.ageClass(Math.max(0, ChronoUnit.DAYS.between(life.fittedOn(), asOf)));
    }

    private Evidence age(SensorLife life, SuspectFigures figures) {
        double chance = failsWithinYear.applyAsDouble(life);
        if (!Double.isNaN(chance)) {
            String words = String.format(
                    Locale.ROOT,
                    "%s, by its law of life %.0f %% not to work a year from now, before other evidence",
                    life.fittedOn() == null ? "age not known" : years(life),
                    100 * chance);
            return Evidence.of(Evidence.Sign.PRIOR, words, Math.max(weights.young(), chance));
        }
        int ageClass = ageClass(life);
        return Evidence.of(
                Evidence.Sign.PRIOR,
                (ageClass == SuspectFigures.unknownAge() ? "age not known" : years(life)) + ", before other evidence",
                figures.age()[ageClass]);
    }

    private String years(SensorLife life) {
        long days = Math.max(0, ChronoUnit.DAYS.between(life.fittedOn(), asOf));
        return String.format(Locale.ROOT, "%.1f years old", days / SystemWarnings.DAYS_PER_YEAR);
    }

    /**
     * Sensor and hand gauge far apart at a visit of the window. Where they are apart at most wheels of a visit it is the gauge,
     * or the time between, and speaks of nobody.
     */
    private Gauged gauged(SensorLife life) {
        List<LifeReading> compared = life.readings().stream()
                .filter(r -> recent.contains(r.visitId()) && compared(r) && !mostApart(r.visitId()))
                .toList();
        return new Gauged(
                compared.size(), compared.stream().filter(SensorEvidence::apart).toList());
    }

    /** @param apart reads that disagree, in time order */
    private record Gauged(int compared, List<LifeReading> apart) {}

    private Optional<Evidence> pressureApart(SensorLife life, SuspectFigures figures) {
        Gauged g = gauged(life);
        if (g.compared() == 0) {
            return Optional.empty();
        }
        double ratio = figures.apart()
                .ratio(SuspectCase.Sensor.apartLikelihood(
                        g.compared(), g.apart().size()));
        if (g.apart().isEmpty()) {
            String words = "agreed with the hand gauge" + (g.compared() == 1 ? "" : " at " + g.compared() + " visits");
            return Optional.of(Evidence.of(Evidence.Sign.PRESSURE_APART, words, ratio));
        }
        LifeReading r = g.apart().get(g.apart().size() - 1);
        String words = String.format(
                        Locale.ROOT,
                        "sent %.0f kPa on %s where the hand gauge read %.0f",
                        r.pressureKpa(),
                        r.day(),
                        r.gaugePressureKpa())
                + (g.compared() == 1 ? "" : ", apart at " + g.apart().size() + " of " + g.compared() + " visits");
        return Optional.of(Evidence.of(Evidence.Sign.PRESSURE_APART, words, ratio));
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
