package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import sensorrounds.visit.Visit;
import sensorrounds.visit.Warning;
import sensorrounds.visit.WheelWork;

/**
 * Puts the warnings of single visits together to episodes, each kind by itself. A lamp that is off right after work
 * proves nothing, since its detection time has not passed; so an episode runs until the warning is seen off on arrival on
 * a later day, or a drive longer than the detection time goes without it (49 CFR 571.138 S4.4: 20 min; UN R141: 10 min).
 */
final class WarningBuilder {
    private final String vehicleId;
    private final HistorySettings settings;
    private final Set<FailedAndReplaced> failedAndReplaced;
    private final Map<Warning, Open> open = new EnumMap<>(Warning.class);
    private final Map<Warning, LocalDate> lastProvenOff = new EnumMap<>(Warning.class);
    private final List<WarningEpisode> episodes = new ArrayList<>();

    /** A failed sensor taken off on that day. */
    private record FailedAndReplaced(LocalDate day, FailureCause cause) {}

    /** An episode still running. */
    private static final class Open {
        private final LocalDate firstSeen;
        private final List<String> visitIds = new ArrayList<>();
        private LocalDate lastSeen;
        private VisitSummary lastVisit;
        private int returns;
        private boolean workedOn;
        private boolean causeFound;
        private boolean everySensorAnswered = true;
        private boolean explainedByCold = true;

        private Open(LocalDate firstSeen) {
            this.firstSeen = firstSeen;
        }

        private void seenAt(VisitSummary visit) {
            visitIds.add(visit.visitId());
            if (lastVisit != null && visit.isLaterThan(lastVisit)) {
                backAgain();
            }
            lastSeen = visit.day();
            lastVisit = visit;
            everySensorAnswered &= visit.everySensorAnswered();
            explainedByCold &= Boolean.TRUE.equals(visit.pressuresExplainedByCold());
        }

        /** Counts a return once for each piece of work, and takes the cause found for none. */
        private void backAgain() {
            if (workedOn) {
                returns++;
                workedOn = false;
                causeFound = false;
            }
        }
    }

    WarningBuilder(String vehicleId, List<SensorLife> lives, HistorySettings settings) {
        this.vehicleId = vehicleId;
        this.settings = settings;
        this.failedAndReplaced = lives.stream()
                .filter(l -> l.end() == LifeEnd.FAILED && l.endedOn() != null)
                .map(l -> new FailedAndReplaced(l.endedOn(), l.cause()))
                .collect(Collectors.toSet());
    }

    /**
     * @param visits in time order
     * @param summaries of the same visits, in the same order
     */
    List<WarningEpisode> episodes(List<Visit> visits, List<VisitSummary> summaries) {
        for (int i = 0; i < visits.size(); i++) {
            VisitSummary visit = summaries.get(i);
            arrive(visit);
            work(visits.get(i), visit);
            drive(visit);
        }
        for (Warning kind : List.copyOf(open.keySet())) {
            close(kind, null);
        }
        return episodes.stream()
                .sorted(Comparator.comparing(WarningEpisode::firstSeen)
                        .thenComparing(WarningEpisode::lastSeen)
                        .thenComparing(WarningEpisode::kind))
                .toList();
    }

    private void arrive(VisitSummary visit) {
        Warning warning = visit.warning();
        if (warning == null) {
            return;
        }
        if (warning != Warning.NONE) {
            open.computeIfAbsent(warning, k -> new Open(firstSeen(k, visit))).seenAt(visit);
            return;
        }
        for (Warning kind : List.copyOf(open.keySet())) {
            Open episode = open.get(kind);
            if (visit.day().isAfter(episode.lastSeen) && !Proof.hardlyDriven(episode.lastVisit, visit, settings)) {
                close(kind, visit.day());
            }
        }
    }

    /** The driver's word, unless it lies after the visit or before the last proof that the warning was off. */
    private LocalDate firstSeen(Warning kind, VisitSummary visit) {
        LocalDate since = visit.warningSince();
        LocalDate proven = lastProvenOff.get(kind);
        boolean usable = since != null && !since.isAfter(visit.day()) && (proven == null || !since.isBefore(proven));
        return usable ? since : visit.day();
    }

    private void work(Visit visit, VisitSummary summary) {
        open.forEach((kind, episode) -> {
            if (isMeantToEnd(kind, summary)) {
                episode.workedOn = true;
            }
            episode.causeFound |= isLastingCure(kind, visit, summary);
        });
    }

    /** Whether the work could end a warning of this kind. */
    static boolean isMeantToEnd(Warning kind, VisitSummary visit) {
        if (kind == Warning.SYSTEM_FAULT) {
            return !visit.replaced().isEmpty() || visit.relearned() || visit.codesCleared();
        }
        return visit.repair() != Repair.NONE;
    }

    private boolean isLastingCure(Warning kind, Visit visit, VisitSummary summary) {
        boolean replaced = !summary.replaced().isEmpty();
        if (kind == Warning.LOW_PRESSURE) {
            boolean tyreWork = visit.wheels().stream()
                    .anyMatch(w -> w.work() == WheelWork.TYRE_WORK || w.work() == WheelWork.KIT_RENEWED);
            return tyreWork
                    || (replaced
                            && failedAndReplaced.contains(
                                    new FailedAndReplaced(visit.day(), FailureCause.STEM_OR_CORROSION)));
        }
        return replaced && failedAndReplaced.stream().anyMatch(f -> f.day().equals(visit.day()));
    }

    private void drive(VisitSummary visit) {
        Proof proof = Proof.of(visit, settings);
        if (proof == Proof.OFF) {
            List.copyOf(open.keySet()).forEach(kind -> close(kind, visit.day()));
        } else if (proof == Proof.RETURNED) {
            // The log does not say which warning came back; it is taken for every one that was worked on.
            open.values().forEach(Open::backAgain);
        }
    }

    private void close(Warning kind, LocalDate provenOff) {
        Open episode = open.remove(kind);
        if (provenOff != null) {
            lastProvenOff.put(kind, provenOff);
        }
        episodes.add(new WarningEpisode(
                vehicleId,
                kind,
                episode.firstSeen,
                episode.lastSeen,
                provenOff,
                episode.visitIds,
                episode.returns,
                episode.everySensorAnswered,
                episode.causeFound,
                kind == Warning.LOW_PRESSURE && episode.explainedByCold));
    }
}
