package sensorrounds.simulate;

/** A way of writing visits down. */
interface VisitFormat {
    /** First line of a file with its line end; empty when there is none. */
    String head();

    /** Writes all lines of a visit. */
    void append(StringBuilder out, SimulatedVisit visit, Slips slips);

    /** Lines that {@link #append} writes for this visit. */
    int lines(SimulatedVisit visit);
}
