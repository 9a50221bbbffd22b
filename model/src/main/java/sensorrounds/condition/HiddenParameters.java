package sensorrounds.condition;

import java.io.Serializable;
import java.util.Arrays;

/**
 * Parameters of the hidden condition good, weak, dead, kept as one vector: for each age band the log rate per year of
 * good to weak, then of weak to dead; the log rate per year of good to dead (sudden, at any age); the log of the odds
 * factor of waking when weak; log odds of a low report when good, good and cold, weak, weak and cold; log odds of a read
 * that misses a working sensor; log odds of the warning being on while it lives, and when dead; log odds of a death being reported,
 * and the log rate per year at which it then is; the log of a further factor on the odds of waking when weak in the cold; how much that of waking when weak
 * changes with the log odds of a good sensor; and,
 * in a model whose rates know the season, the log of their factor in the cold of the year against the rest. Where a cohort has
 * a law of life the rates of weakening and of sudden death are shares of its hazard ({@link HiddenCohorts}). Immutable.
 */
public final class HiddenParameters implements Serializable {
    private static final long serialVersionUID = 1;
    static final double DAYS_PER_YEAR = 365.25;
    static final int REPORTS = 4;
    /** Parameters besides the rates of weakening and dying. */
    private static final int OTHERS = 2 + REPORTS + 1 + 2 + 2 + 2;
    /** A usual chance of waking a good sensor by one try: the middle of the slope. Our choice, no source. */
    static final double USUAL_CHANCE = 0.85;
    /** Logs beyond this have run away. */
    static final double LARGEST = 30;

    private final double[] point;

    HiddenParameters(double[] point) {
        this.point = point.clone();
    }

    /**
     * @param weakeningPerYear rate from good to weak, one per age band
     * @param dyingPerYear rate from weak to dead, one per age band
     * @param suddenPerYear rate from good straight to dead
     * @param wakeOddsFactor odds that a weak sensor answers one try, relative to a good one
     * @param low chance of a low report when good, good and cold, weak, weak and cold; the rest is as in the centre of the
     *     usual priors
     */
    public static HiddenParameters of(
            double[] weakeningPerYear,
            double[] dyingPerYear,
            double suddenPerYear,
            double wakeOddsFactor,
            double... low) {
        int bands = weakeningPerYear.length;
        if (dyingPerYear.length != bands || low.length != REPORTS) {
            throw new IllegalArgumentException(bands + " rates of weakening, " + dyingPerYear.length + " of dying, "
                    + low.length + " chances of low reports; expected as many rates of both, and 4 chances");
        }
        double[] point = new double[size(bands)];
        for (int b = 0; b < bands; b++) {
            point[b] = Math.log(weakeningPerYear[b]);
            point[bands + b] = Math.log(dyingPerYear[b]);
        }
        point[2 * bands] = Math.log(suddenPerYear);
        point[2 * bands + 1] = Math.log(wakeOddsFactor);
        for (int i = 0; i < REPORTS; i++) {
            point[2 * bands + 2 + i] = Odds.log(low[i]);
        }
        for (double x : point) {
            if (!(Math.abs(x) <= LARGEST)) {
                throw new IllegalArgumentException(
                        "rates and odds must be positive and chances lie between 0 and 1, not " + Arrays.toString(point)
                                + " on the log scale");
            }
        }
        HiddenSettings.Centre usual = HiddenSettings.defaults().priors().centre();
        return new HiddenParameters(point).withMissed(usual.missed()).with(usual.warning());
    }

    /** The same but for the further factor on the odds that a weak sensor answers a try in the cold. */
    public HiddenParameters withColdWakeFactor(double factor) {
        return with(wakeCold(), Math.log(factor));
    }

    /** The same but for the change of the log of the odds factor with the log odds of a good sensor. */
    public HiddenParameters withWakeSlope(double slope) {
        return with(wakeSlope(), slope);
    }

    /** The same but for the chance that a read misses a working sensor. */
    public HiddenParameters withMissed(double chance) {
        return with(missed(), Odds.log(chance));
    }

    /** The same but for what the system's own warning does. */
    public HiddenParameters with(HiddenSettings.Warning w) {
        return with(warning(false), Odds.log(w.onWhenAlive()))
                .with(warning(true), Odds.log(w.onWhenDead()))
                .with(reported(), Odds.log(w.reported()))
                .with(reporting(), Math.log(DAYS_PER_YEAR / w.daysUntilReported()));
    }

    private HiddenParameters with(int i, double value) {
        double[] changed = point.clone();
        changed[i] = value;
        return new HiddenParameters(changed);
    }

    /** The centre of the priors, its rates alike in all bands. */
    static HiddenParameters centre(HiddenSettings settings) {
        HiddenSettings.Centre c = settings.priors().centre();
        double[] weakening = new double[settings.bands()];
        double[] dying = new double[settings.bands()];
        Arrays.fill(weakening, 1 / c.yearsUntilWeak());
        Arrays.fill(dying, 1 / c.yearsWeak());
        return of(
                        weakening,
                        dying,
                        1 / c.yearsUntilSudden(),
                        c.wakeOddsFactor(),
                        c.lowWhenGood(),
                        c.lowWhenGoodCold(),
                        c.lowWhenWeak(),
                        c.lowWhenWeakCold())
                .withMissed(c.missed())
                .with(c.warning())
                .withColdWakeFactor(c.coldWakeFactor());
    }

    static int size(int bands) {
        return 2 * bands + OTHERS;
    }

    public int bands() {
        return (point.length - OTHERS) / 2;
    }

    /** Rate from good to weak in an age band, counted from 0. */
    public double weakeningPerYear(int band) {
        return Math.exp(point[band]);
    }

    /** Rate from weak to dead in an age band. */
    public double dyingPerYear(int band) {
        return Math.exp(point[bands() + band]);
    }

    /** Rate from good straight to dead, at any age. */
    public double suddenPerYear() {
        return Math.exp(point[sudden()]);
    }

    /** Odds that a weak sensor answers one try, relative to a good one, where good ones answer {@link #USUAL_CHANCE}. */
    public double wakeOddsFactor() {
        return Math.exp(point[wake()]);
    }

    /** Further factor on these odds in the cold, over and above what the cold does to good sensors. */
    public double coldWakeFactor() {
        return Math.exp(point[wakeCold()]);
    }

    /** Whether the rates know the season. */
    public boolean knowsSeason() {
        return (point.length - OTHERS) % 2 == 1;
    }

    /** All rates in the cold of the year, relative to those in the rest; 1 where they know no season. */
    public double coldRateFactor() {
        return knowsSeason() ? Math.exp(point[coldRate()]) : 1;
    }

    /** The same but for the rates in the cold of the year, relative to those in the rest. */
    public HiddenParameters withColdRateFactor(double factor) {
        return new HiddenParameters(Arrays.copyOf(point, coldRate() + 1)).with(coldRate(), Math.log(factor));
    }

    /** The same but for rates that know no season. */
    HiddenParameters withoutSeason() {
        return new HiddenParameters(Arrays.copyOf(point, coldRate()));
    }

    /** Log odds that a weak sensor answers a try which a good one answers with these log odds. */
    double weakWaking(double good, boolean cold) {
        return good
                + point[wake()]
                + point[wakeSlope()] * (good - Odds.log(USUAL_CHANCE))
                + (cold ? point[wakeCold()] : 0);
    }

    /** Chance of a low battery report of a good (or weak) sensor that answers, in the cold or not. */
    public double low(boolean weak, boolean cold) {
        return Odds.chance(point[report(weak, cold)]);
    }

    /** Chance that a read of a working sensor fails however often it is tried. */
    public double missedChance() {
        return Odds.chance(point[missed()]);
    }

    /** Chance that the warning is on at a visit made for another reason. */
    public double warningOn(boolean dead) {
        return Odds.chance(point[warning(dead)]);
    }

    /** Share of deaths on the road whose warning brings the driver in. */
    public double reportedShare() {
        return Odds.chance(point[reported()]);
    }

    /** Mean days until it does. */
    public double daysUntilReported() {
        return DAYS_PER_YEAR / Math.exp(point[reporting()]);
    }

    int sudden() {
        return 2 * bands();
    }

    int wake() {
        return sudden() + 1;
    }

    int report(boolean weak, boolean cold) {
        return wake() + 1 + (weak ? 2 : 0) + (cold ? 1 : 0);
    }

    int missed() {
        return wake() + 1 + REPORTS;
    }

    int warning(boolean dead) {
        return missed() + (dead ? 2 : 1);
    }

    int reported() {
        return missed() + 3;
    }

    int reporting() {
        return missed() + 4;
    }

    int wakeCold() {
        return missed() + 5;
    }

    int wakeSlope() {
        return missed() + 6;
    }

    /** Only where the rates know the season. */
    int coldRate() {
        return missed() + 7;
    }

    int size() {
        return point.length;
    }

    double at(int i) {
        return point[i];
    }

    /** A copy of the vector. */
    public double[] point() {
        return point.clone();
    }
}
