package sensorrounds.proposal;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sensorrounds.intake.TextShape;

/** Headers and words in a plain form: lower case, no accents, no punctuation, no plural s. */
final class Texts {
    private Texts() {}

    /** Words in lower case without accents; {@code Außenluft °C} gives aussenluft, c. */
    static List<String> tokens(String text) {
        String split = text.replace("kPa", "kpa")
                .replaceAll("(?<=[a-z])(?=[A-Z])", " ")
                .replace("ß", "ss")
                .replace("ø", "o");
        String plain = Normalizer.normalize(split, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT);
        List<String> tokens = new ArrayList<>();
        for (String token : plain.split("[^a-z0-9]+")) {
            if (!token.isEmpty()) {
                tokens.add(singular(token));
            }
        }
        return tokens;
    }

    /** The words in one line. */
    static String plain(String text) {
        return String.join(" ", tokens(text));
    }

    /** Letters and digits only, in upper case: N/S/F gives NSF. */
    static String squeezed(String text) {
        return Normalizer.normalize(text.replace("ß", "ss"), Normalizer.Form.NFD)
                .replaceAll("[^A-Za-z0-9]", "")
                .toUpperCase(Locale.ROOT);
    }

    /** What a personal text looks like, without what it says: letters as A and a, digits as 9. */
    static String shape(String text) {
        String shape = TextShape.of(text);
        return shape.length() <= 24 ? shape : shape.substring(0, 24) + "…";
    }

    private static String singular(String token) {
        return token.length() > 3 && token.endsWith("s") && !token.endsWith("ss")
                ? token.substring(0, token.length() - 1)
                : token;
    }
}
