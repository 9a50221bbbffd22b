package sensorrounds.history;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import sensorrounds.fleet.Vehicle;
import sensorrounds.visit.WheelReading;

/**
 * On what the age of a sensor without a recorded fitting rests: the vehicle's first use, or nothing.
 *
 * <p>A tyre's date is the earliest day its bead can have been set, and a sensor is changed with the bead off. So a tyre made
 * in the year before the vehicle's first use is taken as its first, and the sensor in it as original, however late the
 * vehicle was first seen (common practice, no source). A newer tyre bounds nothing: sensors outlive tyres.
 *
 * <p>A second wheel set that comes into view later than one year of seasons after the first use may be of any age, and
 * so gets none; seen within that year it counts as bought with the vehicle (common practice, no source).
 */
final class Origins {
    private static final long ONE_YEAR_OF_SEASONS_DAYS = 366;
    /** A vehicle's first tyres are made at most this long before its first use. */
    private static final long FIRST_TYRE_DAYS = 366;

    private final Vehicle vehicle;
    private final HistorySettings settings;
    private final VehicleMoves moves;
    private final Map<String, LocalDate> setFirstSeen = new HashMap<>();
    private LocalDate firstVisit;
    private String firstSet;

    Origins(Vehicle vehicle, HistorySettings settings, VehicleMoves moves) {
        this.vehicle = vehicle;
        this.settings = settings;
        this.moves = moves;
    }

    void visited(LocalDate day, String wheelSet) {
        if (firstVisit == null) {
            firstVisit = day;
            firstSet = wheelSet;
        }
        setFirstSeen.putIfAbsent(wheelSet, day);
    }

    /** The set met first without a name has one now. */
    void nameSet(String name) {
        LocalDate since = setFirstSeen.remove(null);
        if (since != null) {
            setFirstSeen.put(name, since);
        }
        if (firstSet == null) {
            firstSet = name;
        }
    }

    /**
     * Origin of the first sensor met at a place.
     *
     * @param met the row that shows it
     */
    LifeDraft.Origin original(String wheelSet, WheelReading met) {
        LocalDate firstUsed = vehicle.firstUsed();
        if (firstUsed == null) {
            return unknown("the fleet register does not say when the vehicle was first used");
        }
        long seenAfter = ChronoUnit.DAYS.between(firstUsed, firstVisit);
        if (seenAfter < 0) {
            return unknown("the vehicle was visited on " + firstVisit + ", before its first use on " + firstUsed
                    + " by the fleet register");
        }
        boolean late = seenAfter > settings.originalIfFirstSeenWithinDays();
        long setSeenAfter = ChronoUnit.DAYS.between(firstUsed, setFirstSeen.get(wheelSet));
        boolean setLate = !Objects.equals(wheelSet, firstSet) && setSeenAfter > ONE_YEAR_OF_SEASONS_DAYS;
        if ((late || setLate) && isFirstTyre(met.tyreDate()) && mayBeOriginal(met.part())) {
            return new LifeDraft.Origin(OriginBasis.TYRE_DATE, firstUsed, met.tyreDate(), null);
        }
        if (late) {
            return unknown("the vehicle was first seen " + seenAfter + " days after its first use, more than "
                    + settings.originalIfFirstSeenWithinDays() + ", so it may not be the original sensor");
        }
        if (setLate) {
            return unknown("wheel set " + wheelSet + " was first seen " + setSeenAfter
                    + " days after the vehicle's first use, more than " + ONE_YEAR_OF_SEASONS_DAYS
                    + ", so it may have been bought later");
        }
        return new LifeDraft.Origin(OriginBasis.VEHICLE_FIRST_USE, firstUsed, null, null);
    }

    private boolean mayBeOriginal(String part) {
        return part == null || vehicle.originalPart() == null || part.equals(vehicle.originalPart());
    }

    private boolean isFirstTyre(LocalDate tyre) {
        return tyre != null
                && !tyre.isAfter(vehicle.firstUsed())
                && ChronoUnit.DAYS.between(tyre, vehicle.firstUsed()) <= FIRST_TYRE_DAYS;
    }

    /** Where the sensor with this ID came from; null when it was on no other vehicle before, or its ID is null. */
    Arrival arrival(String id) {
        return id == null ? null : moves.arrivals().get(id);
    }

    static LifeDraft.Origin of(Arrival arrival) {
        if (arrival.takenForDead()) {
            return unknown("its ID is that of a sensor counted as failed on vehicle " + arrival.fromVehicle());
        }
        return arrival.fittedOn() == null
                ? unknown("it came from vehicle " + arrival.fromVehicle() + ", where its age was not known either")
                        .notBefore(arrival.notBefore())
                : new LifeDraft.Origin(OriginBasis.EARLIER_VEHICLE, arrival.fittedOn(), arrival.notBefore(), null);
    }

    static LifeDraft.Origin unknown(String why) {
        return new LifeDraft.Origin(OriginBasis.UNKNOWN, null, null, why);
    }

    static LifeDraft.Origin fitted(LocalDate day) {
        return new LifeDraft.Origin(OriginBasis.RECORDED_FITTING, day, day, null);
    }

    /** Part number of an original sensor; null when not known. */
    String originalPart() {
        return vehicle.originalPart();
    }
}
