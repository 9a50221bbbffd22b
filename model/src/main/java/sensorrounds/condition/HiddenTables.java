package sensorrounds.condition;

import java.util.Arrays;

/**
 * Everything that depends on the parameters alone, computed once per point: chances and their derivatives over any whole
 * number of days within each piece of age of each cohort, in the cold of the year and out of it ({@link HiddenRows});
 * chances of what a visit shows; and the condition at the start of each piece of a sensor that was good at age 0.
 *
 * <p>With a season all rates are f times as high in its cold part as in the rest, and their mean over a year is that
 * of the parameters. Rates that share a factor share their eigenvectors: the order of cold and other days
 * within a piece does not show in the chances (Cox and Miller 1965, The Theory of Stochastic Processes, 4.6, on a clock that
 * runs faster and slower).
 */
final class HiddenTables {
    /** Entries per wake index. */
    static final int WAKE_ROW = 5;

    /** Conditions of a sensor that lives: good, early and late weak. */
    static final int ALIVE = 3;

    final HiddenParameters parameters;
    final HiddenCohorts cohorts;
    final ColdSeason season;
    final int bands;
    /** By cohort, piece of age, season (0 for all the year where there is none), then by {@link HiddenRows}. */
    final double[][][][] chances;
    /** By season: derivative of the logs of the rates in the log of the season's factor. */
    final double[] pull;
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
    /** By cell: log odds of a good sensor less those of the usual one. */
    private double[] wakeOffsets;
    /** By battery report: chance when good, when weak, derivatives of their logs in their own log odds. */
    final double[] batteries;
    /** By sign of the warning, alive and dead: chance, then derivative of its log in the own log odds. */
    final double[] signs;

    /** By cohort and piece, condition at its beginning: {@link #ALIVE} chances, then their derivatives in each rate. */
    private final double[][][] start;

    private final WeakStages stages;
    /** By season: what the rates are multiplied by. */
    private final double[] speed;

    HiddenTables(HiddenParameters parameters, HiddenModel model) {
        this.parameters = parameters;
        cohorts = model.cohorts();
        season = model.season();
        stages = model.stages();
        bands = model.settings().bands();
        if (parameters.bands() != bands || parameters.knowsSeason() != season.turns()) {
            throw new IllegalArgumentException("parameters of " + parameters.bands() + " age bands "
                    + (parameters.knowsSeason() ? "with" : "without") + " a season for settings of " + bands + " "
                    + (season.turns() ? "with" : "without") + " one");
        }
        double factor = parameters.coldRateFactor();
        double mean = 1 + season.share() * (factor - 1);
        double cold = season.share() * factor / mean;
        speed = season.turns() ? new double[] {1 / mean, factor / mean} : new double[] {1};
        pull = season.turns() ? new double[] {-cold, 1 - cold} : new double[] {0};
        reporting = 1 / parameters.daysUntilReported();
        share = parameters.reportedShare();
        called = 1 + reporting / model.warnings().callsPerDay();
        unreported = new double[HiddenCohorts.LONGEST + 1];
        for (int t = 0; t < unreported.length; t++) {
            unreported[t] = Math.exp(-reporting * t);
        }
        int pieces = cohorts.pieces();
        chances = new double[cohorts.size()][pieces][][];
        start = new double[cohorts.size()][pieces][];
        for (int c = 0; c < cohorts.size(); c++) {
            start[c][0] = new double[ALIVE * (1 + rates())];
            start[c][0][0] = 1;
            for (int p = 0; p < pieces; p++) {
                chances[c][p] = sameAsBefore(c, p) ? chances[c][p - 1] : chances(c, p);
                if (p + 1 < pieces) {
                    start[c][p + 1] = atEnd(c, p);
                }
            }
        }
        wakes = wakes(model.wake());
        batteries = batteries();
        signs = signs();
    }

    /** Derivative of the log odds of waking a weak sensor in their slope. */
    double wakeOffset(int cell) {
        return wakeOffsets[cell];
    }

    /** Parameters that are rates or move them: those of weakening and of dying by band, of sudden death, the season's factor. */
    int rates() {
        return 2 * bands + 1 + (season.turns() ? 1 : 0);
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

    private double[][] chances(int cohort, int piece) {
        int band = cohorts.band(piece);
        double perDay = cohorts.factor(cohort, piece) / HiddenParameters.DAYS_PER_YEAR;
        double[][] tables = new double[speed.length][];
        for (int s = 0; s < speed.length; s++) {
            tables[s] = HiddenRows.of(
                    stages,
                    speed[s] * parameters.weakeningPerYear(band) * perDay,
                    speed[s] * parameters.dyingPerYear(band) / HiddenParameters.DAYS_PER_YEAR,
                    speed[s] * parameters.suddenPerYear() * perDay,
                    reporting,
                    days(piece));
        }
        return tables;
    }

    /** A whole piece, cold for the season's share of it: pieces are years of age, but for those past any age that is seen. */
    private double[] atEnd(int cohort, int piece) {
        double[] at = start[cohort][piece].clone();
        int cold = (int) (days(piece) * season.share());
        advance(at, cohort, piece, 0, days(piece) - cold);
        advance(at, cohort, piece, 1, cold);
        return at;
    }

    /**
     * Chances of being good, early weak and late weak, then the derivatives of each in each rate, for a sensor good at age
     * 0. The season in the years before the one of that age is taken as even.
     *
     * @param fitted day of its fitting
     */
    double[] conditionAt(int cohort, int fitted, int age) {
        int piece = age == 0 ? 0 : cohorts.pieceAt(age - 1);
        int begin = cohorts.from(piece);
        double[] at = start[cohort][piece].clone();
        int cold = season.turns() ? season.coldDays(fitted + begin, fitted + age) : 0;
        advance(at, cohort, piece, 0, age - begin - cold);
        advance(at, cohort, piece, 1, cold);
        return at;
    }

    private void advance(double[] at, int cohort, int piece, int s, int days) {
        if (days == 0) {
            return;
        }
        double[] p = chances[cohort][piece][s];
        int i = HiddenRows.ROW * days;
        double[] before = Arrays.copyOf(at, ALIVE);
        for (int k = 0; k < at.length; k += ALIVE) {
            double good = at[k];
            double early = at[k + 1];
            double late = at[k + 2];
            at[k] = good * p[i + HiddenRows.GG];
            at[k + 1] = good * p[i + HiddenRows.GE] + early * p[i + HiddenRows.WW];
            at[k + 2] = good * p[i + HiddenRows.GL] + early * p[i + HiddenRows.EL] + late * p[i + HiddenRows.WW];
        }
        int band = cohorts.band(piece);
        double good = before[0];
        double early = before[1];
        double late = before[2];
        add(
                at,
                band,
                s,
                good * p[i + HiddenRows.GG_WEAKENING],
                good * p[i + HiddenRows.GE_WEAKENING],
                good * p[i + HiddenRows.GL_WEAKENING]);
        add(
                at,
                bands + band,
                s,
                0,
                good * p[i + HiddenRows.GE_DYING] + early * p[i + HiddenRows.WW_DYING],
                good * p[i + HiddenRows.GL_DYING]
                        + early * p[i + HiddenRows.EL_DYING]
                        + late * p[i + HiddenRows.WW_DYING]);
        add(
                at,
                2 * bands,
                s,
                good * p[i + HiddenRows.GG_SUDDEN],
                good * p[i + HiddenRows.GE_SUDDEN],
                good * p[i + HiddenRows.GL_SUDDEN]);
    }

    /** Derivatives in a rate, and through it in the season's factor. */
    private void add(double[] at, int rate, int s, double good, double early, double late) {
        int own = ALIVE * (1 + rate);
        at[own] += good;
        at[own + 1] += early;
        at[own + 2] += late;
        if (season.turns()) {
            int factor = ALIVE * rates();
            at[factor] += pull[s] * good;
            at[factor + 1] += pull[s] * early;
            at[factor + 2] += pull[s] * late;
        }
    }

    private double[] wakes(WakeChances wake) {
        double[] table = new double[WAKE_ROW * HiddenReadings.wakeIndex(wake.cells(), 0, false)];
        wakeOffsets = new double[wake.cells()];
        double missed = parameters.missedChance();
        for (int cell = 0; cell < wake.cells(); cell++) {
            double good = wake.chance(cell);
            wakeOffsets[cell] = Odds.log(good) - Odds.log(HiddenParameters.USUAL_CHANCE);
            double weak = Odds.chance(parameters.weakWaking(Odds.log(good), WakeChances.isCold(cell)));
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
