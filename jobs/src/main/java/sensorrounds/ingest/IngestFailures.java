package sensorrounds.ingest;

import java.util.concurrent.Callable;

/** Finds the user's error inside a failed Spark job. */
final class IngestFailures {
    private IngestFailures() {}

    /** @throws RefusedInput when that is what made a task fail; other failures as they are */
    static <T> T unwrap(Callable<T> job) {
        try {
            return job.call();
        } catch (Exception e) {
            // Spark throws its checked exceptions without declaring them.
            throw RefusedInput.in(e)
                    .<RuntimeException>map(refused -> refused)
                    .orElseGet(() -> e instanceof RuntimeException known
                            ? known
                            : new IllegalStateException("the ingest failed: " + e.getMessage(), e));
        }
    }
}
