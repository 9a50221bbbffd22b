package sensorrounds.run;

import java.io.Serializable;
import java.util.Comparator;
import sensorrounds.history.SensorLife;

/**
 * The order of the table of lives: by vehicle, wheel set, place and time. A life has all its readings with it, so that not
 * the lives are sorted but these.
 *
 * @param begin first day anything is known of it, as text; null when there is none
 */
record LifeKey(String vehicleId, String wheelSet, String position, String begin, String lifeId)
        implements Comparable<LifeKey>, Serializable {
    private static final Comparator<String> TEXT = Comparator.nullsLast(Comparator.naturalOrder());
    private static final Comparator<LifeKey> ORDER = Comparator.comparing(LifeKey::vehicleId)
            .thenComparing(LifeKey::wheelSet, TEXT)
            .thenComparing(LifeKey::position, TEXT)
            .thenComparing(LifeKey::begin, TEXT)
            .thenComparing(LifeKey::lifeId);

    static LifeKey of(SensorLife life) {
        return new LifeKey(life.vehicleId(), life.wheelSet(), text(life.position()), text(begin(life)), life.lifeId());
    }

    private static Object begin(SensorLife life) {
        if (life.fittedOn() != null) {
            return life.fittedOn();
        }
        return life.readings().isEmpty() ? null : life.readings().get(0).day();
    }

    private static String text(Object value) {
        return value == null ? null : value.toString();
    }

    @Override
    public int compareTo(LifeKey other) {
        return ORDER.compare(this, other);
    }
}
