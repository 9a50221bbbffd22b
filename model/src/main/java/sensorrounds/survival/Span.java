package sensorrounds.survival;

import java.io.Serializable;

/** Ages in (from, to]. */
public record Span(double from, double to) implements Serializable {}
