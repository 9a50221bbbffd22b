package sensorrounds.condition;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeSet;
import sensorrounds.survival.LifeLaw;

/**
 * How fast the sensors of each cohort age, as known before the hidden condition is fitted: a factor on the rates of
 * weakening and of sudden death, constant within pieces of age. With a law of life for each cohort the factor is its mean
 * hazard per year over the piece, so that the fitted rates are shares of that hazard; without laws it is 1. Immutable.
 */
public final class HiddenCohorts implements Serializable {
    private static final long serialVersionUID = 1;
    /** Longest piece of age, days: tables hold one line for each day of it. */
    static final int LONGEST = 512;

    /** Pieces of a year up to this age; beyond it the law is taken as it is in the years after. */
    private static final int YEARLY_UNTIL = 16;

    private static final int BEYOND = 4;
    /** Per year: a hazard that underflows would make a death impossible. */
    private static final double LEAST_FACTOR = 1e-5;

    private final Map<String, Integer> numbers = new HashMap<>();
    private final int[] from;
    private final short[] pieceAt;
    /** Which parameter of the rates holds in each piece. */
    private final int[] bands;
    /** By cohort and piece. */
    private final double[][] factors;

    private HiddenCohorts(HiddenSettings settings, List<Integer> limits, int cohorts) {
        TreeSet<Integer> ends = new TreeSet<>(limits);
        ends.addAll(settings.bandLimitDays());
        ends.add(HiddenSettings.MAX_AGE_DAYS + 1);
        List<Integer> starts = new ArrayList<>(List.of(0));
        int at = 0;
        for (int end : ends) {
            while (end - at > LONGEST) {
                at += LONGEST;
                starts.add(at);
            }
            at = end;
            starts.add(at);
        }
        from = starts.stream().mapToInt(i -> i).toArray();
        int pieces = from.length - 1;
        pieceAt = new short[HiddenSettings.MAX_AGE_DAYS + 1];
        bands = new int[pieces];
        for (int p = 0; p < pieces; p++) {
            Arrays.fill(pieceAt, from[p], from[p + 1], (short) p);
            for (int limit : settings.bandLimitDays()) {
                bands[p] += from[p] >= limit ? 1 : 0;
            }
        }
        factors = new double[cohorts][pieces];
    }

    /** One cohort, its rates the fitted ones. */
    public static HiddenCohorts one(HiddenSettings settings) {
        HiddenCohorts cohorts = new HiddenCohorts(settings, List.of(), 1);
        Arrays.fill(cohorts.factors[0], 1);
        return cohorts;
    }

    /** One cohort for each law, by its name. */
    public static HiddenCohorts of(SortedMap<String, LifeLaw> laws, HiddenSettings settings) {
        double year = HiddenParameters.DAYS_PER_YEAR;
        List<Integer> limits = new ArrayList<>();
        for (int y = 1; y <= YEARLY_UNTIL; y++) {
            limits.add((int) Math.round(y * year));
        }
        int last = limits.get(limits.size() - 1);
        HiddenCohorts cohorts = new HiddenCohorts(settings, limits, laws.size());
        laws.forEach((name, law) -> {
            int number = cohorts.numbers.size();
            cohorts.numbers.put(name, number);
            for (int p = 0; p + 1 < cohorts.from.length; p++) {
                double begin = Math.min(cohorts.from[p], last);
                double end = cohorts.from[p] < last ? cohorts.from[p + 1] : last + BEYOND * year;
                double hazard = (law.cumulativeHazard(end) - law.cumulativeHazard(begin)) / (end - begin) * year;
                cohorts.factors[number][p] = Math.max(LEAST_FACTOR, hazard);
            }
        });
        return cohorts;
    }

    /**
     * Number of a cohort.
     *
     * @throws IllegalArgumentException for a name without a law
     */
    int number(String cohort) {
        Integer number = numbers.get(cohort);
        if (number == null) {
            throw new IllegalArgumentException(
                    "no law of life for cohort " + cohort + "; known are " + numbers.keySet());
        }
        return number;
    }

    int size() {
        return factors.length;
    }

    int pieces() {
        return bands.length;
    }

    /** Age at which a piece begins; one past the last piece, the day after the last age reckoned with. */
    int from(int piece) {
        return from[piece];
    }

    int pieceAt(int age) {
        return pieceAt[age];
    }

    int band(int piece) {
        return bands[piece];
    }

    double factor(int cohort, int piece) {
        return factors[cohort][piece];
    }
}
