package sensorrounds.landmark;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.survival.Lifetime;
import sensorrounds.survival.LifetimeSample;

/** Counts of equal lives by state, and of lives left out by reason: whole numbers, so that any order adds up the same. */
final class LifeCells<S extends Enum<S>> implements Serializable {
    private static final long serialVersionUID = 1;

    private final EnumMap<S, HashMap<Lifetime, Long>> lives;
    private final EnumMap<LeftOut, Long> leftOut = new EnumMap<>(LeftOut.class);

    LifeCells(Class<S> states) {
        lives = new EnumMap<>(states);
    }

    void add(S state, Lifetime life) {
        add(state, life, 1);
    }

    private void add(S state, Lifetime life, long count) {
        lives.computeIfAbsent(state, s -> new HashMap<>()).merge(life, count, Long::sum);
    }

    void leaveOut(LeftOut why) {
        leftOut.merge(why, 1L, Long::sum);
    }

    void merge(LifeCells<S> other) {
        other.lives.forEach((state, cells) -> cells.forEach((life, count) -> add(state, life, count)));
        other.leftOut.forEach((why, count) -> leftOut.merge(why, count, Long::sum));
    }

    LifetimeSample sample(S state) {
        return sample(lives.getOrDefault(state, new HashMap<>()));
    }

    /** Lives of all states. */
    LifetimeSample sample() {
        Map<Lifetime, Long> all = new HashMap<>();
        lives.values().forEach(cells -> cells.forEach((life, count) -> all.merge(life, count, Long::sum)));
        return sample(all);
    }

    private static LifetimeSample sample(Map<Lifetime, Long> cells) {
        List<Lifetime> weighted = new ArrayList<>();
        cells.forEach((life, count) -> weighted.add(new Lifetime(life.entry(), life.lower(), life.upper(), count)));
        return LifetimeSample.of(weighted);
    }

    Map<LeftOut, Long> leftOut() {
        return new EnumMap<>(leftOut);
    }
}
