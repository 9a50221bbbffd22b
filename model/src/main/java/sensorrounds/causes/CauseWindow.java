package sensorrounds.causes;

import java.util.Arrays;

/**
 * Share of those alive at one age that fail by one of some causes over a stretch from there on: the integral of the sum of their
 * hazards times survival since that age, with its derivatives.
 */
final class CauseWindow {
    private final CauseModel.State there;
    private final double[] hazardSlope;
    private final double[] passed;
    private final double[] gradient;
    private final double[][] hessian;
    private double value;

    CauseWindow(CauseModel model) {
        int p = model.parameters();
        there = model.state();
        hazardSlope = new double[p];
        passed = new double[p];
        gradient = new double[p];
        hessian = new double[p][p];
    }

    double value() {
        return value;
    }

    double[] gradient() {
        return gradient;
    }

    double[][] hessian() {
        return hessian;
    }

    /** @param from state at the age the stretch begins at */
    void integrate(AgeNodes at, CauseModel.State from, int[] causes, double[] point) {
        int p = gradient.length;
        value = 0;
        Arrays.fill(gradient, 0);
        for (double[] row : hessian) {
            Arrays.fill(row, 0);
        }
        for (int n = 0; n < at.ages().length; n++) {
            there.fill(at.ages()[n], point);
            double f = at.weights()[n] * Math.exp(from.cumulative - there.cumulative);
            double g = there.hazard(causes);
            there.hazardSlope(causes, hazardSlope);
            value += f * g;
            for (int a = 0; a < p; a++) {
                passed[a] = there.slope[a] - from.slope[a];
                gradient[a] += f * (hazardSlope[a] - g * passed[a]);
            }
            there.addHazardCurve(f, causes, hessian);
            there.addCumulativeCurve(-f * g, hessian);
            from.addCumulativeCurve(f * g, hessian);
            for (int a = 0; a < p; a++) {
                for (int b = 0; b < p; b++) {
                    hessian[a][b] +=
                            f * (g * passed[a] * passed[b] - hazardSlope[a] * passed[b] - passed[a] * hazardSlope[b]);
                }
            }
        }
    }
}
