package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.WarningEpisode;
import sensorrounds.visit.FaultCode;

/** Tells a vehicle's recurring warning in a few plain sentences for the technician at the next stop. */
final class Story {
    /** Chances that differ by less name nobody. */
    private static final double ALIKE = 0.005;

    private Story() {}

    static String of(
            VehicleHistory history,
            RecurringVehicle.Pattern pattern,
            List<WarningEpisode> all,
            List<WarningEpisode> recent,
            Suspects.Judgement judgement,
            boolean followUpOpen,
            LocalDate heldSince,
            RecurrenceSettings settings,
            LocalDate asOf) {
        String open = followUpOpen
                ? String.format(
                        Locale.ROOT,
                        " The last work is not yet proven by a drive of at least %.0f minutes.",
                        settings.proofDriveMinutes())
                : "";
        if (pattern == RecurringVehicle.Pattern.NOT_RECURRING) {
            String seen = "System warning in " + count(all.size(), "episode") + ", last seen on "
                    + all.get(all.size() - 1).lastSeen();
            LocalDate left = history.vehicle().leftFleet();
            if (left != null && !left.isAfter(asOf)) {
                return seen + "; the vehicle left the fleet on " + left + ".";
            }
            return seen + "; fewer than "
                    + count(settings.minimumReturns(), "return") + " within the last " + settings.windowDays()
                    + " days, so it does not count as recurring."
                    + open;
        }
        String what = switch (pattern) {
            case RECURRING_INTERMITTENT ->
                recent.stream().allMatch(WarningEpisode::everySensorAnswered)
                        ? "every sensor answered each time and no lasting cause was found"
                        : "no sensor is known failed and no lasting cause was found";
            case RECURRING_AT_ONE_PLACE -> "sensors fell silent one after the other at one place";
            case RECURRING_WITH_FAILURES -> found(recent);
            case NOT_RECURRING -> throw new IllegalStateException("told above");
        };
        int returns = SystemWarnings.returns(recent);
        String told =
                "System warning in " + count(recent.size(), "episode") + " within " + settings.windowDays() + " days"
                        + (returns == 0 ? "" : ", back " + count(returns, "time") + " after work") + ", last on "
                        + recent.get(recent.size() - 1).lastSeen() + "; " + what + "."
                        + unnamed(history, settings, asOf);
        if (judgement.suspects().isEmpty()) {
            return told + " No sensor of it was ever read, so none can be suspected or cleared. Next: read every wheel"
                    + " while the warning is on, and write down IDs and tries." + open;
        }
        Suspect first = judgement.suspects().get(0);
        List<String> alike = judgement.suspects().stream()
                .filter(s -> s.isSensor() && first.isSensor())
                .filter(s -> first.probability() - s.probability() < ALIKE)
                .map(s -> s.position().words())
                .toList();
        String held = heldSince == null || pattern != RecurringVehicle.Pattern.RECURRING_INTERMITTENT
                ? ""
                : " Since a sensor was replaced on " + heldSince
                        + " it has stayed off: the suspects are for the day it comes back.";
        return told
                + held
                + (pattern == RecurringVehicle.Pattern.RECURRING_WITH_FAILURES && judgement.byAgeAlone()
                        ? " Next of the set: "
                        : " First suspect: ")
                + (alike.size() > 1
                        ? "none stands out, " + String.join(", ", alike) + " alike" + at(first.probability()) + " each"
                        : name(first) + at(first.probability()))
                + " (" + judgement.lead() + ")." + nextOfTheSet(pattern, judgement.suspects()) + " Next: "
                + first.nextStep() + "." + open;
    }

    private static String found(List<WarningEpisode> recent) {
        long found = recent.stream().filter(WarningEpisode::lastingCause).count();
        return found == 0
                ? "a failed sensor was found"
                : found + " of " + recent.size() + " ended with a dead sensor found and replaced";
    }

    /** Where sensors die one after the other, which goes next is worth knowing even if no sensor is the first suspect. */
    private static String nextOfTheSet(RecurringVehicle.Pattern pattern, List<Suspect> suspects) {
        if (pattern != RecurringVehicle.Pattern.RECURRING_WITH_FAILURES
                || suspects.get(0).isSensor()) {
            return "";
        }
        return suspects.stream()
                .filter(Suspect::isSensor)
                .findFirst()
                .map(s -> " Next of the set, if it is a sensor: " + name(s) + at(s.probability()) + ".")
                .orElse("");
    }

    private static String name(Suspect s) {
        if (s.isSensor()) {
            return s.position().words() + " (sensor " + s.sensorId() + ")";
        }
        return s.position() == null
                ? "not a sensor"
                : "not a sensor, but the place " + s.position().words();
    }

    /** Codes that name no wheel are said to name none, lest one be read into them. */
    private static String unnamed(VehicleHistory history, RecurrenceSettings settings, LocalDate asOf) {
        LocalDate from = asOf.minusDays(settings.windowDays());
        TreeSet<String> codes = new TreeSet<>();
        history.visits().stream()
                .filter(v -> !v.day().isBefore(from) && !v.day().isAfter(asOf))
                .flatMap(v -> v.codes().stream())
                .filter(c -> c.position() == null && c.state() != FaultCode.State.CLEARED)
                .forEach(c -> codes.add(c.code()));
        return codes.isEmpty()
                ? ""
                : codes.size() == 1
                        ? " The code " + codes.first() + " names no wheel."
                        : " The codes " + String.join(", ", codes) + " name no wheel.";
    }

    private static String count(int n, String noun) {
        return n + " " + noun + (n == 1 ? "" : "s");
    }

    /** Nothing is told as certain. */
    private static String at(double probability) {
        return probability > 0.99 ? " at over 99 %" : String.format(Locale.ROOT, " at %.0f %%", 100 * probability);
    }
}
