package sensorrounds.backtest;

import java.util.Optional;

/** How far ahead an outlook speaks. */
public enum Horizon {
    MONTH(30),
    QUARTER(90),
    HALF_YEAR(180),
    YEAR(365);

    private final int days;

    Horizon(int days) {
        this.days = days;
    }

    public int days() {
        return days;
    }

    /** The horizon of this many days; empty for any other number. */
    public static Optional<Horizon> ofDays(int days) {
        for (Horizon h : values()) {
            if (h.days == days) {
                return Optional.of(h);
            }
        }
        return Optional.empty();
    }
}
