package sensorrounds.recurrence;

import java.io.Serializable;
import sensorrounds.history.Repair;

/**
 * How often the system warning was back within some days after one kind of repair. Of the repairs, each is counted once:
 * {@code repairs = back + held + notLooked + cutShort}.
 *
 * @param repair strongest work done; null for every kind together
 * @param windowDays days after the repair
 * @param back warning seen again within the window
 * @param held seen without the warning at the end of the window or later
 * @param notLooked followed to the end of the window, but at its end or later no visit has seen the vehicle without the warning
 * @param cutShort not followed to the end of the window: repaired too late, left the fleet, or other work came first
 * @param share estimated share back within the window, with repairs counted as long as they were followed; NaN, with limits 0
 *     and 1, when none was followed to its end
 * @param lower 95 % limit
 * @param upper 95 % limit
 * @param shareOfSeen back / (back + held): what the share would be if those not looked at were like those seen; NaN of none
 * @param adjustedShare the share if this kind of repair had met as many repeated repairs as all kinds together; NaN where one of
 *     the two sorts never met it
 */
public record ComebackRate(
        Repair repair,
        int windowDays,
        long repairs,
        long back,
        long held,
        long notLooked,
        long cutShort,
        double share,
        double lower,
        double upper,
        double shareOfSeen,
        double adjustedShare)
        implements Serializable {}
