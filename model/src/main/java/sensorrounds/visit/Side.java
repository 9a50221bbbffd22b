package sensorrounds.visit;

/** Side of the vehicle, seen by a driver facing forward, whatever side the traffic drives on. */
public enum Side {
    LEFT,
    RIGHT
}
