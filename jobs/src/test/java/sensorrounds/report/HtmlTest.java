package sensorrounds.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Expected escapes: HTML Living Standard 13.3 (serialising) and XML 1.0, sections 2.2 (characters) and 4.6 (entities). */
class HtmlTest {
    private final StringBuilder out = new StringBuilder();
    private final Html html = new Html(out);

    @Test
    void escapesMarkupInText() {
        html.element("p", "<script>alert(\"1\")</script> & 'x'");
        assertThat(out).hasToString("<p>&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; &#39;x&#39;</p>");
    }

    @Test
    void escapesQuotesInAttributes() {
        html.empty("input", "value", "\" onfocus=\"alert(1)");
        assertThat(out).hasToString("<input value=\"&quot; onfocus=&quot;alert(1)\" />");
    }

    @Test
    void replacesCharactersThatXmlDoesNotAllow() {
        html.text("a\u0000b\u001bc\ufffed\ud800e");
        assertThat(out).hasToString("a\ufffdb\ufffdc\ufffdd\ufffde");
    }

    @Test
    void keepsCharactersBeyondTheFirstPlane() {
        html.text("wheel \ud83d\udede");
        assertThat(out).hasToString("wheel \ud83d\udede");
    }

    /** Marks of Unicode Annex 9, table 1 and section 2.6; U+202E shows "exe.png" for "gnp.exe". */
    @Test
    void spellsOutDirectionMarks() {
        html.data("A\u202Egnp.exe\u2069\u200F");
        assertThat(out).hasToString("<bdi>A‹U+202E›gnp.exe‹U+2069›‹U+200F›</bdi>");
    }

    @Test
    void isolatesTextWrittenFromTheRight() {
        html.data("\u05d0\u05d1 12");
        assertThat(out).hasToString("<bdi>\u05d0\u05d1 12</bdi>");
    }

    @Test
    void saysWhenDataIsMissing() {
        html.data(null).data(" ");
        assertThat(out.toString().split("not known", -1)).hasSize(3);
    }

    @Test
    void cutsVeryLongDataAndSaysHowLongItWas() {
        String cut = Html.shorten("x".repeat(5_000));
        assertThat(cut).startsWith("x".repeat(260) + "… (").endsWith("5\u202f000 characters)");
        assertThat(Html.shorten("x".repeat(300))).hasSize(300);
    }

    @Test
    void neverCutsAPairOfSurrogatesInTwo() {
        String cut = Html.shorten("x".repeat(259) + "\ud83d\udede".repeat(100));
        assertThat(cut.codePoints().anyMatch(c -> c >= 0xD800 && c <= 0xDFFF)).isFalse();
    }

    @Test
    void leavesOutAttributesWithoutAValue() {
        html.open("p", "class", null, "id", "a").close();
        assertThat(out).hasToString("<p id=\"a\"></p>");
    }

    @Test
    void refusesToNestWrongly() {
        html.open("p").open("em");
        assertThatThrownBy(() -> html.close("p"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("<p> while <em>");
        assertThatThrownBy(html::finish)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("em, p");
    }

    @Test
    void refusesNamesThatAreNone() {
        assertThatThrownBy(() -> html.open("p onclick=x"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("p onclick=x");
        assertThatThrownBy(() -> html.open("p", "a b", "c"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("a b");
    }

    @Test
    void refusesRawTextThatWouldEndItself() {
        assertThatThrownBy(() -> html.raw("script", "var s = '</script>'"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("script holds");
    }
}
