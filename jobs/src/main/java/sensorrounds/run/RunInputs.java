package sensorrounds.run;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.fleet.Part;
import sensorrounds.fleet.StockOnHand;
import sensorrounds.fleet.Vehicle;
import sensorrounds.ingest.KnownLogs;
import sensorrounds.ingest.LogFile;
import sensorrounds.ingest.RegisterReader;

/**
 * Everything a run reads but the rows of the logs. Looked at before Spark starts, so that a slip in a path or a setting is
 * answered in a second.
 */
public record RunInputs(
        List<LogFile> logs,
        SortedMap<String, Vehicle> fleet,
        SortedMap<String, Part> parts,
        List<StockOnHand> stock,
        RunSettings settings) {

    /** @throws RefusedInput for data that cannot be used @throws UsageError for settings that cannot be */
    public static RunInputs find(RunOptions options, Configuration hadoop) {
        return find(options, hadoop, KnownLogs.NONE);
    }

    /** @param known logs that were recognised before and have not changed; they are not opened */
    static RunInputs find(RunOptions options, Configuration hadoop, KnownLogs known) {
        LogInputs logs = LogInputs.find(options, hadoop, known);
        RegisterReader registers = new RegisterReader(hadoop, options.data());
        SortedMap<String, Part> parts = new TreeMap<>();
        registers.parts().forEach(p -> parts.put(p.partId(), p));
        return new RunInputs(logs.logs(), registers.fleet(), parts, registers.stock(), logs.settings());
    }

    public long bytes() {
        return logs.stream().mapToLong(LogFile::bytes).sum();
    }
}
