package sensorrounds.condition;

/** One walk over all sensors of a fleet: the sum of their likelihoods at a point, wherever they are kept. */
@FunctionalInterface
public interface HiddenPass {
    HiddenSum over(HiddenParameters at, HiddenSum.Detail detail);

    /** Sensors in the memory of one machine. */
    static HiddenPass over(Iterable<HiddenReadings> sensors, HiddenModel model) {
        return (at, detail) -> HiddenSum.of(sensors, new HiddenPoint(at, model), detail);
    }
}
