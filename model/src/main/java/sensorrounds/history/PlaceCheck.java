package sensorrounds.history;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.visit.Source;

/**
 * One place at which sensor after sensor falls silent young speaks against the place: receiver, aerial, wiring or a blind
 * spot. The young sensors among them are then no failures (common practice, no source). An old sensor that died before
 * them is no sign of it, and a later sensor that answers there for longer than the young ones lived clears the place.
 */
final class PlaceCheck {
    private static final int YOUNG_SILENCES_AGAINST_A_PLACE = 2;

    private final HistorySettings settings;
    private final FindingLog findings;

    PlaceCheck(HistorySettings settings, FindingLog findings) {
        this.settings = settings;
        this.findings = findings;
    }

    /** @param judged lives in the order they began; the verdicts of sensors at a suspected place are replaced */
    void check(Map<LifeDraft, Verdict> judged) {
        Map<Place, List<LifeDraft>> byPlace = new LinkedHashMap<>();
        judged.keySet()
                .forEach(l -> byPlace.computeIfAbsent(l.place(), k -> new ArrayList<>())
                        .add(l));
        byPlace.forEach((place, lives) -> {
            lives.sort(Comparator.comparing(LifeDraft::begunOn));
            List<LifeDraft> run = new ArrayList<>();
            for (LifeDraft life : lives) {
                Verdict v = judged.get(life);
                if (v.fellSilent() && (run.isEmpty() || isYoung(life, v))) {
                    run.add(life);
                } else {
                    blame(place, run, lives, judged);
                    run = new ArrayList<>();
                    if (v.fellSilent()) {
                        run.add(life);
                    }
                }
            }
            blame(place, run, lives, judged);
        });
    }

    private void blame(Place place, List<LifeDraft> run, List<LifeDraft> lives, Map<LifeDraft, Verdict> judged) {
        List<LifeDraft> young =
                run.stream().filter(l -> isYoung(l, judged.get(l))).toList();
        if (young.size() < YOUNG_SILENCES_AGAINST_A_PLACE || isClearedSince(run, lives)) {
            return;
        }
        LifeDraft last = run.get(run.size() - 1);
        LocalDate day = judged.get(last).failedBy();
        List<Source> sources = new ArrayList<>();
        run.forEach(l -> sources.addAll(l.lastSources()));
        findings.sensor(
                Finding.Kind.PLACE_KEEPS_FAILING,
                last.sensorId(),
                place,
                day,
                run.size() + " sensors fell silent one after the other at " + place.words() + ", " + young.size()
                        + " of them younger than " + settings.youngFailureDays() + " days",
                "the place is suspected (receiver, aerial, wiring, blind spot): the young ones count as no failures",
                sources);
        young.forEach(l -> judged.put(l, judged.get(l).placeBlamed()));
    }

    /** A place where a later sensor was heard for that long lets sensors be heard. */
    private boolean isClearedSince(List<LifeDraft> run, List<LifeDraft> lives) {
        int last = lives.indexOf(run.get(run.size() - 1));
        return lives.subList(last + 1, lives.size()).stream()
                .anyMatch(l -> l.lastAnswered() != null
                        && ChronoUnit.DAYS.between(l.begunOn(), l.lastAnswered()) >= settings.youngFailureDays());
    }

    private boolean isYoung(LifeDraft life, Verdict verdict) {
        LocalDate fittedOn = life.origin().fittedOn();
        return fittedOn != null && ChronoUnit.DAYS.between(fittedOn, verdict.failedBy()) < settings.youngFailureDays();
    }
}
