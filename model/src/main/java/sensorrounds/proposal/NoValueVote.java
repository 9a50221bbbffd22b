package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.List;

/** Figures that readers write for no temperature, such as −40 or 255 (common practice, no source). */
final class NoValueVote {
    private static final List<Double> KNOWN = List.of(-40.0, 255.0, 215.0, -128.0);
    /** A real temperature has neighbours. */
    private static final double ALONE = 15;

    private static final int SPIKE = 5;

    private final List<Double> values = new ArrayList<>();
    private final List<Decision> decisions = new ArrayList<>();

    List<Double> values() {
        return values;
    }

    List<Decision> decisions() {
        return decisions;
    }

    void look(List<Column> temperatures, char mark) {
        for (double known : KNOWN) {
            long at = count(temperatures, mark, v -> v == known);
            long near = count(temperatures, mark, v -> v != known && Math.abs(v - known) <= ALONE);
            if (at > 0 && near == 0) {
                values.add(known);
                decisions.add(Decision.sure(
                                "noTemperature",
                                plain(known),
                                at,
                                0,
                                "figures that stand alone: none other lies within 15 of them",
                                plain(known))
                        .asking("make sure that the reader writes it for no value"));
            }
        }
        long zeros = count(temperatures, mark, v -> v == 0);
        long beside = Math.max(count(temperatures, mark, v -> v == 1), count(temperatures, mark, v -> v == -1));
        if (zeros > SPIKE * Math.max(beside, 2)) {
            decisions.add(new Decision(
                    "noTemperature 0",
                    "not proposed",
                    zeros,
                    beside,
                    "temperatures of 0, against the more frequent of 1 and -1",
                    "0",
                    "does the reader write 0 for no value? Then add 0 to noTemperature"));
        }
    }

    private static long count(List<Column> columns, char mark, java.util.function.DoublePredicate at) {
        return columns.stream()
                .mapToLong(c -> c.rows(t -> at.test(Figures.read(t, mark))))
                .sum();
    }

    private static String plain(double value) {
        return Long.toString((long) value);
    }
}
