package sensorrounds.proposal;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import sensorrounds.intake.Field;

/** A header taken apart: its words, the unit it names, and which axle. */
final class HeaderTokens {
    private static final Set<String> FILLERS = Set.of(
            "of", "the", "nr", "no", "num", "number", "by", "to", "in", "at", "for", "code", "bis", "der", "die", "das",
            "de", "du", "le", "la", "da", "axle", "achse", "essieu", "asse", "eje", "value", "wert", "tyre", "reifen");
    private static final Map<String, String> UNITS = Map.ofEntries(
            Map.entry("psi", "psi"),
            Map.entry("kpa", "kPa"),
            Map.entry("bar", "bar"),
            Map.entry("kg", "kg/cm²"),
            Map.entry("kgcm2", "kg/cm²"),
            Map.entry("cm2", "kg/cm²"),
            Map.entry("mi", "mi"),
            Map.entry("mile", "mi"),
            Map.entry("km", "km"),
            Map.entry("kilometre", "km"),
            Map.entry("kilometer", "km"),
            Map.entry("c", "C"),
            Map.entry("celsiu", "C"),
            Map.entry("f", "F"),
            Map.entry("fahrenheit", "F"),
            Map.entry("min", "min"),
            Map.entry("minute", "min"),
            Map.entry("minuten", "min"));
    private static final Set<String> FRONT = Set.of("front", "vorn", "vorne", "avant", "ant", "del", "voor");
    private static final Set<String> REAR = Set.of("rear", "back", "hinten", "arriere", "post", "tra", "achter");

    private final Set<String> words = new HashSet<>();
    private String unit;

    HeaderTokens(String header) {
        for (String token : Texts.tokens(header)) {
            String named = UNITS.get(token);
            words.add(token);
            if (named != null) {
                unit = named;
                words.add(kind(named));
            }
            if (FRONT.contains(token)) {
                words.add("~axle1");
            }
            if (REAR.contains(token)) {
                words.add("~axle2");
            }
        }
    }

    /** Words of the header, and for units and axles a word of their kind. */
    Set<String> all() {
        return words;
    }

    /** The unit named: psi, kPa, bar, kg/cm², mi, km, C, F, min; null for none. */
    String unit() {
        return unit;
    }

    /** Words that a phrase leaves unexplained; units of the field's own kind and fillers need no explanation. */
    int besides(Set<String> phrase, Field field) {
        int left = 0;
        for (String word : words) {
            boolean explained = phrase.contains(word)
                    || word.startsWith("~")
                    || FILLERS.contains(word)
                    || UNITS.containsKey(word) && fits(kind(UNITS.get(word)), phrase, field)
                    || FRONT.contains(word) && phrase.contains("~axle1")
                    || REAR.contains(word) && phrase.contains("~axle2");
            left += explained ? 0 : 1;
        }
        return left;
    }

    private static boolean fits(String kind, Set<String> phrase, Field field) {
        return phrase.contains(kind)
                || switch (kind) {
                    case "~pressure" -> FieldKinds.PRESSURES.contains(field);
                    case "~distance" -> FieldKinds.DISTANCES.contains(field);
                    case "~temperature" -> FieldKinds.TEMPERATURES.contains(field);
                    default -> FieldKinds.MINUTES.contains(field);
                };
    }

    private static String kind(String unit) {
        return switch (unit) {
            case "psi", "kPa", "bar", "kg/cm²" -> "~pressure";
            case "mi", "km" -> "~distance";
            case "C", "F" -> "~temperature";
            default -> "~minute";
        };
    }
}
