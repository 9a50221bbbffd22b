package sensorrounds.condition;

import java.io.Serializable;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.history.LifeReading;
import sensorrounds.visit.Mount;

/**
 * The chances of a {@link WakeModel} as numbered cells: one per reader, inner wheel and cold, the last four for readers
 * never seen. A reading then keeps a small number in place of a chance, and what depends on the chance is computed once
 * per cell.
 */
public final class WakeChances implements Serializable {
    private static final long serialVersionUID = 1;

    private final Map<String, Integer> readers = new HashMap<>();
    private final double[] chances;
    private final ConditionSettings settings;

    /** @throws IllegalArgumentException when the model knows no chance */
    public WakeChances(WakeModel model, ConditionSettings settings) {
        if (model.status() == WakeModel.Status.NO_READS) {
            throw new IllegalArgumentException("no chance of waking is known: " + model.note());
        }
        this.settings = settings;
        List<ReaderQuality> known = model.qualities();
        chances = new double[4 * (known.size() + 1)];
        for (int r = 0; r <= known.size(); r++) {
            String reader = r < known.size() ? known.get(r).readerId() : null;
            if (reader != null) {
                readers.put(reader, r);
            }
            for (int i = 0; i < 4; i++) {
                chances[4 * r + i] = model.chance(reader, i / 2 == 1 ? Mount.INNER : Mount.SINGLE, i % 2 == 1);
            }
        }
    }

    /** Chances given outright, for studies with known truth. */
    WakeChances(double[] chances, ConditionSettings settings) {
        this.chances = chances.clone();
        this.settings = settings;
    }

    int cells() {
        return chances.length;
    }

    double chance(int cell) {
        return chances[cell];
    }

    int cell(LifeReading reading) {
        WakeCells.Key key = WakeCells.key(reading, settings.coldCelsius());
        return 4 * readers.getOrDefault(key.readerId(), readers.size()) + (key.inner() ? 2 : 0) + (key.cold() ? 1 : 0);
    }

    ConditionSettings settings() {
        return settings;
    }
}
