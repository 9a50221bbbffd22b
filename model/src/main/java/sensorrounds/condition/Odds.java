package sensorrounds.condition;

/** Chances and their log odds. */
final class Odds {
    private Odds() {}

    static double log(double chance) {
        return Math.log(chance) - Math.log1p(-chance);
    }

    static double chance(double logOdds) {
        return logOdds >= 0 ? 1 / (1 + Math.exp(-logOdds)) : Math.exp(logOdds) / (1 + Math.exp(logOdds));
    }

    /** log of {@link #chance}, without underflow. */
    static double logChance(double logOdds) {
        return logOdds >= 0 ? -Math.log1p(Math.exp(-logOdds)) : logOdds - Math.log1p(Math.exp(logOdds));
    }
}
