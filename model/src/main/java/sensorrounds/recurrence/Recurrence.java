package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import sensorrounds.condition.WakeModel;
import sensorrounds.history.FollowUp;
import sensorrounds.history.LifeEnd;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.WarningEpisode;

/** Judges whether a vehicle's system warnings keep coming back, how often against its peers, and what to suspect. */
public final class Recurrence {
    private Recurrence() {}

    /** As with a law of life, with no such law: sensors weigh by their age alone. */
    public static Optional<RecurringVehicle> of(
            VehicleHistory history, PeerRates peers, WakeModel model, RecurrenceSettings settings, LocalDate asOf) {
        return of(history, peers, model, SuspectFigures.declared(settings), life -> Double.NaN, settings, asOf);
    }

    /**
     * @param failsWithinYear chance that a sensor on the vehicle does not work a year from now, by its law of life; NaN
     *     when not known
     * @param asOf day of the judgement; episodes first seen later are left out
     * @return empty for a vehicle that never had a system warning, or no visit by then
     */
    public static Optional<RecurringVehicle> of(
            VehicleHistory history,
            PeerRates peers,
            WakeModel model,
            SuspectFigures figures,
            ToDoubleFunction<SensorLife> failsWithinYear,
            RecurrenceSettings settings,
            LocalDate asOf) {
        List<WarningEpisode> episodes = SystemWarnings.episodes(history, asOf);
        Optional<Integer> days = SystemWarnings.exposureDays(history, asOf);
        if (episodes.isEmpty() || days.isEmpty()) {
            return Optional.empty();
        }
        int events = SystemWarnings.events(episodes);
        double years = days.get() / SystemWarnings.DAYS_PER_YEAR;
        PeerRates.Shrunk shrunk = peers.shrunk(history.vehicle().vehicleClass(), events, years);
        List<WarningEpisode> recent = inWindow(episodes, settings, asOf);
        LocalDate heldSince = Held.since(history, episodes, asOf).orElse(null);
        RecurringVehicle.Pattern pattern = hasLeft(history, asOf)
                ? RecurringVehicle.Pattern.NOT_RECURRING
                : pattern(history, episodes, recent, settings, asOf);
        Suspects.Judgement judgement =
                pattern == RecurringVehicle.Pattern.NOT_RECURRING || Suspects.nobodyKnown(history)
                        ? new Suspects.Judgement(List.of(), "", false)
                        : Suspects.judge(
                                history,
                                model,
                                figures,
                                pattern == RecurringVehicle.Pattern.RECURRING_WITH_FAILURES
                                        ? Optional.of(failsWithinYear)
                                        : Optional.empty(),
                                settings,
                                asOf);
        boolean followUpOpen = followUpOpen(history, asOf);
        LocalDate lastSeen = episodes.stream()
                .map(e -> e.lastSeen().isAfter(asOf) ? asOf : e.lastSeen())
                .max(LocalDate::compareTo)
                .orElseThrow();
        String story = Story.of(history, pattern, episodes, recent, judgement, followUpOpen, heldSince, settings, asOf);
        return Optional.of(new RecurringVehicle(
                history.vehicleId(),
                history.vehicle().depot(),
                history.vehicle().vehicleClass(),
                episodes.size(),
                SystemWarnings.returns(episodes),
                years,
                Driven.of(history, asOf).orElse(null),
                events / years,
                shrunk.perYear(),
                shrunk.probabilityAbovePeers(),
                pattern,
                lastSeen,
                followUpOpen,
                heldSince,
                judgement.suspects(),
                story));
    }

    /** Gone by that day: what its warnings were is kept, and nothing is left to look at. */
    private static boolean hasLeft(VehicleHistory history, LocalDate asOf) {
        LocalDate left = history.vehicle().leftFleet();
        return left != null && !left.isAfter(asOf);
    }

    /**
     * A vehicle to learn the weights of signs from: one that recurs with no lasting cause found; empty for others, and for one
     * without a sensor on its wheels, which cannot tell how often the cause is one.
     */
    static Optional<SuspectCase> toLearnFrom(
            VehicleHistory history, WakeModel model, RecurrenceSettings settings, LocalDate asOf) {
        List<WarningEpisode> episodes = SystemWarnings.episodes(history, asOf);
        List<WarningEpisode> recent = inWindow(episodes, settings, asOf);
        return !Suspects.onWheels(history).isEmpty()
                        && !hasLeft(history, asOf)
                        && pattern(history, episodes, recent, settings, asOf)
                                == RecurringVehicle.Pattern.RECURRING_INTERMITTENT
                ? Optional.of(Suspects.caseOf(history, recent, model, settings, asOf))
                : Optional.empty();
    }

    /** Episodes with the warning still seen in the window. */
    static List<WarningEpisode> inWindow(List<WarningEpisode> episodes, RecurrenceSettings settings, LocalDate asOf) {
        LocalDate from = asOf.minusDays(settings.windowDays());
        return episodes.stream().filter(e -> !e.lastSeen().isBefore(from)).toList();
    }

    /**
     * The pattern. An episode with a lasting cause put right is explained and counts for no intermittent fault, so a
     * vehicle whose dead sensor was replaced and that goes on warning with every sensor answering is intermittent. A
     * vehicle that recurs with a sensor silent at times but none known failed is intermittent too: nothing lasting was
     * found.
     *
     * <p>At one place the returns count over all the time observed: each new sensor there lasts for months, so the returns
     * come too seldom for the window, though the last of them must lie in it.
     */
    static RecurringVehicle.Pattern pattern(
            VehicleHistory history,
            List<WarningEpisode> all,
            List<WarningEpisode> recent,
            RecurrenceSettings settings,
            LocalDate asOf) {
        if (!recent.isEmpty()
                && SystemWarnings.recurrences(all) >= settings.minimumReturns()
                && !OnePlace.findings(history, settings, asOf).isEmpty()) {
            return RecurringVehicle.Pattern.RECURRING_AT_ONE_PLACE;
        }
        if (SystemWarnings.recurrences(recent) < settings.minimumReturns()) {
            return RecurringVehicle.Pattern.NOT_RECURRING;
        }
        List<WarningEpisode> unexplained = recent.stream()
                .filter(e -> e.everySensorAnswered() && !e.lastingCause())
                .toList();
        if (SystemWarnings.recurrences(unexplained) >= settings.minimumReturns()) {
            return RecurringVehicle.Pattern.RECURRING_INTERMITTENT;
        }
        boolean failures = recent.stream().anyMatch(WarningEpisode::lastingCause)
                || history.lives().stream().anyMatch(life -> failedInWindow(life, recent, settings, asOf));
        return failures
                ? RecurringVehicle.Pattern.RECURRING_WITH_FAILURES
                : RecurringVehicle.Pattern.RECURRING_INTERMITTENT;
    }

    /** Known failed in the window, or before it and still on the wheel when the warnings came. */
    private static boolean failedInWindow(
            SensorLife life, List<WarningEpisode> recent, RecurrenceSettings settings, LocalDate asOf) {
        if (life.end() != LifeEnd.FAILED
                || life.firstKnownFailed() == null
                || life.firstKnownFailed().isAfter(asOf)) {
            return false;
        }
        boolean stillThere = life.endedOn() == null
                || !recent.isEmpty() && life.endedOn().isAfter(recent.get(0).firstSeen());
        return stillThere || !life.firstKnownFailed().isBefore(asOf.minusDays(settings.windowDays()));
    }

    /** True when the newest work on a system warning is not yet proven. */
    private static boolean followUpOpen(VehicleHistory history, LocalDate asOf) {
        FollowUp newest = null;
        for (FollowUp f : history.followUps()) {
            if (!f.repairedOn().isAfter(asOf)) {
                newest = f;
            }
        }
        return newest != null
                && (newest.state() == FollowUp.State.OPEN
                        || newest.settledOn() != null && newest.settledOn().isAfter(asOf));
    }
}
