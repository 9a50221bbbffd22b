package sensorrounds.condition;

/**
 * Everything that depends on the parameters alone, computed once per point: chances and their derivatives over any whole
 * number of days within each piece of age of each cohort, chances of what a visit shows, and the condition at the start of
 * each piece of a sensor that was good at age 0.
 *
 * <p>With rates l (good to weak), d (good to dead), m (weak to dead) and a = l + d, over a time t: P(good, good) =
 * exp(-a t), P(weak, weak) = exp(-m t), P(good, weak) = l I, I = integral over s from 0 to t of exp(-a s - m (t - s)) =
 * t exp(-lo t) (1 - exp(-y)) / y, with lo and hi the smaller and larger of a and m and y = (hi - lo) t (Cox and Miller
 * 1965, ch. 4; the form in y loses no figures where a and m come close).
 *
 * <p>A death that its driver will report is still unreported a time u after it with chance exp(-k u). U(t), the chance of
 * having died within t and not being reported by then, is summed day by day, deaths of a day put in its middle: U(t + 1) =
 * exp(-k) U(t) + exp(-k / 2) (D(t + 1) - D(t)), D the chance of being dead. That is off by k^2 / 24 of itself at most, 5e-5
 * at a mean of 30 days.
 */
final class HiddenTables {
    /** Entries per day: the chances, then their derivatives in the log rates. */
    static final int ROW = 17;

    static final int GG = 0;
    static final int GW = 1;
    static final int WW = 2;
    /** Died from good, or from weak, and not yet reported though it will be. */
    static final int GU = 3;

    static final int WU = 4;
    static final int GG_WEAKENING = 5;
    static final int GG_SUDDEN = 6;
    static final int GW_WEAKENING = 7;
    static final int GW_DYING = 8;
    static final int GW_SUDDEN = 9;
    static final int WW_DYING = 10;
    static final int GU_WEAKENING = 11;
    static final int GU_DYING = 12;
    static final int GU_SUDDEN = 13;
    static final int GU_REPORTING = 14;
    static final int WU_DYING = 15;
    static final int WU_REPORTING = 16;

    /** Entries per wake index. */
    static final int WAKE_ROW = 5;

    private static final double SERIES_BELOW = 0.05;
    private static final int SERIES_TERMS = 9;

    final HiddenParameters parameters;
    final HiddenCohorts cohorts;
    final int bands;
    /** By cohort, piece of age, then {@link #ROW} entries per day since the age the piece begins. */
    final double[][][] chances;
    /** By cohort and piece, condition at its beginning: good, weak, then their derivatives in the rates. */
    final double[][][] start;
    /** By days: chance that a death that will be reported is not yet. */
    final double[] unreported;
    /** Share of deaths that are reported. */
    final double share;
    /** Reports per day of a death that will be reported. */
    final double reporting;
    /** How much likelier a visit called for by the warning is on a day with such a death than without. */
    final double called;
    /**
     * By {@link HiddenReadings#wakeIndex}: chance when good, when weak, derivative of the log of the latter in the odds
     * factor, derivatives of both logs in the log odds of a miss.
     */
    final double[] wakes;
    /** By battery report: chance when good, when weak, derivatives of their logs in their own log odds. */
    final double[] batteries;
    /** By sign of the warning, alive and dead: chance, then derivative of its log in the own log odds. */
    final double[] signs;

    HiddenTables(HiddenParameters parameters, HiddenModel model) {
        this.parameters = parameters;
        cohorts = model.cohorts();
        bands = model.settings().bands();
        if (parameters.bands() != bands) {
            throw new IllegalArgumentException(
                    "parameters of " + parameters.bands() + " age bands with settings of " + bands);
        }
        reporting = 1 / parameters.daysUntilReported();
        share = parameters.reportedShare();
        called = 1 + reporting / model.warnings().callsPerDay();
        unreported = new double[HiddenCohorts.LONGEST + 1];
        for (int t = 0; t < unreported.length; t++) {
            unreported[t] = Math.exp(-reporting * t);
        }
        int pieces = cohorts.pieces();
        chances = new double[cohorts.size()][pieces][];
        start = new double[cohorts.size()][pieces][];
        for (int c = 0; c < cohorts.size(); c++) {
            start[c][0] = new double[2 + 2 * rates()];
            start[c][0][0] = 1;
            for (int p = 0; p < pieces; p++) {
                chances[c][p] = sameAsBefore(c, p) ? chances[c][p - 1] : chances(c, p);
                if (p + 1 < pieces) {
                    start[c][p + 1] = conditionAt(c, cohorts.from(p + 1));
                }
            }
        }
        wakes = wakes(model.wake());
        batteries = batteries();
        signs = signs();
    }

    /** Parameters that are rates; they come first. */
    int rates() {
        return 2 * bands + 1;
    }

    private boolean sameAsBefore(int cohort, int piece) {
        return piece > 0
                && cohorts.band(piece) == cohorts.band(piece - 1)
                && cohorts.factor(cohort, piece) == cohorts.factor(cohort, piece - 1)
                && days(piece) <= days(piece - 1);
    }

    private int days(int piece) {
        return cohorts.from(piece + 1) - cohorts.from(piece);
    }

    private double[] chances(int cohort, int piece) {
        int band = cohorts.band(piece);
        double perDay = cohorts.factor(cohort, piece) / HiddenParameters.DAYS_PER_YEAR;
        double weakening = parameters.weakeningPerYear(band) * perDay;
        double dying = parameters.dyingPerYear(band) / HiddenParameters.DAYS_PER_YEAR;
        double sudden = parameters.suddenPerYear() * perDay;
        double leaving = weakening + sudden;
        double[] table = new double[ROW * (days(piece) + 1)];
        for (int t = 0; t < table.length / ROW; t++) {
            int i = ROW * t;
            double low = Math.min(leaving, dying);
            double y = Math.abs(leaving - dying) * t;
            double decay = Math.exp(-low * t);
            double integral = t * decay * phi(y);
            // -dI/d(larger rate) and -dI/d(smaller rate): the mean of the time spent under each.
            double underLarger = (double) t * t * decay * psi(y);
            double underSmaller = t * integral - underLarger;
            double underLeaving = leaving >= dying ? underLarger : underSmaller;
            double underDying = leaving >= dying ? underSmaller : underLarger;
            double gg = Math.exp(-leaving * t);
            double ww = Math.exp(-dying * t);
            table[i + GG] = gg;
            table[i + GW] = weakening * integral;
            table[i + WW] = ww;
            table[i + GG_WEAKENING] = -weakening * t * gg;
            table[i + GG_SUDDEN] = -sudden * t * gg;
            table[i + GW_WEAKENING] = weakening * (integral - weakening * underLeaving);
            table[i + GW_DYING] = -weakening * dying * underDying;
            table[i + GW_SUDDEN] = -weakening * sudden * underLeaving;
            table[i + WW_DYING] = -dying * t * ww;
            if (t > 0) {
                addUnreported(table, i);
            }
        }
        return table;
    }

    private void addUnreported(double[] table, int i) {
        double stays = unreported[1];
        double half = Math.exp(-reporting / 2);
        int b = i - ROW;
        double fromGood = table[b + GG] + table[b + GW] - table[i + GG] - table[i + GW];
        double fromWeak = table[b + WW] - table[i + WW];
        table[i + GU] = stays * table[b + GU] + half * fromGood;
        table[i + WU] = stays * table[b + WU] + half * fromWeak;
        table[i + GU_WEAKENING] = stays * table[b + GU_WEAKENING]
                + half
                        * (table[b + GG_WEAKENING]
                                + table[b + GW_WEAKENING]
                                - table[i + GG_WEAKENING]
                                - table[i + GW_WEAKENING]);
        table[i + GU_SUDDEN] = stays * table[b + GU_SUDDEN]
                + half * (table[b + GG_SUDDEN] + table[b + GW_SUDDEN] - table[i + GG_SUDDEN] - table[i + GW_SUDDEN]);
        table[i + GU_DYING] = stays * table[b + GU_DYING] + half * (table[b + GW_DYING] - table[i + GW_DYING]);
        table[i + WU_DYING] = stays * table[b + WU_DYING] + half * (table[b + WW_DYING] - table[i + WW_DYING]);
        table[i + GU_REPORTING] =
                stays * (table[b + GU_REPORTING] - reporting * table[b + GU]) - half * reporting / 2 * fromGood;
        table[i + WU_REPORTING] =
                stays * (table[b + WU_REPORTING] - reporting * table[b + WU]) - half * reporting / 2 * fromWeak;
    }

    /** (1 - exp(-y)) / y. */
    private static double phi(double y) {
        return y == 0 ? 1 : -Math.expm1(-y) / y;
    }

    /** (1 - exp(-y) (1 + y)) / y^2, by its series sum over n of (-y)^n (n + 1) / (n + 2)! where y is small. */
    private static double psi(double y) {
        if (y > SERIES_BELOW) {
            return (-Math.expm1(-y) - y * Math.exp(-y)) / (y * y);
        }
        double sum = 0;
        double term = 0.5;
        for (int n = 0; n < SERIES_TERMS; n++) {
            sum += term * (n + 1);
            term *= -y / (n + 3);
        }
        return sum;
    }

    /** Good, weak and their derivatives in the rates, for a sensor good at age 0. */
    double[] conditionAt(int cohort, int age) {
        int n = rates();
        int piece = age == 0 ? 0 : cohorts.pieceAt(age - 1);
        int b = cohorts.band(piece);
        double[] p = chances[cohort][piece];
        int i = ROW * (age - cohorts.from(piece));
        double[] s = start[cohort][piece];
        double[] at = new double[2 + 2 * n];
        at[0] = s[0] * p[i + GG];
        at[1] = s[0] * p[i + GW] + s[1] * p[i + WW];
        for (int k = 0; k < n; k++) {
            at[2 + k] = s[2 + k] * p[i + GG];
            at[2 + n + k] = s[2 + k] * p[i + GW] + s[2 + n + k] * p[i + WW];
        }
        at[2 + b] += s[0] * p[i + GG_WEAKENING];
        at[2 + n - 1] += s[0] * p[i + GG_SUDDEN];
        at[2 + n + b] += s[0] * p[i + GW_WEAKENING];
        at[2 + n + bands + b] += s[0] * p[i + GW_DYING] + s[1] * p[i + WW_DYING];
        at[2 + n + n - 1] += s[0] * p[i + GW_SUDDEN];
        return at;
    }

    private double[] wakes(WakeChances wake) {
        double[] table = new double[WAKE_ROW * HiddenReadings.wakeIndex(wake.cells(), 0, false)];
        double missed = parameters.missedChance();
        for (int cell = 0; cell < wake.cells(); cell++) {
            double good = wake.chance(cell);
            double factor = parameters.at(parameters.wake())
                    + (WakeChances.isCold(cell) ? parameters.at(parameters.wakeCold()) : 0);
            double weak = Odds.chance(Odds.log(good) + factor);
            double missGood = 1;
            double missWeak = 1;
            for (int tries = 0; tries <= WakeCells.MAX_TRIES; tries++) {
                int answered = WAKE_ROW * HiddenReadings.wakeIndex(cell, tries, true);
                if (tries == 0) {
                    // An answer without a count of tries says that it is not dead, and no more.
                    table[answered] = 1;
                    table[answered + 1] = 1;
                } else {
                    table[answered] = (1 - missed) * missGood * good;
                    table[answered + 1] = (1 - missed) * missWeak * weak;
                    table[answered + 2] = 1 - tries * weak;
                    table[answered + 3] = -missed;
                    table[answered + 4] = -missed;
                    missGood *= 1 - good;
                    missWeak *= 1 - weak;
                }
                int silent = WAKE_ROW * HiddenReadings.wakeIndex(cell, tries, false);
                table[silent] = missed + (1 - missed) * missGood;
                table[silent + 1] = missed + (1 - missed) * missWeak;
                table[silent + 2] = -tries * weak * (1 - missed) * missWeak / table[silent + 1];
                table[silent + 3] = missed * (1 - missed) * (1 - missGood) / table[silent];
                table[silent + 4] = missed * (1 - missed) * (1 - missWeak) / table[silent + 1];
            }
        }
        return table;
    }

    private double[] signs() {
        double[] table = new double[4 * RoadVisits.Sign.values().length];
        for (RoadVisits.Sign sign : RoadVisits.Sign.values()) {
            for (int k = 0; k < 2; k++) {
                int i = 4 * sign.ordinal() + k;
                double on = parameters.warningOn(k == 1);
                boolean lit = sign == RoadVisits.Sign.LIT;
                boolean tells = lit || sign == RoadVisits.Sign.DARK;
                table[i] = tells ? (lit ? on : 1 - on) : 1;
                table[i + 2] = tells ? (lit ? 1 - on : -on) : 0;
            }
        }
        return table;
    }

    private double[] batteries() {
        double[] table = new double[4 * HiddenReadings.BATTERIES];
        table[0] = 1;
        table[1] = 1;
        for (int report = 1; report < HiddenReadings.BATTERIES; report++) {
            boolean low = HiddenReadings.isLow(report);
            for (int weak = 0; weak <= 1; weak++) {
                double chance = parameters.low(weak == 1, HiddenReadings.isCold(report));
                table[4 * report + weak] = low ? chance : 1 - chance;
                table[4 * report + 2 + weak] = low ? 1 - chance : -chance;
            }
        }
        return table;
    }
}
