package sensorrounds.backtest;

import java.util.ArrayList;
import java.util.List;

/**
 * Chances from {@code from} up to under {@code to}; the last band holds 1.
 *
 * @param from 0 or more
 * @param to over {@code from}, at most 1
 */
public record ChanceBand(double from, double to) {
    private static final double[] EDGES = {0, 0.01, 0.02, 0.05, 0.1, 0.2, 0.4, 0.7, 1};

    /** The bands, from the lowest: narrow where most sensors are. */
    public static List<ChanceBand> all() {
        List<ChanceBand> bands = new ArrayList<>();
        for (int i = 0; i + 1 < EDGES.length; i++) {
            bands.add(new ChanceBand(EDGES[i], EDGES[i + 1]));
        }
        return bands;
    }

    boolean holds(double chance) {
        return chance >= from && (chance < to || to == 1 && chance == 1);
    }
}
