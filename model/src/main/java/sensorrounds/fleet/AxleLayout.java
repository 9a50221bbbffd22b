package sensorrounds.fleet;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sensorrounds.visit.Mount;
import sensorrounds.visit.Side;
import sensorrounds.visit.WheelPosition;

/**
 * Where a vehicle has wheels. Text form: one letter per axle from the front, S single or D dual, and {@code +spare}
 * when the spare has a sensor: {@code SS}, {@code SD}, {@code SS+spare}, {@code DDD}.
 */
public record AxleLayout(List<Mount> axles, boolean spare) implements Serializable {
    public AxleLayout {
        axles = List.copyOf(axles);
    }

    /** @return the layout, or empty when the text is none */
    public static Optional<AxleLayout> parse(String text) {
        String t = text.strip().toUpperCase(Locale.ROOT);
        boolean spare = t.endsWith("+SPARE");
        String axles = spare ? t.substring(0, t.length() - "+SPARE".length()) : t;
        if (axles.isEmpty() || axles.length() > WheelPosition.MAX_AXLE || !axles.matches("[SD]+")) {
            return Optional.empty();
        }
        return Optional.of(new AxleLayout(
                axles.chars()
                        .mapToObj(c -> c == 'D' ? Mount.OUTER : Mount.SINGLE)
                        .toList(),
                spare));
    }

    /** All places, front to back, in the order of {@link WheelPosition#compareTo}. */
    public List<WheelPosition> positions() {
        List<WheelPosition> all = new ArrayList<>();
        for (int a = 0; a < axles.size(); a++) {
            for (Side side : Side.values()) {
                if (axles.get(a) == Mount.SINGLE) {
                    all.add(new WheelPosition(a + 1, side, Mount.SINGLE));
                } else {
                    all.add(new WheelPosition(a + 1, side, Mount.OUTER));
                    all.add(new WheelPosition(a + 1, side, Mount.INNER));
                }
            }
        }
        if (spare) {
            all.add(WheelPosition.SPARE);
        }
        all.sort(null);
        return List.copyOf(all);
    }

    public String code() {
        StringBuilder s = new StringBuilder();
        axles.forEach(m -> s.append(m == Mount.SINGLE ? 'S' : 'D'));
        return spare ? s + "+spare" : s.toString();
    }
}
