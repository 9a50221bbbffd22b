package sensorrounds.recurrence;

import java.io.Serializable;

/**
 * What was found at visits with a system warning on arrival. Each visit is counted once, under the first that holds:
 * {@code visits = notLooked + sensorSilent + codeNamesWheel + workOnWheel + nothingFound}.
 *
 * @param cohort a vehicle class, or {@link PeerRates#ALL}
 * @param notLooked no wheel was tried, or the reader heard nothing at all
 * @param sensorSilent a sensor that was tried gave no answer
 * @param codeNamesWheel a current or stored code names a wheel
 * @param workOnWheel a sensor was replaced or a wheel worked on though every sensor answered
 * @param nothingFound every sensor answered, no code names a wheel, nothing was done at a wheel
 * @param share {@code nothingFound} of the visits at which it was looked; NaN of none
 * @param lower 95 % limit
 */
public record NoFaultShare(
        String cohort,
        long visits,
        long notLooked,
        long sensorSilent,
        long codeNamesWheel,
        long workOnWheel,
        long nothingFound,
        double share,
        double lower,
        double upper)
        implements Serializable {}
