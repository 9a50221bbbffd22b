package sensorrounds.intake;

import java.io.Serializable;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;

/**
 * A row that was understood but says again, or said before, what another row says.
 *
 * @param row the row left out
 * @param keptSource where the row that counts stands
 */
public record Duplicate(LoggedWheel row, Rule rule, Source keptSource) implements Serializable {
    /** Why the row was left out. */
    public enum Rule {
        /** The same content a second time, as when a log is sent twice. */
        EXACT("the same row again"),
        /** The visit was written again with a higher revision. */
        REVISED("replaced by a later revision of the visit"),
        /** Other content for the same place at the same revision: the later source counts. */
        SUPERSEDED("replaced by a later row of the same revision");

        private final String words;

        Rule(String words) {
            this.words = words;
        }

        /** The rule in words. */
        public String words() {
            return words;
        }
    }
}
