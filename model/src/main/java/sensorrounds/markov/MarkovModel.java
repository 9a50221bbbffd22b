package sensorrounds.markov;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * A Markov model in continuous time with values for its parameters: intensities, which covariates multiply (q(z) = q
 * exp(b'z), one b per move), and for hidden models an emission matrix and the law of the first true state. Moves and
 * errors with value 0 are not allowed and stay 0; all others are parameters. Immutable. Source: Jackson (2011), J. Stat.
 * Software 38(8), sections 1.2 to 1.6.
 *
 * <p>Parameters in order: log intensities by rows; effects, covariate by covariate, each by rows; then for each allowed
 * error (r, s), by rows, log(e(r, s) / e(r, r)).
 */
public final class MarkovModel implements Serializable {
    private static final long serialVersionUID = 1;

    /** A move that is allowed, or an error that is. */
    record Pair(int from, int to) implements Serializable {}

    private final IntensityMatrix intensities;
    private final double[][] effects;
    private final EmissionMatrix emission;
    private final double[] initial;
    private final List<Pair> moves;
    private final List<Pair> errors;

    private MarkovModel(IntensityMatrix intensities, double[][] effects, EmissionMatrix emission, double[] initial) {
        this.intensities = intensities;
        this.effects = effects;
        this.emission = emission;
        this.initial = initial;
        this.moves = pairs(intensities.rows());
        this.errors = emission == null ? List.of() : pairs(emission.rows());
    }

    private static List<Pair> pairs(double[][] rows) {
        List<Pair> all = new ArrayList<>();
        for (int r = 0; r < rows.length; r++) {
            for (int s = 0; s < rows.length; s++) {
                if (r != s && rows[r][s] > 0) {
                    all.add(new Pair(r, s));
                }
            }
        }
        return List.copyOf(all);
    }

    /**
     * States seen without error; the first sighting of a subject is taken as given.
     *
     * @throws IllegalArgumentException when no move is allowed
     */
    public static MarkovModel of(IntensityMatrix intensities) {
        MarkovModel model = new MarkovModel(intensities, new double[0][], null, null);
        if (model.moves.isEmpty()) {
            throw new IllegalArgumentException("no move is allowed: every intensity is 0; give those allowed a start");
        }
        return model;
    }

    /** States seen with error. Unless said otherwise the first true state is state 0; sightings of CERTAIN kind aside. */
    public MarkovModel with(EmissionMatrix newEmission) {
        if (newEmission.states() != states()) {
            throw new IllegalArgumentException("an emission matrix of " + newEmission.states()
                    + " states for a model of " + states() + "; they must be as many");
        }
        double[] first = new double[states()];
        first[0] = 1;
        return new MarkovModel(intensities, effects, newEmission, initial == null ? first : initial);
    }

    /** Law of the first true state, for first sightings with error; not estimated. */
    public MarkovModel withInitial(double... chances) {
        double sum = 0;
        for (double chance : chances) {
            sum += chance >= 0 ? chance : Double.NaN;
        }
        if (chances.length != states() || !(Math.abs(sum - 1) <= 1e-9)) {
            throw new IllegalArgumentException("chances of the first state: " + chances.length + " with sum " + sum
                    + "; expected one per state with sum 1");
        }
        return new MarkovModel(intensities, effects, emission, chances.clone());
    }

    /**
     * Effects on the log intensities.
     *
     * @param newEffects one row per covariate, with one entry per allowed move in the order of rows
     */
    public MarkovModel withEffects(double[][] newEffects) {
        double[][] copy = new double[newEffects.length][];
        for (int k = 0; k < copy.length; k++) {
            if (newEffects[k].length != moves.size()) {
                throw new IllegalArgumentException("covariate " + k + " has " + newEffects[k].length
                        + " effects, expected " + moves.size() + ": one per allowed move");
            }
            copy[k] = newEffects[k].clone();
        }
        return new MarkovModel(intensities, copy, emission, initial);
    }

    public int states() {
        return intensities.states();
    }

    public int covariates() {
        return effects.length;
    }

    /** Intensities where all covariates are 0. */
    public IntensityMatrix intensities() {
        return intensities;
    }

    /** Intensities at these values of the covariates. */
    public IntensityMatrix intensities(List<Double> covariates) {
        if (covariates.size() != effects.length) {
            throw new IllegalArgumentException(covariates.size() + " values for " + effects.length + " covariates");
        }
        double[][] rates = intensities.rows();
        for (int m = 0; m < moves.size(); m++) {
            double log = 0;
            for (int k = 0; k < effects.length; k++) {
                log += effects[k][m] * covariates.get(k);
            }
            rates[moves.get(m).from()][moves.get(m).to()] *= Math.exp(log);
        }
        return IntensityMatrix.of(rates);
    }

    /** Effect of a covariate on the log of an intensity. */
    public double effect(int covariate, int from, int to) {
        return effects[covariate][moves.indexOf(new Pair(from, to))];
    }

    /** What is seen given the truth; the identity for a model without errors. */
    public EmissionMatrix emission() {
        return emission == null ? EmissionMatrix.certain(states()) : emission;
    }

    /** Log-likelihood of these subjects at the values of this model; minus infinity when they cannot happen under it. */
    public double logLikelihood(List<Path> paths) {
        return new MarkovLikelihood(this, paths).at(point()).value();
    }

    /** Log-likelihood and its derivatives in the parameters, in the order given above. */
    public double[] score(List<Path> paths) {
        return new MarkovLikelihood(this, paths).at(point()).gradient();
    }

    boolean hidden() {
        return emission != null;
    }

    double initial(int state) {
        return initial[state];
    }

    List<Pair> moves() {
        return moves;
    }

    List<Pair> errors() {
        return errors;
    }

    int parameters() {
        return moves.size() * (1 + effects.length) + errors.size();
    }

    /** Index of the first error among the parameters. */
    int errorsFrom() {
        return moves.size() * (1 + effects.length);
    }

    double[] point() {
        double[] point = new double[parameters()];
        int i = 0;
        for (Pair move : moves) {
            point[i++] = Math.log(intensities.rate(move.from(), move.to()));
        }
        for (double[] effect : effects) {
            for (double b : effect) {
                point[i++] = b;
            }
        }
        for (Pair error : errors) {
            point[i++] =
                    Math.log(emission.chance(error.from(), error.to()) / emission.chance(error.from(), error.from()));
        }
        return point;
    }

    /** This model with the parameters set to the point; empty values stay empty. */
    MarkovModel at(double[] point) {
        double[][] rates = new double[states()][states()];
        int i = 0;
        for (Pair move : moves) {
            rates[move.from()][move.to()] = Math.exp(point[i++]);
        }
        double[][] newEffects = new double[effects.length][moves.size()];
        for (double[] effect : newEffects) {
            for (int m = 0; m < effect.length; m++) {
                effect[m] = point[i++];
            }
        }
        return new MarkovModel(
                IntensityMatrix.of(rates), newEffects, emission == null ? null : emissionAt(point, i), initial);
    }

    private EmissionMatrix emissionAt(double[] point, int from) {
        double[][] e = SmallMatrix.identity(states());
        int i = from;
        for (Pair error : errors) {
            e[error.from()][error.to()] = Math.exp(point[i++]);
        }
        for (double[] row : e) {
            double sum = 0;
            for (double odds : row) {
                sum += odds;
            }
            for (int s = 0; s < row.length; s++) {
                row[s] /= sum;
            }
        }
        return EmissionMatrix.of(e);
    }
}
