package sensorrounds.ingest;

import java.util.List;
import java.util.stream.Collectors;
import sensorrounds.intake.TextShape;

/**
 * Names of columns and keys that a message may show. A first line that is no header holds values, which may be plates, numbers
 * and names of people; a key with a figure in it may be a plate.
 */
final class UnknownNames {
    private static final int LONGEST = 400;

    private UnknownNames() {}

    /** The names, those with a figure by their shape only. */
    static String shown(List<String> names) {
        String all = names.stream().map(UnknownNames::shown).collect(Collectors.joining(", "));
        return all.length() > LONGEST ? all.substring(0, LONGEST) + " …" : all;
    }

    private static String shown(String name) {
        return hasFigure(name) ? TextShape.of(name) : name;
    }

    /** The names of a first line of which none is known; not at all when one has a figure, since it may be a line of values. */
    static String ofFirstLine(List<String> names) {
        return names.stream().anyMatch(UnknownNames::hasFigure)
                ? "a first line of " + names.size() + " fields that look like values and not like names"
                : shown(names);
    }

    private static boolean hasFigure(String name) {
        return name.chars().anyMatch(Character::isDigit);
    }
}
