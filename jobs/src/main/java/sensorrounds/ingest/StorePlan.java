package sensorrounds.ingest;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What has to be done so that a store holds what the logs hold now.
 *
 * @param kept logs that are as they were read
 * @param doubtful logs of the same size and layout, of which only the content can tell whether they are as before
 * @param fresh logs the store does not know
 * @param changed logs of another size or layout than before
 * @param withdrawn names of logs that are no longer there
 */
record StorePlan(
        List<LogFile> kept,
        List<LogFile> doubtful,
        List<LogFile> fresh,
        List<LogFile> changed,
        List<String> withdrawn) {
    /**
     * A file may be written twice within one tick of its file system's clock, two seconds at the coarsest. What was written
     * that shortly before it was listed is not told by its time.
     */
    private static final long COARSEST_TICK_MILLIS = 2000;

    static StorePlan of(StoreState state, List<LogFile> files, StoreUpdate.Scrutiny scrutiny) {
        StorePlan plan = new StorePlan(
                new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        Set<String> names = new HashSet<>();
        for (LogFile file : files) {
            names.add(file.name());
            StoredLog stored = state.logs().get(file.name());
            boolean sure = scrutiny == StoreUpdate.Scrutiny.SIZE_AND_TIME && isSurelyAsBefore(state, stored, file);
            List<LogFile> list = stored == null
                    ? plan.fresh
                    : sure ? plan.kept : stored.hasForm(file) ? plan.doubtful : plan.changed;
            list.add(file);
        }
        state.logs().keySet().stream().filter(name -> !names.contains(name)).forEach(plan.withdrawn::add);
        return plan;
    }

    private static boolean isSurelyAsBefore(StoreState state, StoredLog stored, LogFile file) {
        return stored != null && stored.isAsBefore(file) && stored.modified() < state.listedAt() - COARSEST_TICK_MILLIS;
    }

    /** The plan with the doubtful logs decided by their content. */
    StorePlan decided(StoreState state, Map<String, String> checksums) {
        List<LogFile> same = new ArrayList<>(kept);
        List<LogFile> other = new ArrayList<>(changed);
        for (LogFile file : doubtful) {
            boolean equal = checksums
                    .get(file.name())
                    .equals(state.logs().get(file.name()).checksum());
            (equal ? same : other).add(file);
        }
        return new StorePlan(same, List.of(), fresh, other, withdrawn);
    }

    List<LogFile> toRead() {
        List<LogFile> all = new ArrayList<>(fresh);
        all.addAll(changed);
        return all;
    }
}
