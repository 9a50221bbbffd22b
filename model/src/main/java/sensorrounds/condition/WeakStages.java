package sensorrounds.condition;

/**
 * How many stages a sensor passes while it is weak. All stages of one sensor last alike on average and show the same signs,
 * so that both models have the same parameters and only their likelihoods tell them apart. The time in k such stages has
 * an Erlang law (Cox and Miller 1965, The Theory of Stochastic Processes, 4.2: the method of stages).
 */
public enum WeakStages {
    /** A weak sensor dies at a constant rate: it has no memory of how long it has been weak. */
    ONE,
    /** The longer it has been weak, the sooner it dies; the spread of the time is 0.71 of its mean. */
    TWO;

    int number() {
        return ordinal() + 1;
    }
}
