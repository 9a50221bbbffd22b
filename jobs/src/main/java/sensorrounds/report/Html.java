package sensorrounds.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import sensorrounds.story.PageText;

/**
 * The only way text gets into the report. Elements are opened and closed in order, so the page is well-formed by
 * construction (it is XML as well as HTML), and all text and attribute values are escaped. Text from logs goes through
 * {@link #data}: it is also isolated, so that a right-to-left mark in an ID cannot reorder what stands around it.
 *
 * <p>Escaping: HTML Living Standard, "Serializing HTML fragments" (&amp;, &lt;, &gt;, quotes in attributes); characters
 * that XML 1.0 section 2.2 does not allow become U+FFFD; direction marks of Unicode Annex 9 are spelled out.
 */
final class Html {
    /** Longer texts are cut on the page; the tables of the run hold them whole. */
    static final int LONGEST_DATA = 300;
    /** Stories run to some 700 characters. */
    static final int LONGEST_STORY = 1500;

    private static final Set<String> VOID = Set.of("br", "hr", "input", "link", "meta");
    private static final String NAME = "[a-zA-Z][a-zA-Z0-9:-]*";

    private final Appendable out;
    private final Deque<String> open = new ArrayDeque<>();

    Html(Appendable out) {
        this.out = out;
    }

    /** @param attributes name, value, name, value; a pair whose value is null is left out */
    Html open(String tag, String... attributes) {
        start(tag, attributes);
        if (VOID.contains(tag)) {
            throw new IllegalArgumentException("<" + tag + "> holds nothing: use empty()");
        }
        append(">");
        open.push(tag);
        return this;
    }

    Html close() {
        return append("</").append(open.pop()).append(">");
    }

    /** Closes the innermost element, which must be {@code tag}; for long stretches where a slip would be hard to see. */
    Html close(String tag) {
        if (!tag.equals(open.peek())) {
            throw new IllegalStateException("closing <" + tag + "> while <" + open.peek() + "> is open");
        }
        return close();
    }

    /** An element without content: void, or one closed at once. */
    Html empty(String tag, String... attributes) {
        start(tag, attributes);
        return append(VOID.contains(tag) ? " />" : "></" + tag + ">");
    }

    /** An element with text of our own. */
    Html element(String tag, String text, String... attributes) {
        return open(tag, attributes).text(text).close();
    }

    /** Text of our own. */
    Html text(String text) {
        return append(escape(text));
    }

    /** Text that came from logs or registers; null reads "not known". */
    Html data(String text) {
        if (text == null || text.isBlank()) {
            return element("span", "not known", "class", "quiet");
        }
        return element("bdi", shorten(text));
    }

    /** As {@link #data}, for sentences of our own around values from logs: only what no story comes near is cut, and no unit leaves its figure. */
    Html story(String text) {
        return element("bdi", shorten(PageText.tied(text), LONGEST_STORY));
    }

    Html line() {
        return append("\n");
    }

    /** Text of our own that an element of raw text holds: style or script. The marks let XML readers pass over it. */
    Html raw(String tag, String content) {
        if (content.contains("]]>") || content.contains("</")) {
            throw new IllegalArgumentException(tag + " holds ]]> or </, which would end it early");
        }
        return append("<" + tag + ">").append(wrapRaw(content)).append("</" + tag + ">");
    }

    /** What {@link #raw} puts between the tags: the text a content security policy hashes. */
    static String wrapRaw(String content) {
        return "/*<![CDATA[*/\n" + content + "\n/*]]>*/";
    }

    /** The document type, before anything else. */
    Html doctype() {
        return append("<!DOCTYPE html>\n");
    }

    /** Fails when an element is still open. */
    void finish() {
        if (!open.isEmpty()) {
            throw new IllegalStateException("still open: " + open);
        }
    }

    static String shorten(String text) {
        return shorten(text, LONGEST_DATA);
    }

    private static String shorten(String text, int longest) {
        if (text.length() <= longest) {
            return text;
        }
        int cut = longest - 40;
        int end = Character.isHighSurrogate(text.charAt(cut - 1)) ? cut - 1 : cut;
        return text.substring(0, end) + "… (" + Format.whole(text.length()) + " characters)";
    }

    static String escape(String text) {
        StringBuilder s = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> appendEscaped(s, c));
        return s.toString();
    }

    private static void appendEscaped(StringBuilder s, int c) {
        switch (c) {
            case '&' -> s.append("&amp;");
            case '<' -> s.append("&lt;");
            case '>' -> s.append("&gt;");
            case '"' -> s.append("&quot;");
            case '\'' -> s.append("&#39;");
            default -> {
                if (isDirectionMark(c)) {
                    s.append(String.format("‹U+%04X›", c));
                } else {
                    s.appendCodePoint(isXmlCharacter(c) ? c : 0xFFFD);
                }
            }
        }
    }

    private static boolean isXmlCharacter(int c) {
        return c == '\t'
                || c == '\n'
                || (c >= 0x20 && c <= 0xD7FF && !(c >= 0x7F && c <= 0x9F))
                || (c >= 0xE000 && c <= 0xFFFD)
                || c >= 0x10000;
    }

    private static boolean isDirectionMark(int c) {
        return (c >= 0x202A && c <= 0x202E)
                || (c >= 0x2066 && c <= 0x2069)
                || c == 0x200E
                || c == 0x200F
                || c == 0x061C;
    }

    private void start(String tag, String... attributes) {
        if (!tag.matches(NAME) || attributes.length % 2 != 0) {
            throw new IllegalArgumentException("not an element: <" + tag + "> with " + attributes.length
                    + " names and values, which must come in pairs");
        }
        append("<").append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            if (!attributes[i].matches(NAME)) {
                throw new IllegalArgumentException("not an attribute name: " + attributes[i]);
            }
            if (attributes[i + 1] != null) {
                append(" ").append(attributes[i]).append("=\"");
                append(escape(attributes[i + 1])).append("\"");
            }
        }
    }

    private Html append(String s) {
        try {
            out.append(s);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
