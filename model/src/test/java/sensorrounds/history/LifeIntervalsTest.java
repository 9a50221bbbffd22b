package sensorrounds.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.history.LifeIntervals.Interval;
import sensorrounds.history.LifeIntervals.Kind;

/**
 * Held against R 4.2.2, survival 3.5-3, survcheck: {@code reference/intervals/counting.R} writes the published data sets as
 * intervals (Stanford heart transplants, Crowley and Hu 1977; chronic granulomatous disease, Fleming and Harrington 1991;
 * bladder cancer recurrences, Byar 1980; primary biliary cirrhosis at its visits, Fleming and Harrington 1991), plants one
 * fault at a time, 25 of each kind in each set, and notes what survcheck counted.
 */
class LifeIntervalsTest {
    private static final Map<String, List<Interval>> SETS = sets();

    record Fault(String set, Kind kind, int row, long from, String state, String next, Map<Kind, Integer> flags) {
        @Override
        public String toString() {
            return set + " row " + row + " " + kind;
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"heart", "cgd", "bladder2", "pbcseq"})
    void nothingIsFoundInPublishedData(String set) {
        assertThat(SETS.get(set)).hasSizeGreaterThan(150);
        assertThat(LifeIntervals.check(SETS.get(set))).isEmpty();
    }

    static Stream<Fault> faults() {
        return read("counting-process-faults.csv").stream().map(f -> {
            EnumMap<Kind, Integer> flags = new EnumMap<>(Kind.class);
            flags.put(Kind.OVERLAP, Integer.valueOf(f[6]));
            flags.put(Kind.GAP, Integer.valueOf(f[7]));
            flags.put(Kind.JUMP, Integer.valueOf(f[8]));
            flags.put(Kind.TELEPORT, Integer.valueOf(f[9]));
            flags.values().removeIf(n -> n == 0);
            Kind kind = Kind.valueOf(f[1].toUpperCase(java.util.Locale.ROOT));
            return new Fault(
                    f[0],
                    kind,
                    Integer.parseInt(f[2]) - 1,
                    Long.parseLong(f[3]),
                    f[4],
                    f[5].isEmpty() ? null : f[5],
                    flags);
        });
    }

    @Test
    void aHundredFaultsOfEachKindArePlanted() {
        Map<Kind, Integer> planted = new EnumMap<>(Kind.class);
        faults().forEach(f -> planted.merge(f.kind(), 1, Integer::sum));
        assertThat(planted)
                .containsExactlyInAnyOrderEntriesOf(
                        Map.of(Kind.OVERLAP, 100, Kind.GAP, 100, Kind.JUMP, 100, Kind.TELEPORT, 100));
    }

    @ParameterizedTest
    @MethodSource("faults")
    void everyPlantedFaultIsFoundAndNothingElse(Fault fault) {
        List<Interval> rows = new ArrayList<>(SETS.get(fault.set()));
        Interval old = rows.get(fault.row());
        Interval planted = new Interval(old.subject(), fault.from(), old.to(), fault.state(), fault.next());
        rows.set(fault.row(), planted);
        Collections.shuffle(rows, new Random(fault.row()));

        List<LifeIntervals.Contradiction> found = LifeIntervals.check(rows);

        Map<Kind, Integer> counted = new EnumMap<>(Kind.class);
        found.forEach(c -> counted.merge(c.kind(), 1, Integer::sum));
        assertThat(counted).as("as survcheck counts").isEqualTo(fault.flags());
        assertThat(found).singleElement().satisfies(c -> {
            assertThat(c.kind()).isEqualTo(fault.kind());
            assertThat(List.of(c.earlier(), c.later())).contains(planted);
        });
    }

    /** Empty intervals: R's Surv turns each into a missing value with the words "Stop time must be > start time". */
    @ParameterizedTest
    @ValueSource(strings = {"heart", "cgd", "bladder2", "pbcseq"})
    void anIntervalThatEndsBeforeItBeginsIsFound(String set) {
        Random random = new Random(7);
        for (int i = 0; i < 25; i++) {
            List<Interval> rows = new ArrayList<>(SETS.get(set));
            Interval old = rows.get(random.nextInt(rows.size()));
            Interval empty =
                    new Interval(old.subject(), old.from(), old.from() - random.nextInt(2), old.state(), old.next());
            rows.add(empty);

            assertThat(LifeIntervals.check(rows))
                    .containsExactly(new LifeIntervals.Contradiction(Kind.EMPTY, null, empty));
        }
    }

    /** R, as above: for these nine rows survcheck counts one overlap (B, second row) and two gaps (B and C). */
    @Test
    void threeSubjectsByHand() {
        List<Interval> rows = List.of(
                new Interval("A", 0, 10, "s0", null),
                new Interval("A", 10, 20, "s0", "s1"),
                new Interval("A", 20, 30, "s1", "s2"),
                new Interval("B", 0, 20, "s0", "s1"),
                new Interval("B", 15, 24, "s1", "s2"),
                new Interval("B", 25, 26, "s2", null),
                new Interval("C", 10, 13, "s0", "s1"),
                new Interval("C", 15, 18, "s1", null),
                new Interval("C", 18, 25, "s1", "s3"));

        assertThat(LifeIntervals.check(rows))
                .containsExactly(
                        new LifeIntervals.Contradiction(Kind.OVERLAP, rows.get(3), rows.get(4)),
                        new LifeIntervals.Contradiction(Kind.GAP, rows.get(4), rows.get(5)),
                        new LifeIntervals.Contradiction(Kind.GAP, rows.get(6), rows.get(7)));
    }

    private static Map<String, List<Interval>> sets() {
        Map<String, List<Interval>> sets = new LinkedHashMap<>();
        for (String[] f : read("counting-process.csv")) {
            sets.computeIfAbsent(f[0], s -> new ArrayList<>())
                    .add(new Interval(
                            f[1], Long.parseLong(f[2]), Long.parseLong(f[3]), f[4], f[5].isEmpty() ? null : f[5]));
        }
        return sets;
    }

    private static List<String[]> read(String file) {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                LifeIntervalsTest.class.getResourceAsStream("/reference/intervals/" + file), StandardCharsets.UTF_8))) {
            return in.lines().skip(1).map(l -> l.split(",", -1)).toList();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
