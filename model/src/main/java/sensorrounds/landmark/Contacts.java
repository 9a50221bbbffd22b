package sensorrounds.landmark;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.survival.Lifetime;
import sensorrounds.visit.ReadOutcome;

/** When a sensor was tried, and what became of it after one of those days. */
final class Contacts {
    private final SensorLife life;
    private final NavigableSet<LocalDate> tried = new TreeSet<>();
    private final NavigableSet<LocalDate> silent = new TreeSet<>();

    Contacts(SensorLife life) {
        this.life = life;
        NavigableSet<LocalDate> answered = new TreeSet<>();
        for (LifeReading reading : life.readings()) {
            if (reading.outcome() == ReadOutcome.OK) {
                answered.add(reading.day());
            } else if (reading.outcome() == ReadOutcome.NO_ANSWER) {
                silent.add(reading.day());
            }
        }
        silent.removeAll(answered);
        tried.addAll(answered);
        tried.addAll(silent);
    }

    /** The last day within the window on which it was tried. */
    Optional<LocalDate> lastTried(LocalDate after, LocalDate upTo) {
        return Optional.ofNullable(tried.floor(upTo)).filter(day -> day.isAfter(after));
    }

    /**
     * Whether it was known failed by the end of this day. A life that failed is known failed from the first silence of
     * those that ended it, but that is hindsight: on that day it was only silent once.
     */
    boolean knownFailed(LocalDate day) {
        return life.end() == LifeEnd.FAILED && knownFailedAfter(day).isEmpty();
    }

    /** The day its failure came to be known, after this day. */
    private Optional<LocalDate> knownFailedAfter(LocalDate day) {
        LocalDate failed = life.firstKnownFailed();
        if (failed.isAfter(day)) {
            return Optional.of(failed);
        }
        boolean firstSilence = failed.equals(day) && silent.contains(day);
        return firstSilence ? Optional.ofNullable(silent.higher(day)) : Optional.empty();
    }

    /** The life after this day, in days from it; empty when no later contact tells anything. */
    Optional<Lifetime> after(LocalDate day) {
        LocalDate good = life.lifetime() != null && life.fittedOn() != null
                ? life.fittedOn().plusDays(life.lifetime().lower())
                : life.lastAnswered();
        int lower = good == null ? 0 : (int) Math.max(0, ChronoUnit.DAYS.between(day, good));
        if (life.end() != LifeEnd.FAILED) {
            return lower > 0 ? Optional.of(Lifetime.censored(0, lower)) : Optional.empty();
        }
        return knownFailedAfter(day).map(failed -> {
            int upper = (int) ChronoUnit.DAYS.between(day, failed);
            return Lifetime.interval(0, Math.min(lower, upper), upper);
        });
    }
}
