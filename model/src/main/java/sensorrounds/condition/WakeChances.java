package sensorrounds.condition;

import java.io.Serializable;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.history.LifeReading;
import sensorrounds.visit.Mount;

/**
 * The chances of a {@link WakeModel} as numbered cells: one per reader and technician, inner wheel and cold, the last four
 * for readers never seen. A reading then keeps a small number in place of a chance, and what depends on the chance is computed once
 * per cell.
 */
public final class WakeChances implements Serializable {
    private static final long serialVersionUID = 1;

    private final Map<WakeModel.Hand, Integer> hands = new HashMap<>();
    private final double[] chances;
    private final ConditionSettings settings;

    /** @throws IllegalArgumentException when the model knows no chance */
    public WakeChances(WakeModel model, ConditionSettings settings) {
        if (model.status() == WakeModel.Status.NO_READS) {
            throw new IllegalArgumentException("no chance of waking is known: " + model.note());
        }
        this.settings = settings;
        List<WakeModel.Hand> known = model.hands();
        chances = new double[4 * (known.size() + 1)];
        for (int h = 0; h <= known.size(); h++) {
            WakeModel.Hand hand = h < known.size() ? known.get(h) : new WakeModel.Hand("", "");
            hands.put(hand, h);
            for (int i = 0; i < 4; i++) {
                chances[4 * h + i] = model.chanceOf(hand, i / 2 == 1 ? Mount.INNER : Mount.SINGLE, i % 2 == 1);
            }
        }
    }

    /** Chances given outright, for studies with known truth: in fours, as above. */
    WakeChances(double[] chances, ConditionSettings settings) {
        this.chances = chances.clone();
        this.settings = settings;
    }

    int cells() {
        return chances.length;
    }

    /** Whether a cell is one of reads in the cold; cells come in fours, warm and cold in turns. */
    static boolean isCold(int cell) {
        return cell % 2 == 1;
    }

    double chance(int cell) {
        return chances[cell];
    }

    int cell(LifeReading reading) {
        WakeCells.Key key = WakeCells.key(reading, settings.coldCelsius());
        return 4 * hand(key.readerId(), key.technicianId()) + (key.inner() ? 2 : 0) + (key.cold() ? 1 : 0);
    }

    /** The pair, else its reader, else its technician, else nobody known. */
    private int hand(String reader, String technician) {
        Integer pair = hands.get(new WakeModel.Hand(reader, technician));
        if (pair != null) {
            return pair;
        }
        Integer alone = hands.get(new WakeModel.Hand(reader, ""));
        return alone != null && !reader.isEmpty()
                ? alone
                : hands.getOrDefault(new WakeModel.Hand("", technician), chances.length / 4 - 1);
    }

    ConditionSettings settings() {
        return settings;
    }
}
