package sensorrounds.run;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** The few names nearest to one that was not found, by single edits (Levenshtein 1966), case left aside. */
final class NearNames {
    private static final int MOST = 5;

    private record Name(int edits, String name) {}

    private final String wanted;
    private final TreeSet<Name> nearest =
            new TreeSet<>(Comparator.comparingInt(Name::edits).thenComparing(Name::name));

    NearNames(String wanted) {
        this.wanted = wanted.toUpperCase(Locale.ROOT);
    }

    void offer(String name) {
        nearest.add(new Name(edits(wanted, name.toUpperCase(Locale.ROOT)), name));
        if (nearest.size() > MOST) {
            nearest.pollLast();
        }
    }

    /** Nearest first. */
    List<String> names() {
        return nearest.stream().map(Name::name).toList();
    }

    /** Fewest single insertions, deletions and substitutions that turn one into the other. */
    static int edits(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                int same = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(Math.min(row[j], row[j - 1]) + 1, diagonal + same);
                diagonal = above;
            }
        }
        return row[b.length()];
    }
}
