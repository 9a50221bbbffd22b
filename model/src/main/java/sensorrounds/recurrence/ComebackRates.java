package sensorrounds.recurrence;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import sensorrounds.history.Repair;
import sensorrounds.history.VehicleHistory;
import sensorrounds.numeric.WilsonInterval;

/**
 * Whether repairs of system warnings hold, by what was done. A mergeable state of whole numbers. Kinds of repair are not dealt
 * out by lot: a set is replaced on old vehicles, a relearn tried on easy cases. So a difference between kinds is not all their
 * own, and only whether the warning had been worked on before is adjusted for. Repairs of one vehicle count as if they were of
 * several, so limits are a little narrow. Not thread safe.
 */
public final class ComebackRates implements Serializable {
    private static final long serialVersionUID = 1;

    /** A month, a quarter and half a year, as crews agree on them. Common practice, no source. */
    private static final int[] WINDOWS = {30, 90, 180};

    private record Kind(Repair repair, boolean again) implements Serializable, Comparable<Kind> {
        @Override
        public int compareTo(Kind o) {
            int byRepair = repair.compareTo(o.repair);
            return byRepair != 0 ? byRepair : Boolean.compare(again, o.again);
        }
    }

    private final SortedMap<Kind, ComebackCells> cells = new TreeMap<>();

    /** Windows in days, rising. */
    public static List<Integer> windows() {
        List<Integer> days = new ArrayList<>();
        for (int w : WINDOWS) {
            days.add(w);
        }
        return List.copyOf(days);
    }

    /** Counts the repairs of one vehicle as it stood on {@code asOf}. */
    public ComebackRates add(VehicleHistory history, LocalDate asOf) {
        for (RepairOutcome o : RepairOutcome.of(history, asOf)) {
            of(new Kind(o.repair(), o.again())).add(o);
        }
        return this;
    }

    private ComebackCells of(Kind kind) {
        return cells.computeIfAbsent(kind, k -> new ComebackCells(WINDOWS));
    }

    /** Takes in the counts of another part of the fleet. */
    public ComebackRates merge(ComebackRates o) {
        o.cells.forEach((kind, counted) -> of(kind).merge(counted));
        return this;
    }

    /** One for each kind of repair met, in their order, and window; then those of all kinds together. Empty without repairs. */
    public List<ComebackRate> rates() {
        List<ComebackRate> rates = new ArrayList<>();
        if (cells.isEmpty()) {
            return rates;
        }
        List<Repair> repairs =
                cells.keySet().stream().map(Kind::repair).distinct().toList();
        for (Repair repair : repairs) {
            for (int w = 0; w < WINDOWS.length; w++) {
                rates.add(rate(repair, w));
            }
        }
        for (int w = 0; w < WINDOWS.length; w++) {
            rates.add(rate(null, w));
        }
        return List.copyOf(rates);
    }

    private ComebackRate rate(Repair repair, int window) {
        ComebackCells counted = sum(repair, false).merge(sum(repair, true));
        long seen = counted.backWithin(window) + counted.held(window);
        WilsonInterval share = counted.share(window);
        return new ComebackRate(
                repair,
                WINDOWS[window],
                counted.repairs(),
                counted.backWithin(window),
                counted.held(window),
                counted.notLooked(window),
                counted.cutShort(window),
                share.share(),
                share.lower(),
                share.upper(),
                seen == 0 ? Double.NaN : (double) counted.backWithin(window) / seen,
                adjusted(repair, window));
    }

    /** Direct standardisation to the mix of first and repeated repairs over all kinds: Fleiss (1981), Statistical Methods for
     * Rates and Proportions, ch. 14. */
    private double adjusted(Repair repair, int window) {
        double again = sum(null, true).repairs();
        double first = sum(null, false).repairs();
        double adjusted = 0;
        // A sort that no repair met has no weight, and no say.
        adjusted += first == 0
                ? 0
                : first / (first + again) * sum(repair, false).share(window).share();
        adjusted += again == 0
                ? 0
                : again / (first + again) * sum(repair, true).share(window).share();
        return adjusted;
    }

    /** @param repair null for all kinds */
    private ComebackCells sum(Repair repair, boolean again) {
        ComebackCells sum = new ComebackCells(WINDOWS);
        cells.forEach((kind, counted) -> {
            if (kind.again() == again && (repair == null || kind.repair() == repair)) {
                sum.merge(counted);
            }
        });
        return sum;
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof ComebackRates other && cells.equals(other.cells);
    }

    @Override
    public int hashCode() {
        return cells.hashCode();
    }
}
