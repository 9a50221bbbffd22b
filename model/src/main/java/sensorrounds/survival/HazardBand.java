package sensorrounds.survival;

import java.io.Serializable;

/**
 * A band of ages with one hazard.
 *
 * @param from the band begins after this age
 * @param to and ends with it; infinite for the last
 * @param rate failures per unit of time; NaN where nothing was under observation; without failures 0 with an upper limit
 * @param exposure unit-time survived under observation in the band
 * @param failures failures in the band; where only intervals are known, as expected under the fit
 */
public record HazardBand(double from, double to, Estimate rate, double exposure, double failures)
        implements Serializable {}
