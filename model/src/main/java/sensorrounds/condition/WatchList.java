package sensorrounds.condition;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.visit.ReadOutcome;

/** Sensors that still work and show a sign of weakness, each with its figures and with what would settle it. */
public final class WatchList {
    private WatchList() {}

    /** Signs at the sensors in service on one vehicle, by everything in its history; by life, then by sign. */
    public static List<WatchEntry> of(VehicleHistory history, WakeModel model, ConditionSettings settings) {
        Set<LocalDate> unheard = UnheardVisits.days(history);
        List<WatchEntry> entries = new ArrayList<>();
        for (SensorLife life : history.lives()) {
            if (life.inService()) {
                lowBattery(history, life, settings).ifPresent(entries::add);
                slowToWake(history, life, unheard, model, settings).ifPresent(entries::add);
                silentOnce(history, life, unheard, model, settings).ifPresent(entries::add);
            }
        }
        return List.copyOf(entries);
    }

    private static Optional<WatchEntry> lowBattery(
            VehicleHistory history, SensorLife life, ConditionSettings settings) {
        return BatteryReports.standingLow(life, settings, LocalDate.MAX).map(low -> {
            LifeReading last = BatteryReports.last(life, LocalDate.MAX).orElse(low);
            LocalDate since = firstOfRun(life, settings);
            String reason = "battery reported " + low.battery().words() + " on " + low.day() + air(low)
                    + (last.equals(low)
                            ? ""
                            : "; " + last.battery().words() + " on " + last.day() + air(last)
                                    + ", but warmer, which does not take it back");
            return entry(
                    history,
                    life,
                    WatchEntry.Sign.LOW_BATTERY,
                    since,
                    Double.NaN,
                    reason,
                    "an OK battery report in air no warmer than at the low one, or a new sensor");
        });
    }

    /** First low report since the last one that was taken back. */
    private static LocalDate firstOfRun(SensorLife life, ConditionSettings settings) {
        LocalDate since = null;
        for (LifeReading r : BatteryReports.upTo(life, LocalDate.MAX)) {
            boolean stands = BatteryReports.standingLow(life, settings, r.day()).isPresent();
            since = stands ? (since == null ? r.day() : since) : null;
        }
        return since;
    }

    private static Optional<WatchEntry> slowToWake(
            VehicleHistory history,
            SensorLife life,
            Set<LocalDate> unheard,
            WakeModel model,
            ConditionSettings settings) {
        List<LifeReading> counted = new ArrayList<>(SlowWaking.countedReadings(life, settings, LocalDate.MAX, unheard));
        // Silence at the end is the sign SILENT_ONCE; counting it here as well would be one sign named twice.
        counted.removeIf(r -> life.lastAnswered() == null || r.day().isAfter(life.lastAnswered()));
        SensorCondition condition = SlowWaking.of(counted, model, settings);
        if (condition.probabilitySlow() < settings.watchProbability()) {
            return Optional.empty();
        }
        List<LifeReading> against = counted.stream()
                .filter(r -> SlowWaking.logRatio(r, model, settings) > 0)
                .toList();
        LifeReading worst = against.get(0);
        for (LifeReading r : against) {
            worst = SlowWaking.logRatio(r, model, settings) >= SlowWaking.logRatio(worst, model, settings) ? r : worst;
        }
        String reason = (worst.answered() ? "needed " : "silent after ")
                + tries(worst.attempts()) + " on " + worst.day() + "; a sound sensor under the same reader needs "
                + figure(1 / model.chance(worst))
                + (counted.size() > 1
                        ? String.format(
                                Locale.ROOT,
                                "; %d of its last %d reads took more tries than a sound sensor's would",
                                against.size(),
                                counted.size())
                        : "");
        return Optional.of(entry(
                history,
                life,
                WatchEntry.Sign.SLOW_TO_WAKE,
                against.get(0).day(),
                condition.probabilitySlow(),
                reason,
                "answers at the first try with another reader on a warm day clear it, the same again with another "
                        + "reader confirms it"));
    }

    private static Optional<WatchEntry> silentOnce(
            VehicleHistory history,
            SensorLife life,
            Set<LocalDate> unheard,
            WakeModel model,
            ConditionSettings settings) {
        return LastReports.lastTried(life, unheard, LocalDate.MAX)
                .filter(r -> r.outcome() == ReadOutcome.NO_ANSWER)
                .map(r -> {
                    double p = model.chance(r);
                    String reason = "no answer on " + r.day()
                            + (r.attempts() == null ? "" : " after " + tries(r.attempts()))
                            + (life.lastAnswered() == null
                                    ? "; it never answered before"
                                    : "; it last answered on " + life.lastAnswered())
                            + (r.attempts() == null || Double.isNaN(p)
                                    ? ""
                                    : String.format(
                                            Locale.ROOT,
                                            "; a sound sensor stays silent that long in %s %% of such reads",
                                            percent(Math.pow(1 - p, r.attempts()))));
                    return entry(
                            history,
                            life,
                            WatchEntry.Sign.SILENT_ONCE,
                            firstSilence(life, r, unheard),
                            Double.NaN,
                            reason,
                            "one more try with another reader, tyre inflated and warm: silent again means it failed");
                });
    }

    private static LocalDate firstSilence(SensorLife life, LifeReading last, Set<LocalDate> unheard) {
        return life.readings().stream()
                .filter(r -> r.outcome() == ReadOutcome.NO_ANSWER && !unheard.contains(r.day()))
                .filter(r -> life.lastAnswered() == null || r.day().isAfter(life.lastAnswered()))
                .map(LifeReading::day)
                .findFirst()
                .orElse(last.day());
    }

    private static WatchEntry entry(
            VehicleHistory history,
            SensorLife life,
            WatchEntry.Sign sign,
            LocalDate since,
            double probability,
            String reason,
            String settledBy) {
        return new WatchEntry(
                history.vehicleId(),
                history.vehicle().depot(),
                life.position(),
                life.wheelSet(),
                life.sensorId(),
                life.part(),
                sign,
                since,
                probability,
                reason,
                settledBy);
    }

    private static String air(LifeReading r) {
        return r.ambientCelsius() == null ? "" : String.format(Locale.ROOT, " at %.0f °C", r.ambientCelsius());
    }

    private static String tries(int n) {
        return n == 1 ? "1 try" : n + " tries";
    }

    private static String figure(double v) {
        return String.format(Locale.ROOT, "%.1f", v);
    }

    private static String percent(double share) {
        return share < 0.001 ? "less than 0.1" : String.format(Locale.ROOT, share < 0.1 ? "%.1f" : "%.0f", 100 * share);
    }
}
