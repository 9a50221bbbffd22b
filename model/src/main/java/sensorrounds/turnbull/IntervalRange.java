package sensorrounds.turnbull;

import java.io.Serializable;

/** Indices {@code from <= i < end} into {@link TurnbullFit#intervals()}. */
public record IntervalRange(int from, int end) implements Serializable {
    public boolean isEmpty() {
        return from >= end;
    }
}
