package sensorrounds.landmark;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;

/**
 * Life still to come after a first low battery report: a mergeable state. The clock starts on the day of that report and
 * needs no age. A report that is good again later changes nothing, for on the day nobody could know; how many recovered
 * is counted beside. Reports of one day count as low if any is.
 */
public final class FirstLowCells implements Serializable {
    private static final long serialVersionUID = 1;

    private final LandmarkSettings settings;
    private final LifeCells<FirstLow> cells = new LifeCells<>(FirstLow.class);
    private final EnumMap<FirstLow, Long> recovered = new EnumMap<>(FirstLow.class);

    private FirstLowCells(LandmarkSettings settings) {
        this.settings = settings;
    }

    /** No lives yet. */
    public static FirstLowCells with(LandmarkSettings settings) {
        return new FirstLowCells(settings);
    }

    /** Adds a life, or counts why it has no place. */
    public FirstLowCells add(SensorLife life) {
        List<LifeReading> reports = life.readings().stream()
                .filter(r -> r.battery() != null)
                .sorted(Comparator.comparing(LifeReading::day))
                .toList();
        Optional<LifeReading> first = reports.stream().filter(this::low).findFirst();
        if (first.isEmpty()) {
            cells.leaveOut(LeftOut.NEVER_LOW);
            return this;
        }
        LocalDate day = first.get().day();
        Contacts contacts = new Contacts(life);
        if (contacts.knownFailed(day)) {
            cells.leaveOut(LeftOut.ALREADY_FAILED);
            return this;
        }
        Optional<Lifetime> ahead = contacts.after(day);
        if (ahead.isEmpty()) {
            cells.leaveOut(LeftOut.NO_LATER_CONTACT);
            return this;
        }
        boolean goodBefore = reports.get(0).day().isBefore(day);
        FirstLow kind = goodBefore ? inTheAirOf(first.get()) : FirstLow.LOW_FROM_THE_START;
        cells.add(kind, ahead.get());
        if (reports.stream().anyMatch(r -> r.day().isAfter(day) && !low(r))) {
            recovered.merge(kind, 1L, Long::sum);
        }
        return this;
    }

    private boolean low(LifeReading reading) {
        return reading.battery().isLow(settings.battery());
    }

    private FirstLow inTheAirOf(LifeReading reading) {
        if (reading.ambientCelsius() == null) {
            return FirstLow.TEMPERATURE_NOT_KNOWN;
        }
        return reading.ambientCelsius() < settings.coldBelowCelsius() ? FirstLow.IN_THE_COLD : FirstLow.IN_WARMTH;
    }

    /** Adds all of another state, which must be of the same settings. */
    public FirstLowCells merge(FirstLowCells other) {
        if (!other.settings.equals(settings)) {
            throw new IllegalArgumentException(
                    "first low reports by " + settings + " cannot be added to those by " + other.settings);
        }
        cells.merge(other.cells);
        other.recovered.forEach((kind, count) -> recovered.merge(kind, count, Long::sum));
        return this;
    }

    /** Lives after a first low report of this kind, in days from it. */
    public LifetimeSample lives(FirstLow kind) {
        return cells.sample(kind);
    }

    /** Lives after a first low report of any kind. */
    public LifetimeSample lives() {
        return cells.sample();
    }

    /** Of all those lives, how many reported good again. */
    public long recovered() {
        return recovered.values().stream().mapToLong(n -> n).sum();
    }

    /** Life still to come after a first low report of this kind. */
    public LifeAhead ahead(FirstLow kind) {
        return LifeAhead.of(lives(kind));
    }

    /** Of those lives, how many reported good again. */
    public long recovered(FirstLow kind) {
        return recovered.getOrDefault(kind, 0L);
    }

    /** Lives without a place, by reason. */
    public Map<LeftOut, Long> leftOut() {
        return cells.leftOut();
    }
}
