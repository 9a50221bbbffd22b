package sensorrounds.ingest;

import java.util.List;

/** Logs that were recognised before and have not changed, so that they need not be opened to be listed. */
public interface KnownLogs {
    /** None. */
    KnownLogs NONE = new KnownLogs() {
        @Override
        public boolean knows(LogFile log) {
            return false;
        }

        @Override
        public List<String> sheets(String workbook) {
            return List.of();
        }
    };

    boolean knows(LogFile log);

    /**
     * @param workbook name of its file
     * @return the sheets it had, whether it has changed or not; empty when it is not known
     */
    List<String> sheets(String workbook);
}
