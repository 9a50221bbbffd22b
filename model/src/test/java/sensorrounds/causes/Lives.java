package sensorrounds.causes;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Invented lives for tests. */
final class Lives {
    static final double YEAR = 365.25;

    enum Cause {
        BATTERY,
        DAMAGE,
        PREVENTIVE
    }

    private Lives() {}

    /**
     * Battery deaths (Weibull, shape 2.5, scale 7 years) against damage at a constant .05 a year; entry uniform on 0-6
     * years, follow-up 3 years, ages in whole days.
     */
    static List<EndedLife<Cause>> competing(long seed, int units) {
        Random random = new Random(seed);
        List<EndedLife<Cause>> lives = new ArrayList<>();
        for (int i = 0; i < units; i++) {
            double battery = Math.ceil(YEAR * weibull(random));
            double damage = Math.ceil(YEAR * -Math.log(1 - random.nextDouble()) / 0.05);
            double entry = Math.floor(YEAR * 6 * random.nextDouble());
            double end = Math.min(Math.min(battery, damage), entry + Math.floor(3 * YEAR));
            if (Math.min(battery, damage) > entry) {
                lives.add(
                        end == battery
                                ? EndedLife.by(Cause.BATTERY, entry, end)
                                : end == damage
                                        ? EndedLife.by(Cause.DAMAGE, entry, end)
                                        : EndedLife.censored(entry, end));
            }
        }
        return lives;
    }

    /** Years until the battery dies: shape 2.5, scale 7 years. */
    static double weibull(Random random) {
        return 7 * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 2.5);
    }
}
