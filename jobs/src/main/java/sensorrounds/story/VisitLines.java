package sensorrounds.story;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.RelearnKind;
import sensorrounds.visit.RelearnResult;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.Visit;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;

/** Visit by visit, what was seen and done. */
final class VisitLines {
    /** Tries from which an answer is worth a word; two are ordinary (common practice, no source). */
    private static final int SLOW_TRIES = 3;

    private final RunContext run;

    VisitLines(RunContext run) {
        this.run = run;
    }

    Page.Part part(List<Visit> visits) {
        List<Block.Item> items = visits.stream().map(this::item).toList();
        return new Page.Part(
                "visits",
                "Visit by visit",
                items.isEmpty() ? List.of() : List.of(new Block.Items(Block.Order.PLAIN, items)));
    }

    private Block.Item item(Visit visit) {
        VisitHeader h = visit.header();
        List<String> details = new ArrayList<>();
        add(details, answers(visit.wheels()));
        add(details, batteries(visit.wheels()));
        add(details, new Pressures(run).words(visit));
        add(details, codes(h.faultCodes()));
        add(details, work(visit.wheels()));
        add(details, closing(visit));
        return new Block.Item(visit.day().toString(), arrival(h), details);
    }

    private static void add(List<String> details, String words) {
        if (!words.isEmpty()) {
            details.add(words);
        }
    }

    private static String arrival(VisitHeader h) {
        return Say.joined(
                ", ",
                reason(h) + "; " + warning(h),
                h.odometerKm() == null ? null : Say.grouped(h.odometerKm()) + " km",
                h.ambientCelsius() == null ? null : Say.figure(h.ambientCelsius(), 0) + " °C",
                h.readerId() == null ? null : "reader " + h.readerId(),
                h.wheelSet() == null ? null : "wheel set " + h.wheelSet());
    }

    private static String reason(VisitHeader h) {
        if (h.reason() == null) {
            return "reason not written down";
        }
        return switch (h.reason()) {
            case WARNING -> "for a warning";
            case TYRE_WORK -> "for tyre work";
            case SERVICE -> "for service";
            case SEASONAL_CHANGE -> "for the change of wheels";
            case INSPECTION -> "for inspection";
            case OTHER -> "for another reason";
        };
    }

    private static String warning(VisitHeader h) {
        if (h.warning() == null) {
            return "warning not written down";
        }
        String seen = switch (h.warning()) {
            case NONE -> "no warning on";
            case LOW_PRESSURE -> "low-pressure warning on (steady)";
            case SYSTEM_FAULT -> "system warning on (flashes, then steady)";
            case MESSAGE -> "message on";
        };
        return seen
                + (h.warningSince() == null ? "" : ", seen since " + h.warningSince())
                + (h.drivingMinutesToWarning() == null
                        ? ""
                        : ", after " + Say.plain(h.drivingMinutesToWarning()) + " min of driving");
    }

    private static String answers(List<WheelReading> wheels) {
        long tried = wheels.stream()
                .filter(w -> w.read() == ReadOutcome.OK || w.read() == ReadOutcome.NO_ANSWER)
                .count();
        if (tried == 0) {
            return wheels.isEmpty() ? "" : "No sensor was tried.";
        }
        List<String> silent = wheels.stream()
                .filter(w -> w.read() == ReadOutcome.NO_ANSWER)
                .map(w -> w.position().code() + (w.wakeAttempts() == null ? "" : " after " + tries(w)))
                .toList();
        List<String> slow = wheels.stream()
                .filter(w -> w.read() == ReadOutcome.OK && w.wakeAttempts() != null && w.wakeAttempts() >= SLOW_TRIES)
                .map(w -> w.position().code() + " only at try " + w.wakeAttempts())
                .toList();
        long answered = tried - silent.size();
        String all = silent.isEmpty()
                ? (tried == 1 ? "The one sensor tried answered" : "All " + tried + " sensors answered")
                : answered + " of " + tried + " sensors answered; silent: " + Say.and(silent);
        return all + (slow.isEmpty() ? "" : ", " + Say.and(slow)) + ".";
    }

    private static String tries(WheelReading w) {
        return w.wakeAttempts() == 1 ? "1 try" : w.wakeAttempts() + " tries";
    }

    private String batteries(List<WheelReading> wheels) {
        List<String> low = wheels.stream()
                .filter(w -> w.battery() != null && w.battery().isLow(run.low()))
                .map(w -> w.position().code()
                        + (w.battery().words().equals("low")
                                ? ""
                                : " (" + w.battery().words() + ")"))
                .toList();
        return low.isEmpty() ? "" : "Battery reported low: " + Say.and(low) + ".";
    }

    private static String codes(List<FaultCode> codes) {
        if (codes.isEmpty()) {
            return "";
        }
        return codes.stream()
                .map(c -> "Code " + c.code()
                        + (c.state() == null ? "" : " " + Say.constant(c.state().name()))
                        + (c.position() == null
                                ? ", naming no wheel"
                                : " at " + c.position().code()))
                .collect(Collectors.joining("; ", "", "."));
    }

    private static String work(List<WheelReading> wheels) {
        List<String> words = new ArrayList<>();
        Map<WheelWork, List<String>> other = new TreeMap<>();
        for (WheelReading w : wheels) {
            if (w.work() == WheelWork.SENSOR_REPLACED) {
                words.add(w.position().code() + ": sensor replaced" + why(w) + fitted(w));
            } else if (w.work() != null && w.work() != WheelWork.NONE) {
                other.computeIfAbsent(w.work(), k -> new ArrayList<>())
                        .add(w.position().code() + why(w));
            }
        }
        other.forEach((work, places) -> words.add(Say.first(Say.constant(work.name())) + " at " + Say.and(places)));
        return words.isEmpty() ? "" : String.join(". ", words) + ".";
    }

    private static String why(WheelReading w) {
        return w.workReason() == null ? "" : " (" + Say.constant(w.workReason().name()) + ")";
    }

    private static String fitted(WheelReading w) {
        String old = w.sensorId() == null ? "unread" : w.sensorId();
        if (Boolean.TRUE.equals(w.cloned())
                || (w.newSensorId() != null && w.newSensorId().equals(w.sensorId()))) {
            return ", the new one given the old ID " + old;
        }
        return ", " + old + " by " + (w.newSensorId() == null ? "one whose ID is not written down" : w.newSensorId());
    }

    private String closing(Visit visit) {
        VisitHeader h = visit.header();
        List<String> words = new ArrayList<>();
        if (h.relearn() != null && h.relearn() != RelearnKind.NONE) {
            words.add("Relearn " + kind(h.relearn()) + (h.relearnResult() == null ? "" : result(h.relearnResult())));
        } else if (h.relearnResult() != null) {
            words.add("Relearn" + result(h.relearnResult()));
        }
        if (Boolean.TRUE.equals(h.codesCleared())) {
            words.add("Codes cleared");
        }
        boolean worked =
                !words.isEmpty() || visit.wheels().stream().anyMatch(w -> w.work() == WheelWork.SENSOR_REPLACED);
        if (Boolean.TRUE.equals(h.pressuresStored())) {
            words.add("Pressures stored");
        }
        if (h.testDrive() != null) {
            words.add(drive(h.testDrive()));
        } else if (worked) {
            words.add("No drive written down");
        }
        return words.isEmpty() ? "" : String.join(". ", words) + ".";
    }

    private static String kind(RelearnKind kind) {
        return switch (kind) {
            case NONE -> "";
            case STATIONARY -> "standing";
            case DRIVE -> "by driving";
            case DIAGNOSTIC_PORT -> "through the diagnostic port";
        };
    }

    private static String result(RelearnResult result) {
        return switch (result) {
            case DONE -> ", done";
            case ATTEMPTED -> ", attempted: nobody wrote down whether it took";
            case FAILED -> ", failed";
        };
    }

    private String drive(TestDrive d) {
        String length = Say.joined(
                ", ",
                d.minutes() == null ? null : Say.plain(d.minutes()) + " min",
                d.distanceKm() == null ? null : Say.figure(d.distanceKm(), 0) + " km");
        String how = d.warningReturned() == null
                ? "outcome not written down"
                : d.warningReturned() ? "the warning came back" : "the warning stayed off";
        double least = run.drivingKmh() * run.proofMinutes() / 60;
        boolean tooShort =
                !Boolean.TRUE.equals(d.warningReturned()) && (d.minutes() == null || d.minutes() < run.proofMinutes());
        boolean stood = !tooShort
                && !Boolean.TRUE.equals(d.warningReturned())
                && d.distanceKm() != null
                && d.distanceKm() < least;
        return "Drive" + (length.isEmpty() ? "" : " of " + length) + ": " + how
                + (tooShort
                        ? "; too short to prove anything, which takes " + Say.plain(run.proofMinutes()) + " min"
                        : stood
                                ? "; that is hardly driven and proves nothing, which takes " + Say.figure(least, 0)
                                        + " km"
                                : "");
    }
}
