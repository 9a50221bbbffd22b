package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Which sensor sits at which place of one vehicle, and which ones sat there before. A place holds one at most. */
final class WheelBook {
    private final Map<Place, LifeDraft> seated = new LinkedHashMap<>();
    private final Set<Place> everSeated = new HashSet<>();
    private final Set<Place> plainValves = new HashSet<>();
    private final List<LifeDraft> lives = new ArrayList<>();
    private final Stays stays = new Stays();
    private LocalDate today;

    /** What is seated or unseated from now on is so on this day. */
    void today(LocalDate day) {
        today = day;
    }

    Stays stays() {
        return stays;
    }

    /** @return the sensor there, or null */
    LifeDraft at(Place place) {
        return seated.get(place);
    }

    boolean isSeated(LifeDraft life) {
        return seated.get(life.place()) == life;
    }

    /** Whether any sensor was ever known at this place. */
    boolean hasHistory(Place place) {
        return everSeated.contains(place) || plainValves.contains(place);
    }

    boolean hasPlainValve(Place place) {
        return plainValves.contains(place);
    }

    void fitPlainValve(Place place) {
        plainValves.add(place);
    }

    LifeDraft begin(LifeDraft life) {
        lives.add(life);
        seat(life, life.place());
        return life;
    }

    void seat(LifeDraft life, Place place) {
        life.moveTo(place);
        seated.put(place, life);
        stays.begin(life, place, today);
        everSeated.add(place);
        plainValves.remove(place);
    }

    void unseat(LifeDraft life) {
        if (seated.remove(life.place(), life)) {
            stays.end(life, today);
        }
    }

    /** The sensor with this ID on the vehicle: the one at this place, else one of this wheel set, else any other. */
    Optional<LifeDraft> onVehicle(String id, Place place, Collection<LifeDraft> taken) {
        LifeDraft here = seated.get(place);
        if (here != null && id.equals(here.sensorId()) && !taken.contains(here)) {
            return Optional.of(here);
        }
        Comparator<LifeDraft> sameSetFirst =
                Comparator.comparing(l -> Objects.equals(l.place().wheelSet(), place.wheelSet()) ? 0 : 1);
        return seated.values().stream()
                .filter(l -> id.equals(l.sensorId()) && !taken.contains(l))
                .min(sameSetFirst.thenComparing(l -> l.place().position()));
    }

    /** A sensor with this ID that another one pushed out without a record: it may come back. */
    Optional<LifeDraft> laidAside(String id) {
        return last(l -> l.isLaidAside() && id.equals(l.sensorId()));
    }

    /** The sensor with this ID that is on the vehicle. */
    Optional<LifeDraft> seatedWith(String id) {
        return seated.values().stream()
                .filter(l -> id.equals(l.sensorId()))
                .min(Comparator.comparing(l -> l.place().position()));
    }

    /** The last life with this ID, whatever became of it. */
    Optional<LifeDraft> lastWith(String id) {
        return last(l -> id.equals(l.sensorId()));
    }

    /** The last life that ended at this place. */
    Optional<LifeDraft> lastEndedAt(Place place) {
        return last(l -> l.endedOn() != null && place.equals(l.place()));
    }

    /** Day on which the last sensor known at this place left it; null when none is known to have. */
    LocalDate emptySince(Place place) {
        return lastEndedAt(place).map(LifeDraft::endedOn).orElse(null);
    }

    private Optional<LifeDraft> last(Predicate<LifeDraft> which) {
        for (int i = lives.size() - 1; i >= 0; i--) {
            if (which.test(lives.get(i))) {
                return Optional.of(lives.get(i));
            }
        }
        return Optional.empty();
    }

    Collection<LifeDraft> seatedInSet(String wheelSet) {
        List<LifeDraft> of = new ArrayList<>(seated.size());
        for (LifeDraft life : seated.values()) {
            if (Objects.equals(life.place().wheelSet(), wheelSet)) {
                of.add(life);
            }
        }
        return of;
    }

    /** The logs gave the set no name before: its sensors and places get it now. */
    void nameSet(String name) {
        for (LifeDraft life : seatedInSet(null)) {
            Place named = new Place(name, life.place().position());
            unseat(life);
            seat(life, named);
        }
        List<Place> unnamed =
                plainValves.stream().filter(p -> p.wheelSet() == null).toList();
        for (Place place : unnamed) {
            plainValves.remove(place);
            plainValves.add(new Place(name, place.position()));
        }
    }

    /** All lives in the order they began. */
    List<LifeDraft> lives() {
        return List.copyOf(lives);
    }
}
