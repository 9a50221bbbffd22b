package sensorrounds.ingest;

import java.io.IOException;
import java.io.Reader;
import sensorrounds.intake.Field;
import sensorrounds.intake.RejectionRule;
import sensorrounds.visit.Source;

/** Tells a log of JSON lines from a file that only has the name of one. */
final class FirstJsonLine {
    private static final int SHOWN = 120;

    private FirstJsonLine() {}

    /** @throws RefusedInput when the first line that is not blank is no JSON object of a visit */
    static void check(LogFile log, Reader text) throws IOException {
        TextLines lines = new TextLines(text, log.name());
        String line = lines.next();
        while (line != null && line.isBlank()) {
            line = lines.next();
        }
        if (line == null) {
            throw LogFiles.empty(log.name());
        }
        // A broken first line may still be a visit; one that never was an object, or has no key of a visit, is none.
        boolean object = line.strip().startsWith("{");
        JsonObject visit =
                JsonVisit.read(line, new Source(log.name(), lines.line())).visit();
        boolean broken = visit.problem() != null && visit.problem().rule() == RejectionRule.NOT_JSON;
        boolean anyKey = Field.KEYS.stream().anyMatch(key -> visit.get(key) != null);
        if (!object || !broken && !anyKey) {
            throw new RefusedInput(
                    "not a visit log",
                    log.name() + ", line " + lines.line(),
                    line.length() > SHOWN ? line.substring(0, SHOWN) + " …" : line,
                    "one JSON object per line with visitId, visitedAt and vehicleId",
                    "move the file out of the folder of logs, or write it as in docs/visit-log.md");
        }
    }
}
