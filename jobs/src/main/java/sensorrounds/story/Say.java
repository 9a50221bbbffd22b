package sensorrounds.story;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Small words and figures, the same in all parts of a page. */
final class Say {
    static final String NONE = "–";

    private Say() {}

    static String constant(String name) {
        return name.toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static String count(long n, String noun) {
        return n + " " + noun + (n == 1 ? "" : "s");
    }

    /** 104 310: a space between thousands, at which no line breaks. */
    static String grouped(double x) {
        return String.format(Locale.ROOT, "%,d", Math.round(x)).replace(',', '\u00a0');
    }

    static String figure(double x, int decimals) {
        return Double.isNaN(x) ? NONE : String.format(Locale.ROOT, "%." + decimals + "f", x);
    }

    /** 42 %, at which no line breaks; a decimal where it would else read 0 to 9. */
    static String chance(double p) {
        if (Double.isNaN(p)) {
            return NONE;
        }
        if (p > 0 && p < 0.001) {
            return "<\u00a00.1\u00a0%";
        }
        return figure(100 * p, p < 0.0995 ? 1 : 0) + "\u00a0%";
    }

    /** As {@link #chance}, and never quite certain. */
    static String sure(double p) {
        return p > 0.99 ? ">\u00a099\u00a0%" : chance(p);
    }

    static String plain(double x) {
        return x == Math.rint(x) ? Long.toString((long) x) : Double.toString(x);
    }

    static String day(LocalDate day) {
        return day == null ? NONE : day.toString();
    }

    static String first(String sentence) {
        return sentence.isEmpty()
                ? sentence
                : sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
    }

    /** a, b and c. */
    static String and(List<String> words) {
        if (words.size() < 2) {
            return String.join("", words);
        }
        return String.join(", ", words.subList(0, words.size() - 1)) + " and " + words.get(words.size() - 1);
    }

    /** Those that are not null, one after the other. */
    static String joined(String between, String... parts) {
        return Stream.of(parts).filter(Objects::nonNull).collect(Collectors.joining(between));
    }
}
