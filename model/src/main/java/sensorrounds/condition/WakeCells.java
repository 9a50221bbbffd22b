package sensorrounds.condition;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.history.LifeReading;
import sensorrounds.history.SensorLife;
import sensorrounds.history.VehicleHistory;
import sensorrounds.visit.Mount;
import sensorrounds.visit.ReadOutcome;

/**
 * How many tries reads needed, counted per reader, technician, inner dual wheel or not, cold or not. Whole numbers only, so that
 * any split of the fleet merged in any order gives the same cells.
 *
 * <p>Counted are reads with a count of tries, by a named or unnamed reader, of sensors not known failed: a silent read
 * counts only when the same sensor answered later, since silence at the end of a life may be its death. Not thread
 * safe.
 */
public final class WakeCells implements Serializable {
    /** Reads that took more tries are counted at this number. */
    public static final int MAX_TRIES = 20;

    /**
     * One cell.
     *
     * @param readerId empty for reads without the name of a reader
     * @param technicianId empty for reads without the name of a technician
     * @param inner inner wheel of a dual pair
     * @param cold air temperature under the limit; a read without a temperature is not cold
     */
    public record Key(String readerId, String technicianId, boolean inner, boolean cold)
            implements Serializable, Comparable<Key> {
        private static final Comparator<Key> ORDER = Comparator.comparing(Key::readerId)
                .thenComparing(Key::technicianId)
                .thenComparing(Key::inner)
                .thenComparing(Key::cold);

        /** A cell of reads without the name of a technician. */
        public Key(String readerId, boolean inner, boolean cold) {
            this(readerId, "", inner, cold);
        }

        /** The same pair of reader and technician on another kind of wheel or in other weather. */
        Key at(boolean otherInner, boolean otherCold) {
            return new Key(readerId, technicianId, otherInner, otherCold);
        }

        @Override
        public int compareTo(Key o) {
            return ORDER.compare(this, o);
        }
    }

    /** Reads that answered at, or were given up after, each number of tries. */
    private static final class Cell implements Serializable {
        private final long[] answered = new long[MAX_TRIES + 1];
        private final long[] gaveUp = new long[MAX_TRIES + 1];
        private long tries;

        private void merge(Cell o) {
            for (int k = 0; k <= MAX_TRIES; k++) {
                answered[k] += o.answered[k];
                gaveUp[k] += o.gaveUp[k];
            }
            tries += o.tries;
        }
    }

    /**
     * Single tries up to a number of tries per read: the sufficient statistics of a censored geometric law.
     *
     * @param successes tries that woke the sensor
     * @param failures tries that did not
     */
    public record Tries(long successes, long failures) implements Serializable {
        Tries plus(Tries o) {
            return new Tries(successes + o.successes, failures + o.failures);
        }

        long total() {
            return successes + failures;
        }
    }

    private final double coldCelsius;
    private final SortedMap<Key, Cell> cells = new TreeMap<>();

    /** @param coldCelsius air temperature under which a read counts as cold, °C */
    public WakeCells(double coldCelsius) {
        this.coldCelsius = coldCelsius;
    }

    /** Counts the reads of one vehicle. */
    public WakeCells add(VehicleHistory history) {
        Set<LocalDate> unheard = UnheardVisits.days(history);
        for (SensorLife life : history.lives()) {
            for (LifeReading r : life.readings()) {
                boolean answeredLater = life.lastAnswered() != null && !r.day().isAfter(life.lastAnswered());
                if (r.attempts() != null
                        && (r.answered() || r.outcome() == ReadOutcome.NO_ANSWER && answeredLater)
                        && !unheard.contains(r.day())) {
                    count(key(r, coldCelsius), r.attempts(), r.answered(), 1);
                }
            }
        }
        return this;
    }

    /** Takes the counts of another part of the fleet in. */
    public WakeCells merge(WakeCells other) {
        if (Double.compare(coldCelsius, other.coldCelsius) != 0) {
            throw new IllegalArgumentException("cells counted with cold under " + coldCelsius + " °C and under "
                    + other.coldCelsius + " °C do not add up; count both with one limit");
        }
        other.cells.forEach(
                (key, cell) -> cells.computeIfAbsent(key, k -> new Cell()).merge(cell));
        return this;
    }

    /** Counts {@code reads} equal reads. */
    WakeCells count(Key key, int attempts, boolean answered, long reads) {
        if (attempts < 1) {
            throw new IllegalArgumentException("a read takes at least one try, not " + attempts);
        }
        Cell cell = cells.computeIfAbsent(key, k -> new Cell());
        (answered ? cell.answered : cell.gaveUp)[Math.min(attempts, MAX_TRIES)] += reads;
        cell.tries += attempts * reads;
        return this;
    }

    static Key key(LifeReading r, double coldCelsius) {
        return new Key(
                r.readerId() == null ? "" : r.readerId(),
                r.technicianId() == null ? "" : r.technicianId(),
                r.position() != null && r.position().mount() == Mount.INNER,
                r.ambientCelsius() != null && r.ambientCelsius() < coldCelsius);
    }

    /** All cells that hold a read, in order. */
    public List<Key> keys() {
        return List.copyOf(cells.keySet());
    }

    /** Named readers, in order. */
    public List<String> readers() {
        return cells.keySet().stream()
                .map(Key::readerId)
                .filter(r -> !r.isEmpty())
                .distinct()
                .toList();
    }

    public long reads(Key key) {
        Cell cell = cells.get(key);
        return cell == null
                ? 0
                : Arrays.stream(cell.answered).sum()
                        + Arrays.stream(cell.gaveUp).sum();
    }

    /** All tries spent, without a limit per read. */
    public long triesSpent(Key key) {
        Cell cell = cells.get(key);
        return cell == null ? 0 : cell.tries;
    }

    /** Single tries with at most {@code limit} counted per read; a read still silent then counts as given up there. */
    public Tries tries(Key key, int limit) {
        Cell cell = cells.get(key);
        long successes = 0;
        long failures = 0;
        for (int k = 1; cell != null && k <= MAX_TRIES; k++) {
            if (k <= limit) {
                successes += cell.answered[k];
                failures += (k - 1) * cell.answered[k] + k * cell.gaveUp[k];
            } else {
                failures += limit * (cell.answered[k] + cell.gaveUp[k]);
            }
        }
        return new Tries(successes, failures);
    }

    /** The cells of one reader, in order. */
    List<Key> keysOf(String readerId) {
        Key first = new Key(readerId, false, false);
        List<Key> keys = new ArrayList<>();
        for (Key key : cells.tailMap(first).keySet()) {
            if (!key.readerId().equals(readerId)) {
                break;
            }
            keys.add(key);
        }
        return Collections.unmodifiableList(keys);
    }

    double coldCelsius() {
        return coldCelsius;
    }

    /** Same limit and same counts. */
    @Override
    public boolean equals(Object o) {
        if (!(o instanceof WakeCells other) || Double.compare(coldCelsius, other.coldCelsius) != 0) {
            return false;
        }
        if (!cells.keySet().equals(other.cells.keySet())) {
            return false;
        }
        for (Map.Entry<Key, Cell> e : cells.entrySet()) {
            Cell c = other.cells.get(e.getKey());
            if (e.getValue().tries != c.tries
                    || !Arrays.equals(e.getValue().answered, c.answered)
                    || !Arrays.equals(e.getValue().gaveUp, c.gaveUp)) {
                return false;
            }
        }
        return true;
    }

    @Override
    public int hashCode() {
        return cells.keySet().hashCode();
    }
}
