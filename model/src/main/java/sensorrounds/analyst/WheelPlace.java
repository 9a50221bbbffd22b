package sensorrounds.analyst;

import sensorrounds.visit.Mount;
import sensorrounds.visit.WheelPosition;

/** Where on a vehicle a sensor works, as far as heat, water and handling may differ there. */
public enum WheelPlace {
    FRONT_AXLE,
    OTHER_AXLE,
    DUAL_OUTER,
    DUAL_INNER,
    SPARE,
    NOT_KNOWN;

    /** @param position null when not known */
    static WheelPlace of(WheelPosition position) {
        if (position == null) {
            return NOT_KNOWN;
        }
        if (position.isSpare()) {
            return SPARE;
        }
        if (position.mount() != Mount.SINGLE) {
            return position.mount() == Mount.INNER ? DUAL_INNER : DUAL_OUTER;
        }
        return position.axle() == 1 ? FRONT_AXLE : OTHER_AXLE;
    }
}
