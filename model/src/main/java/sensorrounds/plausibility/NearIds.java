package sensorrounds.plausibility;

/** Which slip of hand or spreadsheet turns one sensor ID into another. */
final class NearIds {
    /** Pairs that are mistaken for one another in writing, and are both hexadecimal digits (common practice, no source). */
    private static final String[] CONFUSED = {"B8", "0D", "17", "6B", "5B", "38", "EF", "C6", "49", "08", "27"};

    private NearIds() {}

    /**
     * @param wrong the ID suspected
     * @param right the ID it may stand for
     * @return the slip in words, or null when no single slip explains it
     */
    static String slip(String wrong, String right) {
        if (wrong.equals(right)) {
            return null;
        }
        if (wrong.length() == right.length()) {
            return sameLength(wrong, right);
        }
        if (wrong.length() < right.length() && withoutZeros(wrong).equals(withoutZeros(right))) {
            return "leading zeros lost, as in a spreadsheet";
        }
        if (wrong.length() == right.length() - 1) {
            return right.endsWith(wrong)
                    ? "the first digit left out"
                    : isOneLeftOut(wrong, right) ? "a digit left out" : null;
        }
        return wrong.length() == right.length() + 1 && isOneLeftOut(right, wrong) ? "a digit too many" : null;
    }

    private static String sameLength(String wrong, String right) {
        int first = 0;
        while (wrong.charAt(first) == right.charAt(first)) {
            first++;
        }
        int last = wrong.length() - 1;
        while (wrong.charAt(last) == right.charAt(last)) {
            last--;
        }
        if (first == last) {
            char a = wrong.charAt(first);
            char b = right.charAt(first);
            return isConfused(a, b)
                    ? a + " written for " + b + ", which look alike"
                    : "one digit differs, " + a + " for " + b;
        }
        boolean exchanged = last == first + 1
                && wrong.charAt(first) == right.charAt(last)
                && wrong.charAt(last) == right.charAt(first);
        return exchanged ? "two digits exchanged" : null;
    }

    private static boolean isConfused(char a, char b) {
        for (String pair : CONFUSED) {
            if (pair.indexOf(a) >= 0 && pair.indexOf(b) >= 0) {
                return true;
            }
        }
        return false;
    }

    private static boolean isOneLeftOut(String shorter, String longer) {
        int same = 0;
        while (same < shorter.length() && shorter.charAt(same) == longer.charAt(same)) {
            same++;
        }
        return shorter.substring(same).equals(longer.substring(same + 1));
    }

    private static String withoutZeros(String id) {
        int from = 0;
        while (from < id.length() && id.charAt(from) == '0') {
            from++;
        }
        return id.substring(from);
    }
}
