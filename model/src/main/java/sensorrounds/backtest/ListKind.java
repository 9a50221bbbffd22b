package sensorrounds.backtest;

import java.util.Arrays;
import java.util.List;
import sensorrounds.replacement.Advice;

/** A list of sensors, whose length the rules are held to. */
public enum ListKind {
    /** To be replaced, at a stop made for it or at the next one there is. */
    REPLACE,
    /** To be seen to now: replaced, or read or looked at first. */
    SEE_TO_NOW,
    /** A twentieth of all sensors, whatever the engine advised: long enough to compare rules where its own lists are short. */
    ONE_IN_TWENTY;

    private static final double TWENTIETH = 0.05;

    /** The rules that can be held to it: the engine has no list of its own for a mere length. */
    public List<ListRule> rules() {
        return Arrays.stream(ListRule.values())
                .filter(rule -> this != ONE_IN_TWENTY || rule != ListRule.ENGINE)
                .toList();
    }

    /** Whether a sensor is on the engine's list. */
    boolean holds(Advice advice) {
        return switch (this) {
            case REPLACE -> advice.fits();
            case SEE_TO_NOW -> advice.urgency() == Advice.Urgency.NOW;
            case ONE_IN_TWENTY -> false;
        };
    }

    /** Its length among these forecasts of one cut. */
    double length(List<Judged> all) {
        return this == ONE_IN_TWENTY
                ? TWENTIETH * all.size()
                : all.stream().filter(j -> holds(j.forecast().advice())).count();
    }
}
