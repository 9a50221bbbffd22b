package sensorrounds.visit;

/** How a wheel sits on its side of the axle: alone, or as the inner or outer one of a dual pair. */
public enum Mount {
    SINGLE,
    INNER,
    OUTER
}
