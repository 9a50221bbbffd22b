package sensorrounds.recurrent;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * One unit: the stretches in which it was watched, and its events in them. Observation may begin late and may have gaps;
 * windows that follow each other without a gap are one. Several events may fall on one time. A unit that was never
 * watched has no window and no event.
 */
public final class EventHistory implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<ObservationWindow> windows;
    private final double[] events;

    private EventHistory(List<ObservationWindow> windows, double[] events) {
        this.windows = windows;
        this.events = events;
    }

    /**
     * @param windows in any order, not overlapping
     * @param events in any order
     * @throws IllegalArgumentException when windows overlap or an event lies in none of them
     */
    public static EventHistory of(List<ObservationWindow> windows, double... events) {
        List<ObservationWindow> joined = joined(windows);
        double[] sorted = events.clone();
        Arrays.sort(sorted);
        for (double event : sorted) {
            if (joined.stream().noneMatch(w -> w.contains(event))) {
                throw new IllegalArgumentException(
                        "an event at " + event + " lies in no window of observation, which are " + joined
                                + " with the start left out; an event that opened the observation is not counted");
            }
        }
        return new EventHistory(List.copyOf(joined), sorted);
    }

    /** Watched without a gap in (from, to]; with {@code from == to} never watched. */
    public static EventHistory observed(double from, double to, double... events) {
        return of(from == to ? List.of() : List.of(new ObservationWindow(from, to)), events);
    }

    private static List<ObservationWindow> joined(List<ObservationWindow> windows) {
        List<ObservationWindow> joined = new ArrayList<>();
        for (ObservationWindow w : windows.stream()
                .sorted(Comparator.comparingDouble(ObservationWindow::from))
                .toList()) {
            ObservationWindow last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (last != null && w.from() < last.to()) {
                throw new IllegalArgumentException(
                        "windows of observation overlap: " + last + " and " + w + "; a unit is watched once at a time");
            }
            if (last != null && w.from() == last.to()) {
                joined.set(joined.size() - 1, new ObservationWindow(last.from(), w.to()));
            } else {
                joined.add(w);
            }
        }
        return joined;
    }

    /** In time order, with a gap between any two. */
    public List<ObservationWindow> windows() {
        return windows;
    }

    /** In time order. */
    public double[] events() {
        return events.clone();
    }

    public int count() {
        return events.length;
    }

    /** Time watched. */
    public double exposure() {
        return windows.stream().mapToDouble(ObservationWindow::length).sum();
    }

    @Override
    public String toString() {
        return windows + " " + Arrays.toString(events);
    }
}
