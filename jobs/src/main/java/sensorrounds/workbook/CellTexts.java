package sensorrounds.workbook;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Texts of cells: those a workbook holds once and cells name by number, and the way in which all of them are written. */
final class CellTexts {
    /** Beyond this a workbook is not kept by people: 200 million bytes of text. */
    private static final long MOST_CHARACTERS = 100_000_000;
    /** A character that XML cannot hold, by its number (ECMA-376 part 1, 22.9.2.19). */
    private static final Pattern ESCAPED = Pattern.compile("_x([0-9A-Fa-f]{4})_");

    private final List<String> texts = new ArrayList<>();

    /** None. */
    CellTexts() {}

    CellTexts(Xml shared) throws IOException {
        long characters = 0;
        while (shared.next()) {
            if (shared.starts("si")) {
                String text = read(shared, "si");
                texts.add(text);
                characters += text.length();
                if (characters > MOST_CHARACTERS) {
                    throw new WorkbookProblem(
                            "a workbook with more text than can be held",
                            "more than " + characters + " characters",
                            "at most " + MOST_CHARACTERS + " in all its cells",
                            "split the workbook, or export the sheet as CSV");
                }
            }
        }
    }

    /** @param index as the cell has it */
    String get(String index) throws IOException {
        try {
            return texts.get(Integer.parseInt(index.strip()));
        } catch (NumberFormatException | IndexOutOfBoundsException e) {
            throw WorkbookProblem.damaged("a cell names the text " + index + " of " + texts.size());
        }
    }

    /** Text in the element that starts here, its runs put together; readings of characters beside it are no text. */
    static String read(Xml xml, String element) throws IOException {
        StringBuilder text = new StringBuilder();
        boolean beside = false;
        while (xml.next() && !xml.ends(element)) {
            if (xml.starts("rPh") || xml.ends("rPh")) {
                beside = xml.starts("rPh");
            } else if (xml.starts("t")) {
                String run = xml.text();
                text.append(beside ? "" : run);
            }
        }
        return plain(text.toString());
    }

    static String plain(String text) {
        if (!text.contains("_x")) {
            return text;
        }
        Matcher escaped = ESCAPED.matcher(text);
        return escaped.replaceAll(
                m -> Matcher.quoteReplacement(String.valueOf((char) Integer.parseInt(m.group(1), 16))));
    }
}
