package sensorrounds.rounds;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Fills the rounds of a depot, week by week, within its capacity: a knapsack for each week whose values wear off from one to
 * the next. Booked stops stand where they are. Vehicles with a wheel known to give no warning come first. The others are taken
 * by saving per minute, each in the first week that has room; then by exchange, as long as one brings more.
 *
 * <p>How near that is to the best there is, is proven by Lagrangian relaxation: for any prices l_w of a minute, no choice can
 * save more than
 *
 * <pre>sum over weeks of l_w C_w + sum over vehicles of max(0, max over weeks of (v_iw - l_w m_i))</pre>
 *
 * C the minutes left, v the saving, m the minutes. It is convex in each price; the least is sought step by step, and any
 * prices met give a true bound. Source: Fisher (1981), The Lagrangian relaxation method for solving integer programming
 * problems, Management Science 27; step: Polyak (1969) (both from memory).
 */
public final class RoundPlanner implements Serializable {
    private static final long serialVersionUID = 1;
    /** Steps towards the least bound. */
    private static final int STEPS = 300;

    /** Vehicles up to which exchanges are tried: their number goes with the square. */
    private static final int EXCHANGED = 400;

    private static final int NONE = -1;

    private static final Comparator<RoundCall> BY_NAME = Comparator.comparing(RoundCall::vehicleId);

    private final RoundSettings settings;
    private final LocalDate asOf;

    public RoundPlanner(RoundSettings settings, LocalDate asOf) {
        this.settings = settings;
        this.asOf = asOf;
    }

    /** @param calls of one depot, in any order */
    public RoundPlan plan(String depot, List<RoundCall> calls) {
        List<RoundCall> booked = new ArrayList<>();
        List<RoundCall> urgent = new ArrayList<>();
        List<RoundCall> due = new ArrayList<>();
        for (RoundCall call : calls) {
            List<RoundCall> kind = switch (call.kind()) {
                case BOOKED -> booked;
                case NO_WARNING -> urgent;
                case DUE -> due;
            };
            if (kind != booked || bookedWeek(call) < settings.weeks()) {
                kind.add(call);
            }
        }
        booked.sort(Comparator.comparing(RoundCall::booked).thenComparing(BY_NAME));
        urgent.sort(Comparator.comparingDouble((RoundCall c) -> -c.saving()).thenComparing(BY_NAME));
        due.sort(Comparator.comparingDouble((RoundCall c) -> -c.saving(0) / c.minutes(settings))
                .thenComparing(BY_NAME));
        double[] left = new double[settings.weeks()];
        Arrays.fill(left, settings.minutesOf(depot));
        booked.forEach(call -> left[bookedWeek(call)] -= call.minutes(settings));
        int[] urgentWeeks = inFirstRoom(urgent, left);
        double[] free = left.clone();
        int[] weeks = exchanged(due, inFirstRoom(due, left), left);
        List<RoundStop> stops = new ArrayList<>();
        for (int w = 0; w < settings.weeks(); w++) {
            int order = 0;
            for (RoundCall c : booked) {
                if (bookedWeek(c) == w) {
                    stops.add(stop(depot, w, ++order, c));
                }
            }
            for (int i = 0; i < urgent.size(); i++) {
                if (urgentWeeks[i] == w) {
                    stops.add(stop(depot, w, ++order, urgent.get(i)));
                }
            }
            for (int i = 0; i < due.size(); i++) {
                if (weeks[i] == w) {
                    stops.add(stop(depot, w, ++order, due.get(i)));
                }
            }
        }
        double comingIn =
                calls.stream().sorted(BY_NAME).mapToDouble(RoundCall::comingIn).sum();
        return new RoundPlan(depot, weeks(depot, stops, urgent.size() + due.size(), due, free), stops, comingIn);
    }

    private RoundStop stop(String depot, int week, int order, RoundCall call) {
        return new RoundStop(depot, week + 1, order, call, call.minutes(settings), call.saving(week));
    }

    private int bookedWeek(RoundCall call) {
        return (int) Math.max(0, (ChronoUnit.DAYS.between(asOf, call.booked()) - 1) / 7);
    }

    private int[] inFirstRoom(List<RoundCall> calls, double[] left) {
        int[] weeks = new int[calls.size()];
        for (int i = 0; i < weeks.length; i++) {
            weeks[i] = NONE;
            for (int w = 0; w < left.length && weeks[i] == NONE; w++) {
                if (fits(calls.get(i).minutes(settings), left[w])) {
                    weeks[i] = w;
                    left[w] -= calls.get(i).minutes(settings);
                }
            }
        }
        return weeks;
    }

    private static boolean fits(double minutes, double left) {
        return minutes <= left + 1e-9;
    }

    /** Two vehicles change places, one of which may be on no round, while that saves more. */
    private int[] exchanged(List<RoundCall> due, int[] weeks, double[] left) {
        if (due.size() > EXCHANGED) {
            return weeks;
        }
        for (boolean better = true; better; ) {
            better = false;
            for (int i = 0; i < weeks.length; i++) {
                for (int j = 0; j < weeks.length; j++) {
                    better |= weeks[i] != NONE && weeks[i] != weeks[j] && exchange(due, weeks, left, i, j);
                }
            }
        }
        return weeks;
    }

    private boolean exchange(List<RoundCall> due, int[] weeks, double[] left, int i, int j) {
        int a = weeks[i];
        int b = weeks[j];
        double more = due.get(j).minutes(settings) - due.get(i).minutes(settings);
        double gain = value(due.get(j), a) + value(due.get(i), b) - value(due.get(i), a) - value(due.get(j), b);
        if (gain <= 1e-9 || !fits(more, left[a]) || b != NONE && !fits(-more, left[b])) {
            return false;
        }
        weeks[i] = b;
        weeks[j] = a;
        left[a] -= more;
        if (b != NONE) {
            left[b] += more;
        }
        return true;
    }

    private static double value(RoundCall call, int week) {
        return week == NONE ? 0 : call.saving(week);
    }

    private List<RoundWeek> weeks(String depot, List<RoundStop> stops, int asked, List<RoundCall> due, double[] free) {
        List<RoundWeek> weeks = new ArrayList<>();
        double soFar = 0;
        double all = stops.stream().mapToDouble(RoundStop::saving).sum();
        double bound = Math.max(all, bound(due, free, all));
        int placed = 0;
        for (int w = 1; w <= settings.weeks(); w++) {
            int week = w;
            List<RoundStop> mine = stops.stream().filter(s -> s.week() == week).toList();
            int booked = (int) mine.stream()
                    .filter(s -> s.call().kind() == RoundCall.Kind.BOOKED)
                    .count();
            double saving = mine.stream().mapToDouble(RoundStop::saving).sum();
            soFar += saving;
            placed += mine.size() - booked;
            weeks.add(new RoundWeek(
                    depot,
                    w,
                    asOf.plusDays(7L * w - 6),
                    asOf.plusDays(7L * w),
                    mine.size(),
                    booked,
                    mine.stream().mapToInt(s -> s.call().wheels()).sum(),
                    mine.stream().mapToDouble(RoundStop::minutes).sum(),
                    settings.minutesOf(depot),
                    saving,
                    soFar,
                    all,
                    bound,
                    asked - placed));
        }
        return weeks;
    }

    /**
     * The least bound met by the subgradient method with the step of Polyak, its factor halved when it stalls; started at one
     * price for all weeks, that at which the vehicles wanted fill them.
     *
     * @param free minutes left for the vehicles due, by week; under 0 where booked stops take more than there is
     * @param reached what the rounds save, under any bound
     */
    double bound(List<RoundCall> due, double[] free, double reached) {
        double[] capacity = Arrays.stream(free).map(c -> Math.max(0, c)).toArray();
        double[] prices = new double[capacity.length];
        Arrays.fill(prices, levelPrice(due, Arrays.stream(capacity).sum()));
        double[] used = new double[capacity.length];
        double least = Double.POSITIVE_INFINITY;
        double factor = 1;
        int stalled = 0;
        for (int step = 0; step < STEPS && factor > 1e-3; step++) {
            double dual = dual(due, capacity, prices, used);
            stalled = dual < least * (1 - 1e-6) ? 0 : stalled + 1;
            least = Math.min(least, dual);
            if (stalled == 10) {
                factor /= 2;
                stalled = 0;
            }
            double squares = 0;
            for (int w = 0; w < capacity.length; w++) {
                used[w] -= capacity[w];
                squares += used[w] * used[w];
            }
            if (!(squares > 0) || !(dual > reached + 1e-9)) {
                break;
            }
            for (int w = 0; w < capacity.length; w++) {
                prices[w] = Math.max(0, prices[w] + factor * (dual - reached) / squares * used[w]);
            }
        }
        return least;
    }

    private double levelPrice(List<RoundCall> due, double capacity) {
        double minutes = 0;
        // Most saving per minute first.
        for (RoundCall c : due) {
            minutes += c.minutes(settings);
            if (minutes > capacity) {
                return c.saving(0) / c.minutes(settings);
            }
        }
        return 0;
    }

    /** The bound at these prices, and the minutes that the vehicles would then take of each week. */
    private double dual(List<RoundCall> due, double[] capacity, double[] prices, double[] used) {
        Arrays.fill(used, 0);
        double sum = 0;
        for (int w = 0; w < prices.length; w++) {
            sum += prices[w] * capacity[w];
        }
        for (RoundCall c : due) {
            double minutes = c.minutes(settings);
            double best = 0;
            int week = NONE;
            for (int w = 0; w < prices.length; w++) {
                double own = c.saving(w) - prices[w] * minutes;
                if (own > best) {
                    best = own;
                    week = w;
                }
            }
            sum += best;
            if (week != NONE) {
                used[week] += minutes;
            }
        }
        return sum;
    }
}
