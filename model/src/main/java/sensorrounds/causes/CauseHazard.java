package sensorrounds.causes;

import java.util.Arrays;

/** Hazard of one cause as a function of its parameters, with first and second derivatives. */
interface CauseHazard {
    int parameters();

    /** Writes hazard and cumulative hazard at an age, from the parameters beginning at {@code offset}. */
    void at(double age, double[] point, int offset, Jet out);

    /** Values at one age. Second derivatives within the cause only: causes share no parameter. */
    final class Jet {
        double hazard;
        double cumulative;
        final double[] hazardSlope;
        final double[] cumulativeSlope;
        final double[][] hazardCurve;
        final double[][] cumulativeCurve;

        Jet(int parameters) {
            hazardSlope = new double[parameters];
            cumulativeSlope = new double[parameters];
            hazardCurve = new double[parameters][parameters];
            cumulativeCurve = new double[parameters][parameters];
        }
    }

    /** No failure was and none could be of this cause. */
    final class None implements CauseHazard {
        @Override
        public int parameters() {
            return 0;
        }

        @Override
        public void at(double age, double[] point, int offset, Jet out) {
            // The hazard stays 0.
        }
    }

    /**
     * H(t) = (t / s)^k by log s less a centre and log k. With z = k log(t / s) all derivatives follow from dz = (-k, z) and
     * d2z = (0, -k, z), as for a single law (LifeLikelihood).
     */
    final class Weibull implements CauseHazard {
        private final double centre;

        Weibull(double centre) {
            this.centre = centre;
        }

        @Override
        public int parameters() {
            return 2;
        }

        @Override
        public void at(double age, double[] point, int offset, Jet out) {
            if (!(age > 0)) {
                out.hazard = 0;
                out.cumulative = 0;
                Arrays.fill(out.hazardSlope, 0);
                Arrays.fill(out.cumulativeSlope, 0);
                for (int i = 0; i < 2; i++) {
                    Arrays.fill(out.hazardCurve[i], 0);
                    Arrays.fill(out.cumulativeCurve[i], 0);
                }
                return;
            }
            double k = Math.exp(point[offset + 1]);
            double z = k * (Math.log(age) - centre - point[offset]);
            double cumulative = Math.exp(z);
            out.cumulative = cumulative;
            out.cumulativeSlope[0] = -k * cumulative;
            out.cumulativeSlope[1] = z * cumulative;
            out.cumulativeCurve[0][0] = k * k * cumulative;
            out.cumulativeCurve[0][1] = -k * (1 + z) * cumulative;
            out.cumulativeCurve[1][0] = out.cumulativeCurve[0][1];
            out.cumulativeCurve[1][1] = z * (1 + z) * cumulative;
            double h = k / age * cumulative;
            // log h = log k + z - log t.
            double a = -k;
            double b = 1 + z;
            out.hazard = h;
            out.hazardSlope[0] = h * a;
            out.hazardSlope[1] = h * b;
            out.hazardCurve[0][0] = h * a * a;
            out.hazardCurve[0][1] = h * (a * b - k);
            out.hazardCurve[1][0] = out.hazardCurve[0][1];
            out.hazardCurve[1][1] = h * (b * b + z);
        }
    }

    /** Constant within bands of age, by log rates; a rate of 0 has the parameter minus infinity and no derivative. */
    final class Bands implements CauseHazard {
        private final double[] edges;

        /** @param edges from 0 to infinity */
        Bands(double[] edges) {
            this.edges = edges;
        }

        @Override
        public int parameters() {
            return edges.length - 1;
        }

        @Override
        public void at(double age, double[] point, int offset, Jet out) {
            out.cumulative = 0;
            for (int j = 0; j < edges.length - 1; j++) {
                double rate = Math.exp(point[offset + j]);
                double part = rate * Math.max(0, Math.min(edges[j + 1], age) - edges[j]);
                boolean here = age > edges[j] && age <= edges[j + 1];
                out.cumulative += part;
                out.cumulativeSlope[j] = part;
                out.cumulativeCurve[j][j] = part;
                out.hazardSlope[j] = here ? rate : 0;
                out.hazardCurve[j][j] = here ? rate : 0;
                out.hazard = here ? rate : out.hazard;
            }
        }
    }
}
