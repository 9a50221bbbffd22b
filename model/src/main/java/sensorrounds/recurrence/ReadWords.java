package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sensorrounds.condition.ConditionSettings;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.visit.ReadOutcome;

/** The reads of a sensor that count for or against it, and what they tell in words. */
final class ReadWords {
    private final Set<LocalDate> unheard;
    private final Set<String> warned;
    private final WakeModel model;
    private final ConditionSettings settings;
    private final LocalDate asOf;

    ReadWords(Set<LocalDate> unheard, Set<String> warned, WakeModel model, ConditionSettings settings, LocalDate asOf) {
        this.unheard = unheard;
        this.warned = warned;
        this.model = model;
        this.settings = settings;
        this.asOf = asOf;
    }

    /** Reads up to the day, those of readers that heard nothing at all left out. */
    List<LifeReading> counted(SensorLife life) {
        return life.readings().stream()
                .filter(r -> !r.day().isAfter(asOf) && !unheard.contains(r.day()))
                .filter(r -> r.answered() || r.outcome() == ReadOutcome.NO_ANSWER)
                .toList();
    }

    /** @param badly whether the tries speak against it */
    Optional<String> waking(SensorLife life, boolean badly) {
        List<LifeReading> all = counted(life).stream()
                .filter(r -> r.answered() && r.attempts() != null && !Double.isNaN(model.chance(r)))
                .toList();
        if (all.isEmpty()) {
            long answers = counted(life).stream().filter(LifeReading::answered).count();
            return answers == 0
                    ? Optional.empty()
                    : Optional.of("answered at " + (answers == 1 ? "1 read" : answers + " reads")
                            + ", how many tries it took is not known");
        }
        List<LifeReading> newest = all.subList(Math.max(0, all.size() - settings.recentReadings()), all.size());
        double sound =
                newest.stream().mapToDouble(r -> 1 / model.chance(r)).average().orElse(Double.NaN);
        String tries = newest.stream().map(r -> Integer.toString(r.attempts())).collect(Collectors.joining(", "));
        return Optional.of(String.format(
                Locale.ROOT,
                "%s %s at its last %s, a sound sensor under the same readers needs %.1f",
                badly ? "needed" : "woke well, with",
                newest.size() == 1 && tries.equals("1") ? "1 try" : tries + " tries",
                newest.size() == 1
                        ? "read"
                        : newest.size() + (newest.size() < all.size() ? " of " + all.size() : "") + " reads",
                sound));
    }

    Optional<String> silence(SensorLife life) {
        List<LifeReading> silent =
                counted(life).stream().filter(r -> !r.answered()).toList();
        if (silent.isEmpty()) {
            return Optional.empty();
        }
        long lit = silent.stream().filter(r -> warned.contains(r.visitId())).count();
        return Optional.of("silent at " + (silent.size() == 1 ? "a visit" : silent.size() + " visits")
                + (lit == silent.size() ? " with the warning on" : lit == 0 ? "" : ", " + lit + " with the warning on")
                + ", last on " + silent.get(silent.size() - 1).day());
    }

    Optional<String> battery(SensorLife life) {
        List<LifeReading> reports = counted(life).stream()
                .filter(r -> r.battery() != null && r.answered())
                .toList();
        if (reports.isEmpty()) {
            return Optional.empty();
        }
        LifeReading last = reports.get(reports.size() - 1);
        List<LifeReading> low = reports.stream()
                .filter(r -> r.battery().isLow(settings.battery()))
                .toList();
        if (low.isEmpty()) {
            return Optional.of(
                    said(last) + (reports.size() == 1 ? "" : ", never low in " + reports.size() + " reports"));
        }
        LifeReading lastLow = low.get(low.size() - 1);
        return Optional.of(said(lastLow)
                + (reports.size() == 1 ? "" : ", low in " + low.size() + " of " + reports.size() + " reports")
                + (lastLow == last ? "" : ", " + last.battery().words() + " on " + last.day()));
    }

    private static String said(LifeReading r) {
        return "battery reported " + r.battery().words() + " on " + r.day();
    }
}
