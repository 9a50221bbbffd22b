package sensorrounds.recurrence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.history.Finding;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.history.WarningEpisode;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.outlook.UnmonitoredWheels;
import sensorrounds.visit.WheelPosition;

/** What speaks for a cause outside the sensors, and what would settle it. */
final class Outside {
    /** Finds beyond this number say nothing new: they come from one cause, a set of one age. */
    private static final long MOST_FINDS = 2;

    private final VehicleHistory history;
    private final List<WarningEpisode> episodes;
    private final RecurrenceSettings settings;
    private final LocalDate asOf;

    /** @param episodes the episodes that make up the recurrence */
    Outside(VehicleHistory history, List<WarningEpisode> episodes, RecurrenceSettings settings, LocalDate asOf) {
        this.history = history;
        this.episodes = episodes;
        this.settings = settings;
        this.asOf = asOf;
    }

    /** @param found earlier episodes that ended with a dead sensor found, where sensors die one after the other; else 0 */
    Suspects.Candidate candidate(long found, CodeEvidence codes, SuspectFigures figures) {
        List<Evidence> evidence = new ArrayList<>();
        evidence.add(Evidence.of(
                Evidence.Sign.PRIOR,
                "a cause outside the sensors, before other evidence: the measure of all weights" + figures.words(),
                1));
        if (found > 0) {
            evidence.add(Evidence.of(
                    Evidence.Sign.FOUND_DEAD,
                    found + " of " + episodes.size() + (episodes.size() == 1 ? " episode" : " episodes")
                            + " ended with a dead sensor found and replaced",
                    Math.pow(settings.weights().foundDead(), Math.min(found, MOST_FINDS))));
        }
        List<Finding> places = OnePlace.findings(history, settings, asOf);
        WheelPosition suspected =
                places.isEmpty() ? null : places.get(places.size() - 1).position();
        codes.evidence(suspected, figures).ifPresent(evidence::add);
        declared().forEach(evidence::add);
        WheelPosition bare =
                places.isEmpty() ? bareWheel().map(UnmonitoredWheel::position).orElse(null) : null;
        return new Suspects.Candidate(places.isEmpty() ? bare : suspected, null, evidence);
    }

    /** Signs whose weights are declared: they are too rare for a fleet to tell. */
    List<Evidence> declared() {
        List<Evidence> all = new ArrayList<>();
        NotLearned.of(history, episodes, asOf)
                .ifPresent(words -> all.add(Evidence.of(
                        Evidence.Sign.NOT_LEARNED, words, settings.weights().notLearned())));
        List<Finding> places = OnePlace.findings(history, settings, asOf);
        if (!places.isEmpty()) {
            WheelPosition place = places.get(places.size() - 1).position();
            all.add(Evidence.of(
                    Evidence.Sign.ONE_PLACE,
                    "sensors fell silent one after the other at " + (place == null ? "one place" : place.words()),
                    settings.weights().placeForNotASensor()));
        }
        bareWheel()
                .ifPresent(w -> all.add(Evidence.of(
                        Evidence.Sign.NO_SENSOR,
                        "no sensor is on record at " + w.position().words() + " since " + w.since()
                                + ", which raises the warning by itself",
                        settings.weights().knownFailed())));
        return all;
    }

    /** The wheel of the set on the vehicle from which a sensor was taken and none fitted, with the warning seen since. */
    private Optional<UnmonitoredWheel> bareWheel() {
        String set = Suspects.onWheels(history).stream()
                .findFirst()
                .map(SensorLife::wheelSet)
                .orElse(null);
        return UnmonitoredWheels.of(history, asOf).stream()
                .filter(w -> w.certainty() == UnmonitoredWheel.Certainty.KNOWN
                        && w.position() != null
                        && w.sensorId() == null
                        && w.since() != null
                        && Objects.equals(w.wheelSet(), set))
                .filter(w -> episodes.stream().anyMatch(e -> !e.lastSeen().isBefore(w.since())))
                .findFirst();
    }

    static String step(Suspects.Candidate c, VehicleHistory history, RecurrenceSettings settings) {
        String place = c.position() == null ? "that place" : c.position().words();
        String drive = Suspects.drive(settings);
        if (isIndirect(history)) {
            return "this system has no wheel sensors: set all pressures by gauge, store them anew, then make " + drive
                    + ": a warning then is one for the workshop";
        }
        if (speaks(c, Evidence.Sign.ONE_PLACE)) {
            return "put a wheel with a sensor known to answer at " + place + " and make " + drive
                    + ": a warning for that place again points to receiver, wiring or a blind spot";
        }
        if (speaks(c, Evidence.Sign.NO_SENSOR)) {
            return "look whether a sensor is at " + place + "; if none, fit one, teach the vehicle its ID and make "
                    + drive + ": until then the warning tells the truth";
        }
        if (speaks(c, Evidence.Sign.NOT_LEARNED)) {
            return "teach the vehicle the IDs now on its wheels, then make " + drive
                    + ": the warning off on it settles it";
        }
        return String.format(
                Locale.ROOT,
                "compare the learned IDs with those on the wheels, then make %s without chargers or cameras plugged in: a "
                        + "warning then points to receiver or wiring",
                drive);
    }

    private static boolean speaks(Suspects.Candidate c, Evidence.Sign sign) {
        return c.evidence().stream().anyMatch(e -> e.sign() == sign);
    }

    static boolean isIndirect(VehicleHistory history) {
        return history.vehicle().system() == MonitoringSystem.INDIRECT;
    }
}
