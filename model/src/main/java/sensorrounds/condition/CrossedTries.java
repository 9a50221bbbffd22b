package sensorrounds.condition;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Who worked with which reader, and which technicians can be told apart from their readers: those who share a reader with
 * a colleague, both with enough reads on it. A technician whose readers nobody else uses cannot be: what is slow about the
 * two is then a matter of the pair.
 */
final class CrossedTries {
    /** All reads of one technician with one reader. */
    record Pair(String readerId, String technicianId) {}

    private final WakeCells cells;
    private final SortedMap<String, SortedMap<String, List<WakeCells.Key>>> byReader = new TreeMap<>();
    private final Map<Pair, Long> reads = new HashMap<>();
    private final long enough;

    CrossedTries(WakeCells cells, ConditionSettings settings) {
        this.cells = cells;
        this.enough = settings.minimumReaderReads();
        for (WakeCells.Key key : cells.keys()) {
            if (!key.readerId().isEmpty() && !key.technicianId().isEmpty()) {
                byReader.computeIfAbsent(key.readerId(), k -> new TreeMap<>())
                        .computeIfAbsent(key.technicianId(), k -> new ArrayList<>())
                        .add(key);
                reads.merge(new Pair(key.readerId(), key.technicianId()), cells.reads(key), Long::sum);
            }
        }
    }

    /** Cells of a technician with a reader. */
    List<WakeCells.Key> keys(Pair pair) {
        return byReader.get(pair.readerId()).get(pair.technicianId());
    }

    long reads(Pair pair) {
        return reads.get(pair);
    }

    /** Technicians by reader whose reads with it are enough to go by. */
    private Set<String> users(String readerId) {
        Set<String> users = new TreeSet<>(byReader.get(readerId).keySet());
        users.removeIf(t -> reads.get(new Pair(readerId, t)) < enough);
        return users;
    }

    /**
     * Groups of readers and technicians that hang together by shared readers, as pairs with enough reads each; technicians
     * who share no reader are in none. In order of the readers' names.
     */
    List<List<Pair>> pools() {
        SortedMap<String, Set<String>> readersOf = new TreeMap<>();
        Set<String> sharing = new HashSet<>();
        for (String reader : byReader.keySet()) {
            Set<String> users = users(reader);
            users.forEach(
                    t -> readersOf.computeIfAbsent(t, k -> new TreeSet<>()).add(reader));
            if (users.size() > 1) {
                sharing.addAll(users);
            }
        }
        List<List<Pair>> pools = new ArrayList<>();
        Set<String> done = new HashSet<>();
        for (String technician : readersOf.keySet()) {
            if (sharing.contains(technician) && !done.contains(technician)) {
                pools.add(pool(technician, readersOf, sharing, done));
            }
        }
        return pools;
    }

    private List<Pair> pool(String first, Map<String, Set<String>> readersOf, Set<String> sharing, Set<String> done) {
        List<Pair> pool = new ArrayList<>();
        List<String> open = new ArrayList<>(List.of(first));
        done.add(first);
        for (int i = 0; i < open.size(); i++) {
            String technician = open.get(i);
            for (String reader : readersOf.get(technician)) {
                pool.add(new Pair(reader, technician));
                for (String mate : users(reader)) {
                    if (sharing.contains(mate) && done.add(mate)) {
                        open.add(mate);
                    }
                }
            }
        }
        return pool;
    }

    /** Share of a reader's reads made by each technician; reads without a technician's name make up the rest of 1. */
    SortedMap<String, Double> shares(String readerId) {
        double all = 0;
        for (WakeCells.Key key : cells.keysOf(readerId)) {
            all += cells.reads(key);
        }
        SortedMap<String, Double> shares = new TreeMap<>();
        for (String technician :
                byReader.getOrDefault(readerId, new TreeMap<>()).keySet()) {
            shares.put(technician, reads.get(new Pair(readerId, technician)) / all);
        }
        return shares;
    }

    /** Everything a technician tried, with whatever reader. */
    SortedMap<String, List<WakeCells.Key>> byTechnician() {
        SortedMap<String, List<WakeCells.Key>> keys = new TreeMap<>();
        byReader.values()
                .forEach(m -> m.forEach((t, k) ->
                        keys.computeIfAbsent(t, x -> new ArrayList<>()).addAll(k)));
        return keys;
    }
}
