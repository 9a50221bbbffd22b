package sensorrounds.condition;

import sensorrounds.markov.MatrixExponential;

/**
 * Chances of moving between conditions within one piece of age and season, where the rates stand still, over any whole
 * number of days, with their derivatives in the log rates: {@link #ROW} entries a day. Conditions are good, early weak,
 * late weak and dead; with one stage of weakness nothing is ever early.
 *
 * <p>The first day comes from the exponential of the rates, its derivatives from that of [[Q, dQ], [0, Q]] (Van Loan 1978,
 * IEEE Trans. Autom. Control 23:395); each day after from the one before, P(t + 1) = P(t) P(1), which adds nothing but
 * positive terms.
 *
 * <p>A death that its driver will report is still unreported a time u after it with chance exp(-k u). U(t), the chance of
 * having died within t and not being reported by then, is summed day by day, deaths of a day put in its middle: U(t + 1) =
 * exp(-k) U(t) + exp(-k / 2) (D(t + 1) - D(t)), D the chance of being dead. That is off by k^2 / 24 of itself at most, 5e-5
 * at a mean of 30 days.
 */
final class HiddenRows {
    static final int GG = 0;
    /** Good to early weak, good to late weak, early to late. */
    static final int GE = 1;

    static final int GL = 2;
    static final int EL = 3;
    /** Still in the same stage of weakness. */
    static final int WW = 4;
    /** Died from good, early or late weak, and not yet reported though it will be. */
    static final int GU = 5;

    static final int EU = 6;
    static final int LU = 7;
    /** Derivatives in the log rates of weakening, of dying when weak, of sudden death and of reports. */
    static final int GG_WEAKENING = 8;

    static final int GG_SUDDEN = 9;
    static final int GE_WEAKENING = 10;
    static final int GE_DYING = 11;
    static final int GE_SUDDEN = 12;
    static final int GL_WEAKENING = 13;
    static final int GL_DYING = 14;
    static final int GL_SUDDEN = 15;
    static final int EL_DYING = 16;
    static final int WW_DYING = 17;
    static final int GU_WEAKENING = 18;
    static final int GU_DYING = 19;
    static final int GU_SUDDEN = 20;
    static final int GU_REPORTING = 21;
    static final int EU_DYING = 22;
    static final int EU_REPORTING = 23;
    static final int LU_DYING = 24;
    static final int LU_REPORTING = 25;

    static final int ROW = 26;

    private static final int GOOD = 0;
    private static final int EARLY = 1;
    private static final int LATE = 2;
    private static final int STATES = 3;

    private final double weakening;
    private final double sudden;
    private final double stage;
    private final double reporting;
    private final double[] table;
    private final double[][] day;
    private final double[][] byWeakening;
    private final double[][] byDying;
    private final double[][] bySudden;

    /** Rates per day; {@code dying} is one over the mean days a sensor is weak. */
    private HiddenRows(WeakStages stages, double weakening, double dying, double sudden, double reporting, int days) {
        this.weakening = weakening;
        this.sudden = sudden;
        this.stage = stages.number() * dying;
        this.reporting = reporting;
        table = new double[ROW * (days + 1)];
        int first = stages == WeakStages.TWO ? EARLY : LATE;
        double[][] ofWeakening = new double[STATES][STATES];
        ofWeakening[GOOD][GOOD] = -weakening;
        ofWeakening[GOOD][first] = weakening;
        double[][] ofDying = new double[STATES][STATES];
        ofDying[EARLY][EARLY] = -stage;
        ofDying[EARLY][LATE] = stages == WeakStages.TWO ? stage : 0;
        ofDying[LATE][LATE] = -stage;
        double[][] ofSudden = new double[STATES][STATES];
        ofSudden[GOOD][GOOD] = -sudden;
        double[][] rates = new double[STATES][STATES];
        for (int i = 0; i < STATES; i++) {
            for (int j = 0; j < STATES; j++) {
                rates[i][j] = ofWeakening[i][j] + ofDying[i][j] + ofSudden[i][j];
            }
        }
        byWeakening = derivative(rates, ofWeakening);
        byDying = derivative(rates, ofDying);
        bySudden = derivative(rates, ofSudden);
        day = MatrixExponential.of(rates);
    }

    /** The table of one piece. */
    static double[] of(WeakStages stages, double weakening, double dying, double sudden, double reporting, int days) {
        HiddenRows rows = new HiddenRows(stages, weakening, dying, sudden, reporting, days);
        rows.fill();
        return rows.table;
    }

    private static double[][] derivative(double[][] rates, double[][] direction) {
        double[][] block = new double[2 * STATES][2 * STATES];
        for (int i = 0; i < STATES; i++) {
            System.arraycopy(rates[i], 0, block[i], 0, STATES);
            System.arraycopy(direction[i], 0, block[i], STATES, STATES);
            System.arraycopy(rates[i], 0, block[STATES + i], STATES, STATES);
        }
        double[][] both = MatrixExponential.of(block);
        double[][] result = new double[STATES][STATES];
        for (int i = 0; i < STATES; i++) {
            System.arraycopy(both[i], STATES, result[i], 0, STATES);
        }
        return result;
    }

    private void fill() {
        table[GG] = 1;
        table[WW] = 1;
        double stays = Math.exp(-reporting);
        double half = Math.exp(-reporting / 2);
        for (int i = ROW; i < table.length; i += ROW) {
            move(i - ROW, i, i / ROW);
            addUnreported(i - ROW, i, stays, half);
        }
    }

    private void move(int b, int i, int days) {
        double[] t = table;
        double gg = day[GOOD][GOOD];
        double ge = day[GOOD][EARLY];
        double gl = day[GOOD][LATE];
        double el = day[EARLY][LATE];
        double ww = day[LATE][LATE];
        t[i + GG] = t[b + GG] * gg;
        t[i + GE] = t[b + GG] * ge + t[b + GE] * ww;
        t[i + GL] = t[b + GG] * gl + t[b + GE] * el + t[b + GL] * ww;
        t[i + EL] = t[b + WW] * el + t[b + EL] * ww;
        t[i + WW] = t[b + WW] * ww;
        t[i + GG_WEAKENING] = -weakening * days * t[i + GG];
        t[i + GG_SUDDEN] = -sudden * days * t[i + GG];
        t[i + WW_DYING] = -stage * days * t[i + WW];
        t[i + EL_DYING] = t[b + WW_DYING] * el
                + t[b + WW] * byDying[EARLY][LATE]
                + t[b + EL_DYING] * ww
                + t[b + EL] * byDying[LATE][LATE];
        t[i + GE_WEAKENING] =
                t[b + GG_WEAKENING] * ge + t[b + GG] * byWeakening[GOOD][EARLY] + t[b + GE_WEAKENING] * ww;
        t[i + GE_SUDDEN] = t[b + GG_SUDDEN] * ge + t[b + GG] * bySudden[GOOD][EARLY] + t[b + GE_SUDDEN] * ww;
        t[i + GE_DYING] = t[b + GG] * byDying[GOOD][EARLY] + t[b + GE_DYING] * ww + t[b + GE] * byDying[EARLY][EARLY];
        t[i + GL_WEAKENING] = t[b + GG_WEAKENING] * gl
                + t[b + GG] * byWeakening[GOOD][LATE]
                + t[b + GE_WEAKENING] * el
                + t[b + GL_WEAKENING] * ww;
        t[i + GL_SUDDEN] = t[b + GG_SUDDEN] * gl
                + t[b + GG] * bySudden[GOOD][LATE]
                + t[b + GE_SUDDEN] * el
                + t[b + GL_SUDDEN] * ww;
        t[i + GL_DYING] = t[b + GG] * byDying[GOOD][LATE]
                + t[b + GE_DYING] * el
                + t[b + GE] * byDying[EARLY][LATE]
                + t[b + GL_DYING] * ww
                + t[b + GL] * byDying[LATE][LATE];
    }

    private void addUnreported(int b, int i, double stays, double half) {
        double[] t = table;
        double good = alive(b, GG, GE, GL) - alive(i, GG, GE, GL);
        double early = t[b + WW] + t[b + EL] - t[i + WW] - t[i + EL];
        double late = t[b + WW] - t[i + WW];
        t[i + GU] = stays * t[b + GU] + half * good;
        t[i + EU] = stays * t[b + EU] + half * early;
        t[i + LU] = stays * t[b + LU] + half * late;
        t[i + GU_WEAKENING] = stays * t[b + GU_WEAKENING]
                + half
                        * (alive(b, GG_WEAKENING, GE_WEAKENING, GL_WEAKENING)
                                - alive(i, GG_WEAKENING, GE_WEAKENING, GL_WEAKENING));
        t[i + GU_SUDDEN] = stays * t[b + GU_SUDDEN]
                + half * (alive(b, GG_SUDDEN, GE_SUDDEN, GL_SUDDEN) - alive(i, GG_SUDDEN, GE_SUDDEN, GL_SUDDEN));
        t[i + GU_DYING] = stays * t[b + GU_DYING]
                + half * (t[b + GE_DYING] + t[b + GL_DYING] - t[i + GE_DYING] - t[i + GL_DYING]);
        t[i + EU_DYING] = stays * t[b + EU_DYING]
                + half * (t[b + WW_DYING] + t[b + EL_DYING] - t[i + WW_DYING] - t[i + EL_DYING]);
        t[i + LU_DYING] = stays * t[b + LU_DYING] + half * (t[b + WW_DYING] - t[i + WW_DYING]);
        t[i + GU_REPORTING] = stays * (t[b + GU_REPORTING] - reporting * t[b + GU]) - half * reporting / 2 * good;
        t[i + EU_REPORTING] = stays * (t[b + EU_REPORTING] - reporting * t[b + EU]) - half * reporting / 2 * early;
        t[i + LU_REPORTING] = stays * (t[b + LU_REPORTING] - reporting * t[b + LU]) - half * reporting / 2 * late;
    }

    private double alive(int i, int good, int early, int late) {
        return table[i + good] + table[i + early] + table[i + late];
    }
}
