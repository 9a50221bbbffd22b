package sensorrounds.intake;

import java.util.List;
import java.util.Map;
import java.util.Set;
import sensorrounds.visit.Side;

/** Layouts for tests. */
final class Layouts {
    private Layouts() {}

    static Layout withDates(String date, String dateTime) {
        return layout('.', date, dateTime, null, Map.of(), Map.of());
    }

    static Layout withComma() {
        return layout(',', null, null, null, Map.of(), Map.of());
    }

    static Layout withConstant(Field field, String text) {
        return layout('.', null, null, null, Map.of(field, text), Map.of());
    }

    static Layout withWords(Side drivingSide, Field field, Map<String, String> words) {
        return layout('.', null, null, drivingSide, Map.of(), Map.of(field, words));
    }

    private static Layout layout(
            char mark,
            String date,
            String dateTime,
            Side drivingSide,
            Map<Field, String> constants,
            Map<Field, Map<String, String>> words) {
        return new Layout(
                "yard",
                List.of("*.csv"),
                ';',
                "UTF-8",
                mark,
                date,
                dateTime,
                drivingSide,
                Map.of(),
                Set.of(),
                constants,
                words);
    }
}
