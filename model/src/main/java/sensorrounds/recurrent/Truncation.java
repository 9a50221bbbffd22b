package sensorrounds.recurrent;

import java.util.Arrays;
import java.util.List;

/** What ended the observation of a unit. */
public enum Truncation {
    /** A time set beforehand, or anything else that has nothing to do with the events. */
    TIME {
        @Override
        EventHistory observed(EventHistory history) {
            return history;
        }

        @Override
        EventHistory free(EventHistory history) {
            return history;
        }
    },
    /** The last event itself: observation stopped when it came, so its time is no news. */
    FAILURE {
        @Override
        EventHistory observed(EventHistory history) {
            double[] events = history.events();
            if (events.length == 0) {
                throw new IllegalArgumentException(
                        "observation that ends with an event needs one, and this unit has none: " + history
                                + "; its end was set by time");
            }
            return until(history, events, events[events.length - 1]);
        }

        @Override
        EventHistory free(EventHistory history) {
            double[] events = history.events();
            EventHistory cut = observed(history);
            return EventHistory.of(cut.windows(), Arrays.copyOf(events, events.length - 1));
        }

        private EventHistory until(EventHistory history, double[] events, double end) {
            List<ObservationWindow> windows = history.windows().stream()
                    .filter(w -> w.from() < end)
                    .map(w -> new ObservationWindow(w.from(), Math.min(w.to(), end)))
                    .toList();
            return EventHistory.of(windows, events);
        }
    };

    /** The history with its observation ended where it did. */
    abstract EventHistory observed(EventHistory history);

    /** The same, with the events whose times were free to fall anywhere. */
    abstract EventHistory free(EventHistory history);
}
