package sensorrounds.causes;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import sensorrounds.survival.StepCurve;

/**
 * Share of units in each state by age, for any states that units pass through (good, weak, failed), all starting in the
 * first one: the product integral of the transition hazards, with delayed entry. It does not need the process to be a
 * Markov one (Datta and Satten 2001, Stat. Prob. Lett. 55:403-411), given independent censoring. Errors are the jackknife by
 * unit in the infinitesimal: how each share moves when a unit's weight does. Sources: Aalen and Johansen (1978), Scand. J. Stat. 5:141-150;
 * jackknife: Efron (1982), The Jackknife, the Bootstrap and Other Resampling Plans, ch. 6. The cost grows with units times
 * ages with transitions: an analyst's tool for thousands of units, not for millions.
 *
 * @param <S> type of the states
 */
public final class StateOccupation<S> {
    private final List<S> states;
    private final double[] ages;
    private final double[][] shares;
    private final double[][] errors;
    private final double to;

    private StateOccupation(List<S> states, double[] ages, double[][] shares, double[][] errors, double to) {
        this.states = states;
        this.ages = ages;
        this.shares = shares;
        this.errors = errors;
        this.to = to;
    }

    /**
     * The estimate.
     *
     * @param states every state, each once; all units start in the first
     * @throws IllegalArgumentException if a stay names another state, or two stays of a unit overlap
     */
    public static <S> StateOccupation<S> of(List<S> states, Collection<Stay<S>> stays) {
        List<Stay<S>> sorted = checked(states, stays);
        TreeMap<Long, Integer> units = new TreeMap<>();
        sorted.forEach(stay -> units.computeIfAbsent(stay.unit(), u -> units.size()));
        double[] ages = sorted.stream()
                .filter(stay -> stay.next() != null)
                .mapToDouble(Stay::exit)
                .sorted()
                .distinct()
                .toArray();
        int k = states.size();
        double[] share = new double[k];
        share[0] = 1;
        double[][] influence = new double[units.size()][k];
        double[][] shares = new double[ages.length][];
        double[][] errors = new double[ages.length][k];
        for (int a = 0; a < ages.length; a++) {
            double age = ages[a];
            List<Stay<S>> atRisk = sorted.stream()
                    .filter(stay -> stay.entry() < age && age <= stay.exit())
                    .toList();
            Moves moves = Moves.at(age, states, atRisk);
            for (double[] row : influence) {
                System.arraycopy(moves.applied(row), 0, row, 0, k);
            }
            for (Stay<S> stay : atRisk) {
                moves.addInfluence(
                        influence[units.get(stay.unit())],
                        share,
                        states.indexOf(stay.state()),
                        stay.exit() == age && stay.next() != null ? states.indexOf(stay.next()) : -1);
            }
            share = moves.applied(share);
            shares[a] = share;
            for (int j = 0; j < k; j++) {
                double sum = 0;
                for (double[] row : influence) {
                    sum += row[j] * row[j];
                }
                errors[a][j] = Math.sqrt(sum);
            }
        }
        double to = sorted.stream().mapToDouble(Stay::exit).max().orElse(0);
        return new StateOccupation<>(List.copyOf(states), ages, shares, errors, to);
    }

    private static <S> List<Stay<S>> checked(List<S> states, Collection<Stay<S>> stays) {
        List<Stay<S>> sorted = new ArrayList<>(stays);
        sorted.sort(Comparator.comparingLong(Stay<S>::unit).thenComparingDouble(Stay::entry));
        for (int i = 0; i < sorted.size(); i++) {
            Stay<S> stay = sorted.get(i);
            if (!states.contains(stay.state()) || !(stay.next() == null || states.contains(stay.next()))) {
                throw new IllegalArgumentException(stay + " names a state that is not among " + states);
            }
            if (i > 0
                    && sorted.get(i - 1).unit() == stay.unit()
                    && sorted.get(i - 1).exit() > stay.entry()) {
                throw new IllegalArgumentException(
                        "a unit is in one state at a time: " + sorted.get(i - 1) + " overlaps " + stay);
            }
        }
        return sorted;
    }

    /** Transitions at one age: hazards from each state to each other, and the weight at risk in each. */
    private record Moves(double[][] hazard, double[] atRisk) {
        static <S> Moves at(double age, List<S> states, List<Stay<S>> stays) {
            int k = states.size();
            double[] atRisk = new double[k];
            double[][] hazard = new double[k][k];
            for (Stay<S> stay : stays) {
                int from = states.indexOf(stay.state());
                atRisk[from]++;
                if (stay.exit() == age && stay.next() != null) {
                    hazard[from][states.indexOf(stay.next())]++;
                }
            }
            for (int i = 0; i < k; i++) {
                for (int j = 0; j < k && atRisk[i] > 0; j++) {
                    hazard[i][j] /= atRisk[i];
                }
            }
            return new Moves(hazard, atRisk);
        }

        double[] applied(double[] row) {
            double[] moved = row.clone();
            for (int i = 0; i < row.length; i++) {
                for (int j = 0; j < row.length; j++) {
                    moved[i] -= row[i] * hazard[i][j];
                    moved[j] += row[i] * hazard[i][j];
                }
            }
            return moved;
        }

        /** A unit more in this state raises the hazards by what it did less what was expected of it. */
        void addInfluence(double[] row, double[] share, int from, int next) {
            for (int j = 0; j < row.length; j++) {
                double surplus = ((j == next ? 1 : 0) - hazard[from][j]) * share[from] / atRisk[from];
                row[j] += surplus;
                row[from] -= surplus;
            }
        }
    }

    /** Share in this state by age. */
    public StepCurve of(S state) {
        return curve(state, shares, states.indexOf(state) == 0 ? 1 : 0);
    }

    /** Standard error of {@link #of}. */
    public StepCurve errorOf(S state) {
        return curve(state, errors, 0);
    }

    /** Mean time spent in this state within the first ages up to tau. */
    public double meanTime(S state, double tau) {
        return of(state).areaTo(tau);
    }

    private StepCurve curve(S state, double[][] values, double start) {
        int k = states.indexOf(state);
        if (k < 0) {
            throw new IllegalArgumentException(state + " is not among the states " + states);
        }
        return new StepCurve(
                0,
                to,
                start,
                ages,
                Arrays.stream(values).mapToDouble(row -> row[k]).toArray());
    }
}
