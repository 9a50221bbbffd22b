package sensorrounds.causes;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import sensorrounds.survival.LifetimeSample;

/**
 * Lives whose cause of failure may be unknown, equal ones merged into weights. The causes have a declared order; the order of
 * the lives matters only to the last bits. Immutable.
 *
 * @param <C> type of the causes
 */
public final class MaskedSample<C> {
    private final List<C> causes;
    private final List<MaskedLife<C>> lives;

    private MaskedSample(List<C> causes, List<MaskedLife<C>> lives) {
        this.causes = causes;
        this.lives = lives;
    }

    private record Key<C>(double entry, double lower, double upper, Set<C> candidates) {}

    /**
     * @param causes every cause that can occur, each once
     * @throws IllegalArgumentException if a life may have failed by a cause that is not declared
     */
    public static <C> MaskedSample<C> of(List<C> causes, Collection<MaskedLife<C>> lives) {
        if (causes.isEmpty() || causes.stream().distinct().count() < causes.size()) {
            throw new IllegalArgumentException("competing causes need a list of them, each once, not " + causes);
        }
        Map<Key<C>, Double> merged = new LinkedHashMap<>();
        for (MaskedLife<C> life : lives) {
            if (!causes.containsAll(life.candidates())) {
                throw new IllegalArgumentException(
                        "a life failed in (" + life.lower() + ", " + life.upper() + "] by one of " + life.candidates()
                                + ", not all of them among the causes " + causes + "; declare them");
            }
            merged.merge(
                    new Key<>(life.entry(), life.lower(), life.upper(), life.candidates()), life.weight(), Double::sum);
        }
        return new MaskedSample<>(
                List.copyOf(causes),
                merged.entrySet().stream()
                        .map(e -> new MaskedLife<>(
                                e.getKey().entry(),
                                e.getKey().lower(),
                                e.getKey().upper(),
                                e.getKey().candidates(),
                                e.getValue()))
                        .toList());
    }

    /** In the declared order. */
    public List<C> causes() {
        return causes;
    }

    /** Distinct lives with their weights. */
    public List<MaskedLife<C>> lives() {
        return lives;
    }

    /** Weight of all lives. */
    public double total() {
        return sum(life -> life.weight());
    }

    /** Weight of failures, of whatever cause. */
    public double failures() {
        return sum(life -> life.failed() ? life.weight() : 0);
    }

    /** Weight of failures known to be by this cause. */
    public double known(C cause) {
        Set<C> only = Set.of(cause);
        return sum(life -> life.candidates().equals(only) ? life.weight() : 0);
    }

    /** Weight of failures with more than one possible cause. */
    public double masked() {
        return sum(life -> life.candidates().size() > 1 ? life.weight() : 0);
    }

    private double sum(ToDoubleFunction<MaskedLife<C>> part) {
        return lives.stream().mapToDouble(part).sum();
    }

    /** Highest age anything is known about. */
    public double lastAge() {
        return lives.stream()
                .mapToDouble(life -> life.failed() ? life.upper() : life.lower())
                .max()
                .orElse(0);
    }

    /** The lives without their causes. */
    public LifetimeSample allCauses() {
        return LifetimeSample.of(
                column(MaskedLife::entry),
                column(MaskedLife::lower),
                column(MaskedLife::upper),
                column(MaskedLife::weight));
    }

    private double[] column(ToDoubleFunction<MaskedLife<C>> part) {
        return lives.stream().mapToDouble(part).toArray();
    }

    /**
     * The sample with every masked failure that this cause is possible for given to it: the worst case for the cause, where
     * one doubts that causes go unknown by chance. The best case gives them to the others.
     */
    public MaskedSample<C> givingMaskedTo(C cause) {
        return of(
                causes,
                lives.stream()
                        .map(life -> life.candidates().contains(cause)
                                ? new MaskedLife<>(
                                        life.entry(), life.lower(), life.upper(), Set.of(cause), life.weight())
                                : life)
                        .toList());
    }
}
