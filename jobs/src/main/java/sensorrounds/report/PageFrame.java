package sensorrounds.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.function.Consumer;

/**
 * What every page is framed by: a document that stands on its own, with its own style, its own script or none, and a content
 * security policy (W3C Content Security Policy Level 3) that admits these by their SHA-256 and nothing else, so that even a
 * slip in escaping could neither run a script nor call out.
 *
 * @param title shown by the browser
 * @param style content of the style element
 * @param script content of the script element; null for a page without
 */
record PageFrame(String title, String style, String script) {
    /**
     * Writes a page.
     *
     * @param body writes the body element
     * @throws IOException when {@code out} fails
     */
    void write(Appendable out, Consumer<Html> body) throws IOException {
        try {
            Html h = new Html(out);
            h.doctype()
                    .open("html", "lang", "en", "xmlns", "http://www.w3.org/1999/xhtml")
                    .line();
            head(h);
            body.accept(h);
            h.close("html").line();
            h.finish();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    /** The page as text. */
    String text(Consumer<Html> body) {
        StringBuilder out = new StringBuilder();
        try {
            write(out, body);
        } catch (IOException e) {
            throw new UncheckedIOException("a page in memory cannot fail to be written", e);
        }
        return out.toString();
    }

    private void head(Html h) {
        h.open("head");
        h.empty("meta", "charset", "utf-8");
        String scripts = script == null ? "" : "; script-src '" + HtmlReport.hash(script) + "'";
        h.empty(
                "meta",
                "http-equiv",
                "Content-Security-Policy",
                "content",
                "default-src 'none'; style-src '" + HtmlReport.hash(style) + "'" + scripts
                        + "; base-uri 'none'; form-action 'none'");
        h.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        h.empty("meta", "name", "color-scheme", "content", "light dark");
        h.element("title", title);
        h.raw("style", style);
        if (script != null) {
            h.line();
            h.raw("script", script);
        }
        h.close("head").line();
    }
}
