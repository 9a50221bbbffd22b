package sensorrounds.recurrent;

import java.io.Serializable;

/**
 * A stretch of time (from, to] in which a unit's events would have been seen. An event at {@code from} itself belongs to
 * the time before, one at {@code to} counts.
 *
 * @param from in the caller's unit of time, any finite origin
 * @param to after {@code from}
 */
public record ObservationWindow(double from, double to) implements Serializable {
    public ObservationWindow {
        if (!(from < to && from > Double.NEGATIVE_INFINITY && to < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a window of observation (from, to] needs finite from < to, not (" + from
                    + ", " + to + "]; leave out a unit's window that holds no time");
        }
    }

    public boolean contains(double time) {
        return time > from && time <= to;
    }

    public double length() {
        return to - from;
    }
}
