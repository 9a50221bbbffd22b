package sensorrounds.cox;

/** How failures at one and the same age share the risk set. */
public enum Ties {
    /**
     * Failures at one age are taken to have happened one after the other in unknown order: each in turn leaves an average
     * failed unit's share of the risk. Close to the truth also with many ties. Source: Efron (1977), JASA 72:557-565.
     */
    EFRON,
    /** Each failure sees the whole risk set, tied ones included; pulls coefficients to 0. Breslow (1974), Biometrics 30:89. */
    BRESLOW;

    /** Share of the tied failures' risk that has left before the k-th of d (k from 0). */
    double gone(int k, int d) {
        return this == EFRON ? (double) k / d : 0;
    }
}
