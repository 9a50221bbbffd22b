package sensorrounds.backtest;

import java.util.Arrays;
import java.util.List;
import sensorrounds.replacement.Advice;

/** A list of sensors, whose length the rules are held to. */
public enum ListKind {
    /**
     * To be replaced whatever is found: at a stop made for it, at the next one there is, or, read first, at the reading or the next stop.
     */
    REPLACE,
    /** Of these, the likeliest to fail of each stop that is made for the list's sake. */
    REPLACE_LEADING,
    /** Of these, the others of such a stop: they ride along, since its set-up is paid. */
    REPLACE_RIDING_ALONG,
    /** Of these, those that wait for a stop that happens anyway. */
    REPLACE_AT_A_STOP,
    /** Of these, those that somebody goes to read first, as they may be dead already. */
    REPLACE_AFTER_READING,
    /** To be seen to now: replaced, or read or looked at first. */
    SEE_TO_NOW,
    /** A twentieth of all sensors, whatever the engine advised: long enough to compare rules where its own lists are short. */
    ONE_IN_TWENTY;

    private static final double TWENTIETH = 0.05;

    /** The lists held against rules; the others are parts of the first. */
    public static List<ListKind> compared() {
        return List.of(REPLACE, SEE_TO_NOW, ONE_IN_TWENTY);
    }

    /** What the list of replacements is made of. */
    public static List<ListKind> parts() {
        return List.of(REPLACE_LEADING, REPLACE_RIDING_ALONG, REPLACE_AT_A_STOP, REPLACE_AFTER_READING);
    }

    /** The rules that can be held to it: the engine has no list of its own for a mere length, and its parts stand alone. */
    public List<ListRule> rules() {
        if (parts().contains(this)) {
            return List.of(ListRule.ENGINE);
        }
        return Arrays.stream(ListRule.values())
                .filter(rule -> this != ONE_IN_TWENTY || rule != ListRule.ENGINE)
                .toList();
    }

    /** Whether a sensor is on the engine's list. */
    boolean holds(Forecast f) {
        boolean now = f.advice() == Advice.REPLACE_NOW;
        return switch (this) {
            case REPLACE -> f.replaced();
            case REPLACE_LEADING -> now && f.leads();
            case REPLACE_RIDING_ALONG -> now && !f.leads();
            case REPLACE_AT_A_STOP -> f.advice().fits() && !now;
            case REPLACE_AFTER_READING -> f.replaced() && f.advice() == Advice.READ_FIRST;
            case SEE_TO_NOW -> f.advice().urgency() == Advice.Urgency.NOW;
            case ONE_IN_TWENTY -> false;
        };
    }

    /** Its length among these forecasts of one cut. */
    double length(List<Judged> all) {
        return this == ONE_IN_TWENTY
                ? TWENTIETH * all.size()
                : all.stream().filter(j -> holds(j.forecast())).count();
    }
}
