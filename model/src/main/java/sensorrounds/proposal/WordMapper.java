package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sensorrounds.intake.Field;
import sensorrounds.intake.FieldTrial;

/** The words of one column → the words of its field. What is not known, or has two meanings, stays a gap. */
final class WordMapper {
    /** More different texts than any list of words has: the column is something else. */
    private static final int MOST_WORDS = 60;

    private final FieldTrial trial;
    private final Map<String, Map<String, String>> words = new LinkedHashMap<>();
    private final List<Decision> decisions = new ArrayList<>();

    WordMapper(FieldTrial trial) {
        this.trial = trial;
    }

    Map<String, Map<String, String>> words() {
        return words;
    }

    List<Decision> decisions() {
        return decisions;
    }

    void map(Column column, Field field) {
        if (column.counts().size() > MOST_WORDS && field != Field.BATTERY) {
            decisions.add(Decision.open(
                    "words." + field.key(),
                    column.written(),
                    "different texts, too many for words: " + column.counts().size(),
                    null,
                    "is \"" + column.header() + "\" really " + field.key() + "?"));
            return;
        }
        Map<String, String> mapped = new LinkedHashMap<>();
        int bare = 0;
        String bareExample = null;
        for (Map.Entry<String, Integer> entry : column.counts().entrySet()) {
            String text = entry.getKey();
            if (trial.takes(field, text)) {
                continue;
            }
            if (field == Field.BATTERY && text.matches("\\d+([.,]\\d+)?")) {
                bare += entry.getValue();
                bareExample = bareExample == null ? text : bareExample;
                continue;
            }
            WordHints.Meaning meaning = WordHints.of(field, text);
            add(field, text, entry.getValue(), meaning, mapped);
        }
        if (bare > 0) {
            decisions.add(Decision.open(
                    "words.battery",
                    bare,
                    "battery reports that are bare figures",
                    bareExample,
                    "percent, volts or months? Write the unit into the file; a bare figure is refused"));
        }
        if (!mapped.isEmpty()) {
            words.put(field.key(), mapped);
        }
    }

    private void add(Field field, String text, int rows, WordHints.Meaning meaning, Map<String, String> mapped) {
        String entry = "words." + field.key() + "." + text;
        if (meaning == null || meaning.word() == null) {
            mapped.put(text, LayoutProposal.GAP);
            String question = meaning == null ? "what does the word mean?" : meaning.question();
            decisions.add(Decision.open(entry, rows, "rows with a word that cannot be told", text, question));
        } else {
            mapped.put(text, meaning.word());
            decisions.add(Decision.sure(entry, "\"" + meaning.word() + "\"", rows, 0, "rows with this word", null));
        }
    }
}
