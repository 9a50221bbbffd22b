package sensorrounds.condition;

/** Readings that cannot all be true. Histories never make them: they put a death after the last sign of life. */
public final class ImpossibleReadings {
    private ImpossibleReadings() {}

    /** Found dead on the day it was known to be alive. */
    public static HiddenReadings deadWhileAlive() {
        return new HiddenReadings.Builder(100).dead(100).build();
    }
}
