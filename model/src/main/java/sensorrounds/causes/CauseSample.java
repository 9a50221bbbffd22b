package sensorrounds.causes;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import sensorrounds.survival.LifetimeSample;

/**
 * Lives that end by one of several causes, or are last seen alive. The causes have a declared order, and lives are kept
 * by age and cause, so that the order of the input never matters. Immutable.
 *
 * @param <C> type of the causes
 */
public final class CauseSample<C> {
    private final List<C> causes;
    private final List<EndedLife<C>> lives;

    private CauseSample(List<C> causes, List<EndedLife<C>> lives) {
        this.causes = causes;
        this.lives = lives;
    }

    /**
     * The sample of these lives.
     *
     * @param causes every cause that can occur, each once; a cause without lives is allowed and has incidence 0
     * @throws IllegalArgumentException if a life ended by a cause that is not declared
     */
    public static <C> CauseSample<C> of(List<C> causes, Collection<EndedLife<C>> lives) {
        if (causes.isEmpty() || causes.stream().distinct().count() < causes.size()) {
            throw new IllegalArgumentException("competing causes need a list of them, each once, not " + causes);
        }
        for (EndedLife<C> life : lives) {
            if (life.cause() != null && !causes.contains(life.cause())) {
                throw new IllegalArgumentException("a life ended at " + life.exit() + " by " + life.cause()
                        + ", which is not among the causes " + causes + "; declare it");
            }
        }
        List<EndedLife<C>> sorted = new ArrayList<>(lives);
        sorted.sort(Comparator.comparingDouble(EndedLife<C>::exit)
                .thenComparingDouble(EndedLife::entry)
                .thenComparingInt(life -> life.cause() == null ? -1 : causes.indexOf(life.cause()))
                .thenComparingDouble(EndedLife::weight));
        return new CauseSample<>(List.copyOf(causes), List.copyOf(sorted));
    }

    /** In the declared order. */
    public List<C> causes() {
        return causes;
    }

    /** By rising age at exit. */
    public List<EndedLife<C>> lives() {
        return lives;
    }

    /** Weight of lives that ended by this cause. */
    public double ends(C cause) {
        return lives.stream()
                .filter(life -> cause.equals(life.cause()))
                .mapToDouble(EndedLife::weight)
                .sum();
    }

    /** Weight of lives that ended by any cause. */
    public double ends() {
        return lives.stream()
                .filter(life -> life.cause() != null)
                .mapToDouble(EndedLife::weight)
                .sum();
    }

    /** Whether any life came under observation later than at age 0. */
    public boolean delayedEntry() {
        return lives.stream().anyMatch(life -> life.entry() > 0);
    }

    /**
     * The sample as a survival curve takes it: ends by these causes are failures, all other ends censor. One less such a
     * curve is not the share that ends by the cause: it tells what would happen if the other causes did not exist and
     * had nothing to do with it.
     */
    public LifetimeSample failing(Predicate<C> failure) {
        int n = lives.size();
        double[] entry = new double[n];
        double[] exit = new double[n];
        double[] upper = new double[n];
        double[] weight = new double[n];
        for (int i = 0; i < n; i++) {
            EndedLife<C> life = lives.get(i);
            entry[i] = life.entry();
            exit[i] = life.exit();
            upper[i] = life.cause() != null && failure.test(life.cause()) ? life.exit() : Double.POSITIVE_INFINITY;
            weight[i] = life.weight();
        }
        return LifetimeSample.of(entry, exit, upper, weight);
    }
}
