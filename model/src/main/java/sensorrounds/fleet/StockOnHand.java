package sensorrounds.fleet;

import java.io.Serializable;

/** Pieces of a part lying at a depot. */
public record StockOnHand(String partId, String depot, int pieces) implements Serializable {}
