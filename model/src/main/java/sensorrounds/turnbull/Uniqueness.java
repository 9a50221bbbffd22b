package sensorrounds.turnbull;

/**
 * Whether the masses are the only ones that maximise the likelihood. Where inside an innermost interval a mass sits is
 * never determined and is not meant here.
 */
public enum Uniqueness {
    UNIQUE,
    /** Other masses fit equally well; the chances that the lives determine are the same under all of them. */
    NOT_UNIQUE,
    /** An interval at the very edge of carrying mass leaves the question open. */
    NOT_PROVEN;

    /** Slack relative to the weight known to have outlived an interval, below which it counts as being at the edge. */
    private static final double EDGE = 1e-6;

    /**
     * Each group of lives ties the cumulative hazard at the two ends of its range together, each interval that must stay
     * empty those at its own ends. What the lives say about those differences is unique, since the likelihood is
     * strictly concave in them; so the hazards are unique when the ties connect all ends. Vardi (1985), Ann. Stat.
     * 13:178-203, and Gentleman and Geyer (1994), Biometrika 81:618-623, give such conditions; this form follows from
     * the incidence matrix of a graph having the rank of its vertices less its components.
     */
    static Uniqueness of(HazardProblem problem, double[] hazard) {
        double[] pull = problem.pull(problem.reach(hazard));
        int m = problem.size();
        Ties ifEdgesMayMove = new Ties(m + 1);
        Ties ifEdgesStayEmpty = new Ties(m + 1);
        for (int k = 0; k < m; k++) {
            if (!(hazard[k] > 0)) {
                ifEdgesStayEmpty.join(k, k + 1);
                if (problem.outlived(k) - pull[k] > EDGE * problem.outlived(k)) {
                    ifEdgesMayMove.join(k, k + 1);
                }
            }
        }
        for (int g = 0; g < problem.groups(); g++) {
            ifEdgesMayMove.join(problem.from(g), problem.end(g));
            ifEdgesStayEmpty.join(problem.from(g), problem.end(g));
        }
        if (ifEdgesMayMove.components == 1) {
            return UNIQUE;
        }
        return ifEdgesStayEmpty.components == 1 ? NOT_PROVEN : NOT_UNIQUE;
    }

    /** Disjoint sets with path halving. */
    private static final class Ties {
        private final int[] parent;
        private int components;

        Ties(int n) {
            components = n;
            parent = new int[n];
            for (int i = 0; i < n; i++) {
                parent[i] = i;
            }
        }

        private int root(int i) {
            int at = i;
            while (parent[at] != at) {
                parent[at] = parent[parent[at]];
                at = parent[at];
            }
            return at;
        }

        void join(int i, int j) {
            int a = root(i);
            int b = root(j);
            if (a != b) {
                parent[Math.max(a, b)] = Math.min(a, b);
                components--;
            }
        }
    }
}
