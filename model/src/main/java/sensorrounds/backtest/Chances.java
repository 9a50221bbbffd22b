package sensorrounds.backtest;

import java.io.Serializable;
import sensorrounds.outlook.SensorOutlook;

/**
 * Chances of not working, from 0 to 1; NaN where nothing could be said.
 *
 * @param now of having failed already, unnoticed
 * @param within30 of having failed by 30 days from the cut, as the others
 */
public record Chances(double now, double within30, double within90, double within180, double within365)
        implements Serializable {
    static Chances of(SensorOutlook o) {
        return new Chances(
                o.chances().pNow(),
                o.chances().p30(),
                o.chances().p90(),
                o.chances().p180(),
                o.chances().p365());
    }

    /** Chance of having failed by the end of a horizon. */
    public double within(Horizon horizon) {
        return switch (horizon) {
            case MONTH -> within30;
            case QUARTER -> within90;
            case HALF_YEAR -> within180;
            case YEAR -> within365;
        };
    }

    boolean known() {
        return Double.isFinite(now + within30 + within90 + within180 + within365);
    }
}
