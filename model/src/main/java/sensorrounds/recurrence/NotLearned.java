package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import sensorrounds.history.LifeReading;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.VisitSummary;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.Warning;

/**
 * IDs on the wheels that the vehicle was never taught: it listens for the old ones, and warns though every sensor is sound (common
 * practice, no source). They come with a new sensor, recorded or not, and with the other set of wheels. A sensor that was given
 * the old ID needs no teaching, and the warning seen off on arrival since tells of a vehicle that learned by itself.
 */
final class NotLearned {
    /**
     * @param from day from which a relearn counts
     * @param seen day from which the ID is known to be on the wheel
     */
    private record Stranger(LocalDate from, LocalDate seen, String words) {}

    private final VehicleHistory history;
    private final List<WarningEpisode> episodes;
    private final LocalDate asOf;

    private NotLearned(VehicleHistory history, List<WarningEpisode> episodes, LocalDate asOf) {
        this.history = history;
        this.episodes = episodes;
        this.asOf = asOf;
    }

    /** The newest of them in words, with the warning seen since and no relearn on record; empty where there is none. */
    static Optional<String> of(VehicleHistory history, List<WarningEpisode> episodes, LocalDate asOf) {
        NotLearned all = new NotLearned(history, episodes, asOf);
        List<SensorLife> on = Suspects.onWheels(history);
        return Stream.of(
                        on.stream().flatMap(l -> all.fitted(l).stream()),
                        on.stream().flatMap(l -> all.unrecorded(l).stream()),
                        all.otherSet(on).stream())
                .flatMap(s -> s)
                .filter(all::isUntaught)
                .max(Comparator.comparing(Stranger::seen))
                .map(s -> s.words() + " and no relearn is on record since");
    }

    private Optional<Stranger> fitted(SensorLife life) {
        return life.basis() != OriginBasis.RECORDED_FITTING || life.fittedOn() == null || life.generation() > 1
                ? Optional.empty()
                // The warning of the day itself may be the one the sensor was fitted for.
                : Optional.of(new Stranger(
                        life.fittedOn(),
                        life.fittedOn().plusDays(1),
                        "sensor " + life.sensorId() + " was fitted on " + life.fittedOn() + " at "
                                + life.position().words()));
    }

    /** An ID first read where another sensor of this set had been read before, its fitting not written down. */
    private Optional<Stranger> unrecorded(SensorLife life) {
        if (life.basis() == OriginBasis.RECORDED_FITTING || life.readings().isEmpty()) {
            return Optional.empty();
        }
        LifeReading first = life.readings().get(0);
        return history.lives().stream()
                .filter(o -> o != life
                        && Objects.equals(o.wheelSet(), life.wheelSet())
                        && !o.sensorId().equals(life.sensorId()))
                .flatMap(o -> o.readings().stream())
                .filter(r -> Objects.equals(r.position(), first.position())
                        && r.day().isBefore(first.day()))
                .map(LifeReading::day)
                .max(LocalDate::compareTo)
                .map(before -> new Stranger(
                        before.plusDays(1),
                        first.day(),
                        "sensor " + life.sensorId() + ", first read on " + first.day() + ", sits at "
                                + life.position().words() + " where another was"));
    }

    /** The set of wheels put on last, on a vehicle that has another. */
    private Optional<Stranger> otherSet(List<SensorLife> on) {
        String set = on.isEmpty() ? null : on.get(0).wheelSet();
        if (set == null) {
            return Optional.empty();
        }
        return days(history.lives().stream()
                        .filter(l -> l.wheelSet() != null && !l.wheelSet().equals(set)))
                .max(LocalDate::compareTo)
                .flatMap(off -> days(on.stream())
                        .filter(d -> d.isAfter(off))
                        .min(LocalDate::compareTo)
                        .map(d -> new Stranger(
                                off.plusDays(1), d, "wheel set " + set + " is on the vehicle since " + d)));
    }

    private Stream<LocalDate> days(Stream<SensorLife> lives) {
        return lives.flatMap(l -> l.readings().stream()).map(LifeReading::day).filter(d -> !d.isAfter(asOf));
    }

    private boolean isUntaught(Stranger s) {
        return !s.seen().isAfter(asOf)
                && episodes.stream().anyMatch(e -> !e.lastSeen().isBefore(s.seen()))
                && history.visits().stream().noneMatch(v -> isTaught(v, s));
    }

    private boolean isTaught(VisitSummary v, Stranger s) {
        if (v.day().isBefore(s.from()) || v.day().isAfter(asOf)) {
            return false;
        }
        boolean off = v.warning() == Warning.NONE && v.day().isAfter(s.seen());
        return v.relearned() || off;
    }
}
