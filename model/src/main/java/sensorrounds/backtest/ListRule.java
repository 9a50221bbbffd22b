package sensorrounds.backtest;

/** A rule by which sensors could be picked for replacement. */
public enum ListRule {
    /** What the engine's list says. */
    ENGINE,
    /** The highest chances of the engine, costs left aside. */
    HIGHEST_CHANCE,
    /** The oldest, by the age a crew would take them for. */
    OLDEST_FIRST,
    /** Those of seven years and more by that age, any of them. */
    AT_SEVEN_YEARS,
    /** Those whose last report gave a sign of weakness, any of them. */
    LAST_REPORT_WEAK,
    /** Any sensors. */
    AT_RANDOM
}
