package sensorrounds.run;

import java.time.LocalDate;
import sensorrounds.ingest.Pseudonyms;

/**
 * What the user asked for.
 *
 * @param data the data folder
 * @param logs folder, file or glob of visit logs; null for {@code visit-logs} in the data folder
 * @param settings settings file; null for {@code settings.json} in the data folder, or the defaults without one
 * @param store folder that keeps what was read from the logs; null to read them all and keep nothing
 * @param out output folder
 * @param asOf day the figures hold for; null for the day of the latest visit
 * @param pseudonyms how personal data is replaced before it is stored; null to keep it
 */
public record RunOptions(
        String data,
        String logs,
        String settings,
        String store,
        String out,
        LocalDate asOf,
        PseudonymOptions pseudonyms) {
    /** Without a store, and with plates, VINs and free text in the stored rows. */
    public RunOptions(String data, String logs, String settings, String out, LocalDate asOf) {
        this(data, logs, settings, null, out, asOf, null);
    }

    /** With plates, VINs and free text in the stored rows. */
    public RunOptions(String data, String logs, String settings, String store, String out, LocalDate asOf) {
        this(data, logs, settings, store, out, asOf, null);
    }

    /**
     * How personal data is replaced.
     *
     * @param keyFile file of the key
     */
    public record PseudonymOptions(String keyFile, Pseudonyms.Technicians technicians) {}
}
