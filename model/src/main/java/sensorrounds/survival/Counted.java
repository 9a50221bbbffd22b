package sensorrounds.survival;

/** Numbers with what they count, right in number, for the causes and notes of fits. */
public final class Counted {
    private Counted() {}

    /** "1 failure", "20 failures", "2.5 failures". */
    public static String failures(double count) {
        return of(count, "failure", "failures");
    }

    /** "1 life", "20 lives". */
    public static String lives(double count) {
        return of(count, "life", "lives");
    }

    /** "1 cohort", "20 cohorts". */
    public static String cohorts(double count) {
        return of(count, "cohort", "cohorts");
    }

    /** The number without a fraction where it has none: weights may be fractions. */
    public static String of(double count, String one, String many) {
        return number(count) + " " + (count == 1 ? one : many);
    }

    /** "20", "2.5". */
    public static String number(double count) {
        return count == Math.rint(count) && Math.abs(count) < 1e15
                ? Long.toString((long) count)
                : Double.toString(count);
    }

    /** Why nothing can be fitted to lives none of which failed. */
    public static String noFailures(double lives) {
        return lives == 1
                ? "the only life has not failed, so only a lower bound on life can be told"
                : "none of " + lives(lives) + " failed, so only a lower bound on life can be told";
    }

    /** Why nothing can be fitted to lives that were never watched. */
    public static String emptyWindows(double lives) {
        return "none of " + lives(lives) + " was under observation for any time; each left on the day it entered";
    }
}
