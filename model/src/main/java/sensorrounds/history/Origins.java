package sensorrounds.history;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import sensorrounds.fleet.Vehicle;

/**
 * On what the age of a sensor without a recorded fitting rests: the vehicle's first use, or nothing.
 *
 * <p>A second wheel set that comes into view later than one year of seasons after the first use may be of any age, and
 * so gets none; seen within that year it counts as bought with the vehicle (common practice, no source).
 */
final class Origins {
    private static final long ONE_YEAR_OF_SEASONS_DAYS = 366;

    private final Vehicle vehicle;
    private final HistorySettings settings;
    private final Map<String, LocalDate> setFirstSeen = new HashMap<>();
    private LocalDate firstVisit;
    private String firstSet;

    Origins(Vehicle vehicle, HistorySettings settings) {
        this.vehicle = vehicle;
        this.settings = settings;
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

    /** Origin of the first sensor met at a place. */
    LifeDraft.Origin original(String wheelSet) {
        LocalDate firstUsed = vehicle.firstUsed();
        if (firstUsed == null) {
            return unknown("the fleet register does not say when the vehicle was first used");
        }
        long seenAfter = ChronoUnit.DAYS.between(firstUsed, firstVisit);
        if (seenAfter < 0) {
            return unknown("the vehicle was visited on " + firstVisit + ", before its first use on " + firstUsed
                    + " by the fleet register");
        }
        if (seenAfter > settings.originalIfFirstSeenWithinDays()) {
            return unknown("the vehicle was first seen " + seenAfter + " days after its first use, more than "
                    + settings.originalIfFirstSeenWithinDays() + ", so it may not be the original sensor");
        }
        long setSeenAfter = ChronoUnit.DAYS.between(firstUsed, setFirstSeen.get(wheelSet));
        if (!Objects.equals(wheelSet, firstSet) && setSeenAfter > ONE_YEAR_OF_SEASONS_DAYS) {
            return unknown("wheel set " + wheelSet + " was first seen " + setSeenAfter
                    + " days after the vehicle's first use, more than " + ONE_YEAR_OF_SEASONS_DAYS
                    + ", so it may have been bought later");
        }
        return new LifeDraft.Origin(OriginBasis.VEHICLE_FIRST_USE, firstUsed, null);
    }

    static LifeDraft.Origin unknown(String why) {
        return new LifeDraft.Origin(OriginBasis.UNKNOWN, null, why);
    }

    static LifeDraft.Origin fitted(LocalDate day) {
        return new LifeDraft.Origin(OriginBasis.RECORDED_FITTING, day, null);
    }

    /** Part number of an original sensor; null when not known. */
    String originalPart() {
        return vehicle.originalPart();
    }
}
