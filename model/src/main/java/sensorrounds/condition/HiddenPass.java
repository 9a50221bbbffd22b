package sensorrounds.condition;

/** One walk over all sensors of a fleet: the sum of their likelihoods at a point, wherever they are kept. */
@FunctionalInterface
public interface HiddenPass {
    HiddenSum over(HiddenParameters at, HiddenSum.Detail detail);
}
