package sensorrounds.causes;

import java.util.Arrays;
import java.util.List;

/** The hazards of all causes together, and where the parameters of each begin. */
final class CauseModel {
    private final List<CauseHazard> hazards;
    private final double[] edges;
    private final int[] offset;
    private final int parameters;

    /** @param edges ages at which hazards may jump */
    CauseModel(List<CauseHazard> hazards, double[] edges) {
        this.hazards = List.copyOf(hazards);
        this.edges = edges;
        offset = new int[hazards.size()];
        int count = 0;
        for (int k = 0; k < offset.length; k++) {
            offset[k] = count;
            count += hazards.get(k).parameters();
        }
        parameters = count;
    }

    int causes() {
        return offset.length;
    }

    int parameters() {
        return parameters;
    }

    int offset(int cause) {
        return offset[cause];
    }

    int parametersOf(int cause) {
        return hazards.get(cause).parameters();
    }

    boolean weibull(int cause) {
        return hazards.get(cause) instanceof CauseHazard.Weibull;
    }

    AgeNodes nodes(double from, double to) {
        return AgeNodes.between(from, to, edges);
    }

    /** Room for {@link #fill}. */
    State state() {
        return new State();
    }

    /** Hazards and cumulative hazards at one age. */
    final class State {
        private final CauseHazard.Jet[] jets = new CauseHazard.Jet[offset.length];
        double cumulative;
        final double[] slope = new double[parameters];

        private State() {
            for (int k = 0; k < jets.length; k++) {
                jets[k] = new CauseHazard.Jet(hazards.get(k).parameters());
            }
        }

        void fill(double age, double[] point) {
            cumulative = 0;
            for (int k = 0; k < jets.length; k++) {
                hazards.get(k).at(age, point, offset[k], jets[k]);
                cumulative += jets[k].cumulative;
                System.arraycopy(jets[k].cumulativeSlope, 0, slope, offset[k], jets[k].cumulativeSlope.length);
            }
        }

        CauseHazard.Jet of(int cause) {
            return jets[cause];
        }

        /** Sum of the hazards of these causes. */
        double hazard(int[] causes) {
            double sum = 0;
            for (int k : causes) {
                sum += jets[k].hazard;
            }
            return sum;
        }

        /** Derivatives of {@link #hazard}; 0 for the parameters of other causes. */
        void hazardSlope(int[] causes, double[] into) {
            Arrays.fill(into, 0);
            for (int k : causes) {
                System.arraycopy(jets[k].hazardSlope, 0, into, offset[k], jets[k].hazardSlope.length);
            }
        }

        /** Adds a factor times the second derivatives of the cumulative hazard. */
        void addCumulativeCurve(double factor, double[][] into) {
            for (int k = 0; k < jets.length; k++) {
                add(factor, jets[k].cumulativeCurve, offset[k], into);
            }
        }

        /** Adds a factor times the second derivatives of {@link #hazard}. */
        void addHazardCurve(double factor, int[] causes, double[][] into) {
            for (int k : causes) {
                add(factor, jets[k].hazardCurve, offset[k], into);
            }
        }

        private static void add(double factor, double[][] block, int at, double[][] into) {
            for (int i = 0; i < block.length; i++) {
                for (int j = 0; j < block.length; j++) {
                    into[at + i][at + j] += factor * block[i][j];
                }
            }
        }
    }
}
