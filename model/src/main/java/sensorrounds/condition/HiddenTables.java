package sensorrounds.condition;

/**
 * Everything that depends on the parameters alone, computed once per point: chances and their derivatives over any whole
 * number of days within each age band, chances of what a reading shows, and the condition at the start of each band of a
 * sensor that was good at age 0.
 *
 * <p>With rates l (good to weak), d (good to dead), m (weak to dead) and a = l + d, over a time t: P(good, good) =
 * exp(-a t), P(weak, weak) = exp(-m t), P(good, weak) = l I, I = integral over s from 0 to t of exp(-a s - m (t - s)) =
 * t exp(-lo t) (1 - exp(-y)) / y, with lo and hi the smaller and larger of a and m and y = (hi - lo) t (Cox and Miller
 * 1965, ch. 4; the form in y loses no figures where a and m come close).
 */
final class HiddenTables {
    /** Entries per day: the three chances, then their derivatives in the log rates. */
    static final int ROW = 9;

    static final int GG = 0;
    static final int GW = 1;
    static final int WW = 2;
    static final int GG_WEAKENING = 3;
    static final int GG_SUDDEN = 4;
    static final int GW_WEAKENING = 5;
    static final int GW_DYING = 6;
    static final int GW_SUDDEN = 7;
    static final int WW_DYING = 8;

    private static final double SERIES_BELOW = 0.05;
    private static final int SERIES_TERMS = 9;

    final HiddenParameters parameters;
    final int bands;
    /** Age at which each band begins, and one day after the last age reckoned with. */
    final int[] from;
    /** By band, then {@link #ROW} entries per day since the age the band begins. */
    final double[][] chances;
    /** Condition at the beginning of each band: good, weak, then their derivatives in the rates. */
    final double[][] start;
    /** By {@link HiddenReadings#wakeIndex}: chance when good, when weak, derivative of its log in the odds factor. */
    final double[] wakes;
    /** By battery report: chance when good, when weak, derivatives of their logs in their own log odds. */
    final double[] batteries;

    HiddenTables(HiddenParameters parameters, HiddenSettings settings, WakeChances wake) {
        this.parameters = parameters;
        bands = settings.bands();
        if (parameters.bands() != bands) {
            throw new IllegalArgumentException(
                    "parameters of " + parameters.bands() + " age bands with settings of " + bands);
        }
        from = new int[bands + 1];
        for (int b = 1; b < bands; b++) {
            from[b] = settings.bandLimitDays().get(b - 1);
        }
        from[bands] = HiddenSettings.MAX_AGE_DAYS + 1;
        chances = new double[bands][];
        start = new double[bands][];
        start[0] = new double[2 + 2 * rates()];
        start[0][0] = 1;
        for (int b = 0; b < bands; b++) {
            chances[b] = chances(b);
            if (b + 1 < bands) {
                start[b + 1] = conditionAt(from[b + 1]);
            }
        }
        wakes = wakes(wake);
        batteries = batteries();
    }

    /** Parameters that are rates; they come first. */
    int rates() {
        return 2 * bands + 1;
    }

    int band(int age) {
        int b = 0;
        while (b + 1 < bands && age >= from[b + 1]) {
            b++;
        }
        return b;
    }

    private double[] chances(int band) {
        int days = from[band + 1] - from[band];
        double weakening = parameters.weakeningPerYear(band) / HiddenParameters.DAYS_PER_YEAR;
        double dying = parameters.dyingPerYear(band) / HiddenParameters.DAYS_PER_YEAR;
        double sudden = parameters.suddenPerYear() / HiddenParameters.DAYS_PER_YEAR;
        double leaving = weakening + sudden;
        double[] table = new double[ROW * (days + 1)];
        for (int t = 0; t <= days; t++) {
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
        }
        return table;
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

    /** Good, weak and their derivatives in the rates, for a sensor good at age 0, by the bands before that age. */
    double[] conditionAt(int age) {
        int n = rates();
        int b = age == 0 ? 0 : band(age - 1);
        double[] p = chances[b];
        int i = ROW * (age - from[b]);
        double[] s = start[b];
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
        double[] table = new double[3 * HiddenReadings.wakeIndex(wake.cells(), 0, false)];
        for (int cell = 0; cell < wake.cells(); cell++) {
            double good = wake.chance(cell);
            double weak = Odds.chance(Odds.log(good) + parameters.at(parameters.wake()));
            double missGood = 1;
            double missWeak = 1;
            for (int tries = 0; tries <= WakeCells.MAX_TRIES; tries++) {
                int answered = 3 * HiddenReadings.wakeIndex(cell, tries, true);
                if (tries == 0) {
                    // An answer without a count of tries says that it is not dead, and no more.
                    table[answered] = 1;
                    table[answered + 1] = 1;
                } else {
                    table[answered] = missGood * good;
                    table[answered + 1] = missWeak * weak;
                    table[answered + 2] = 1 - tries * weak;
                    missGood *= 1 - good;
                    missWeak *= 1 - weak;
                }
                int silent = 3 * HiddenReadings.wakeIndex(cell, tries, false);
                table[silent] = missGood;
                table[silent + 1] = missWeak;
                table[silent + 2] = -tries * weak;
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
