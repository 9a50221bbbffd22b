package sensorrounds.run;

import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
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
        SortedMap<String, Vehicle> fleet = registers.fleet();
        depotsExist(logs.settings().review().rounds().depotMinutes().keySet(), fleet);
        return new RunInputs(logs.logs(), fleet, parts, registers.stock(), logs.settings());
    }

    /** A capacity under a name that no vehicle is at would change nothing, and nobody would notice. */
    private static void depotsExist(Set<String> named, SortedMap<String, Vehicle> fleet) {
        SortedSet<String> depots = new TreeSet<>();
        fleet.values().stream().map(Vehicle::depot).filter(d -> d != null).forEach(depots::add);
        for (String name : new TreeSet<>(named)) {
            if (!depots.contains(name)) {
                NearNames near = new NearNames(name);
                depots.forEach(near::offer);
                throw new UsageError(
                        "no vehicle of the fleet register is at this depot",
                        "settings, rounds.depotMinutes",
                        name,
                        depots.isEmpty() ? "a depot of fleet.csv, which names none" : String.join(", ", near.names()),
                        "correct the name, or take it out");
            }
        }
    }

    public long bytes() {
        return logs.stream().mapToLong(LogFile::bytes).sum();
    }
}
