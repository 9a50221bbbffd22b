package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.Visit;

/** The sensor lives of one vehicle: built, judged, held against their places, written down. */
final class SensorLives {
    private static final Comparator<SensorLife> BY_FIRST_READING = Comparator.comparing(
                    SensorLives::begun, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(SensorLife::position)
            .thenComparing(SensorLife::sensorId)
            .thenComparing(SensorLife::generation);

    private SensorLives() {}

    /**
     * @param visits in time order
     * @param leftOn day the vehicle left; null while it is in the fleet
     */
    static List<SensorLife> of(
            Vehicle vehicle,
            List<Visit> visits,
            HistorySettings settings,
            LocalDate leftOn,
            VehicleMoves moves,
            FindingLog findings) {
        List<LifeDraft> drafts = new LifeBuilder(vehicle, settings, moves, findings).build(visits);
        Map<LifeDraft, Verdict> judged = new LinkedHashMap<>();
        drafts.forEach(d -> judged.put(d, Verdict.of(d, settings, leftOn)));
        new PlaceCheck(settings, findings).check(judged);
        Map<String, Integer> generations = new HashMap<>();
        List<SensorLife> lives = new ArrayList<>();
        judged.forEach((draft, verdict) -> {
            String id = idOf(draft);
            lives.add(write(vehicle.vehicleId(), id, generations.merge(id, 1, Integer::sum), draft, verdict));
        });
        lives.sort(BY_FIRST_READING);
        return lives;
    }

    /** A sensor that never gave its ID is named by its place, in lower case, which no ID is. */
    private static String idOf(LifeDraft draft) {
        if (draft.sensorId() != null) {
            return draft.sensorId();
        }
        Place place = draft.place();
        return "no-id-" + place.position().code() + (place.wheelSet() == null ? "" : "-" + place.wheelSet());
    }

    private static SensorLife write(String vehicleId, String id, int generation, LifeDraft d, Verdict v) {
        LifeSample sample = LifeSample.of(d, v);
        return new SensorLife(
                vehicleId,
                id,
                generation,
                d.part(),
                d.place().position(),
                d.place().wheelSet(),
                d.origin().fittedOn(),
                d.origin().basis(),
                d.origin().notBefore(),
                d.firstAnswered(),
                d.lastAnswered(),
                v.failedBy(),
                v.endedOn(),
                v.end(),
                v.cause(),
                d.weakness().lastSound(),
                d.weakness().first(),
                d.weakness().recovered(),
                d.continues(),
                sample.lifetime(),
                sample.exclusion(),
                d.readings());
    }

    private static LocalDate begun(SensorLife life) {
        return life.readings().isEmpty()
                ? life.fittedOn()
                : life.readings().get(0).day();
    }
}
