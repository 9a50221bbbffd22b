package sensorrounds.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;
import sensorrounds.report.ReportData.Listed;
import sensorrounds.review.WarningCounts;

class HtmlReportTest {
    private static final String PRECEDING_HEADS = "//h1 | //h2 | //h3 | //h4";

    @Test
    void equalDataGivesEqualBytes() {
        assertThat(Page.of(SampleReport.realistic()).text())
                .isEqualTo(Page.of(SampleReport.realistic()).text());
    }

    @Test
    void orderOfTheListsDoesNotShow() {
        ReportData d = SampleReport.realistic();
        ReportData shuffled = new ReportData(
                d.run(),
                mixed(d.fits()),
                mixed(d.curves()),
                mixed(d.ranked()),
                mixed(d.unmonitored()),
                mixed(d.recurring()),
                mixed(d.watch()),
                mixed(d.followUps()),
                mixed(d.stock()),
                mixed(d.parts()),
                mixed(d.readers()),
                mixed(d.findings()),
                d.failureCauses(),
                d.nextPlannedVisits(),
                d.depots(),
                mixed(d.ratios()),
                d.totals(),
                new WarningCounts.Summary(
                        mixed(d.warnings().curve()),
                        mixed(d.warnings().trends()),
                        mixed(d.warnings().comebacks()),
                        mixed(d.warnings().noFaults()),
                        mixed(d.warnings().falseFlags())),
                new SurvivalFacts(
                        mixed(d.survival().incidence()),
                        mixed(d.survival().comparisons()),
                        d.survival().preventiveWarningShare(),
                        mixed(d.survival().ahead()),
                        mixed(d.survival().calendar()),
                        d.survival().vehicles()),
                d.decisions(),
                Map.of());
        assertThat(Page.of(shuffled).text()).isEqualTo(Page.of(d).text());
    }

    @Test
    void doesNotFollowTheLanguageOfTheMachine() {
        String expected = Page.of(SampleReport.realistic()).text();
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertThat(Page.of(SampleReport.realistic()).text()).isEqualTo(expected);
        } finally {
            Locale.setDefault(before);
        }
    }

    /** Nothing in the page may make a browser fetch: HTML Living Standard, attributes and CSS functions that name a URL. */
    @Test
    void fetchesNothing() {
        Page page = Page.of(SampleReport.realistic());
        assertThat(page.all(
                        "//@src/.. | //@srcset/.. | //@data/.. | //@action/.. | //link | //img | //iframe | //object"))
                .isEmpty();
        assertThat(page.all("//*[@href][not(starts-with(@href, '#'))]")).isEmpty();
        assertThat(HtmlReport.resource("report.css")).doesNotContain("url(", "@import");
        assertThat(HtmlReport.resource("report.js")).doesNotContain("fetch(", "XMLHttpRequest", "import(", "innerHTML");
        assertThat(page.text().replace("http://www.w3.org/1999/xhtml", "").replace("http://www.w3.org/2000/svg", ""))
                .doesNotContain("http:", "https:");
    }

    /** W3C Content Security Policy Level 3, 8.4: the hash is taken over the element's text as it stands in the page. */
    @Test
    void admitsItsOwnStyleAndScriptOnly() throws Exception {
        String text = Page.of(SampleReport.realistic()).text();
        for (String tag : List.of("style", "script")) {
            Matcher m = Pattern.compile("<" + tag + ">(.*?)</" + tag + ">", Pattern.DOTALL)
                    .matcher(text);
            assertThat(m.find()).isTrue();
            byte[] digest =
                    MessageDigest.getInstance("SHA-256").digest(m.group(1).getBytes(StandardCharsets.UTF_8));
            assertThat(text)
                    .contains(tag + "-src &#39;sha256-" + Base64.getEncoder().encodeToString(digest) + "&#39;");
        }
        assertThat(text).contains("default-src &#39;none&#39;");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script>",
                "\"><img src=x onerror=alert(1)>",
                "' onmouseover='alert(1)",
                "</title></style></script><script>alert(1)</script>",
                "]]><script>alert(1)</script>",
                "&lt;b&gt; & <b>",
                "javascript:alert(1)",
                "V-1\u202E\u2066\u200Fgnp.exe",
                "\u0000\u0007\u001b[31m\ud800"
            })
    void textFromLogsStaysText(String hostile) {
        Page page = Page.of(SampleReport.withText(hostile));
        assertThat(page.all("//script")).hasSize(1);
        assertThat(page.all("//style")).hasSize(1);
        assertThat(page.all("//img | //b")).isEmpty();
        assertThat(page.all("//*[@*[starts-with(name(), 'on')]]")).isEmpty();
        assertThat(page.all("//*[@href][not(starts-with(@href, '#'))]")).isEmpty();
        assertThat(page.text()).doesNotContain("\u202e", "\u2066", "\u200f", "\u001b");
        // Same skeleton as with harmless text: no element came or went.
        assertThat(page.all("//*"))
                .hasSameSizeAs(Page.of(SampleReport.withText("V-1")).all("//*"));
    }

    @Test
    void veryLongTextIsCutEverywhere() {
        Page page = Page.of(SampleReport.withText("x".repeat(50_000)));
        assertThat(page.all("//bdi"))
                .allSatisfy(e -> assertThat(e.getTextContent()).hasSizeLessThanOrEqualTo(Html.LONGEST_STORY))
                .filteredOn(e -> e.getTextContent().length() > Html.LONGEST_DATA + 60)
                .as("only the one story may be longer")
                .hasSize(1);
    }

    @Test
    void namesNoTechnician() {
        assertThat(Page.of(SampleReport.realistic()).text()).doesNotContain("tech-02", "tech-04");
    }

    @Test
    void everySectionOpensWithItsQuestionAndHowToReadIt() {
        for (ReportData data : List.of(SampleReport.realistic(), SampleReport.empty())) {
            List<Element> sections = Page.of(data).all("//main/section");
            assertThat(sections).hasSize(16);
            assertThat(sections).allSatisfy(s -> {
                assertThat(s.getElementsByTagName("h2").getLength()).isEqualTo(1);
                List<Element> paragraphs = elements(s, "p");
                assertThat(paragraphs.get(0).getTextContent()).endsWith("?");
                assertThat(paragraphs.get(1).getAttribute("class")).isEqualTo("how");
                assertThat(paragraphs.get(1).getTextContent()).hasSizeGreaterThan(80);
            });
        }
    }

    @Test
    void anEmptyRunSaysSoInEverySection() {
        Page page = Page.of(SampleReport.empty());
        for (String id : List.of(
                "unmonitored",
                "replace",
                "recurring",
                "follow-ups",
                "did-it-hold",
                "watch",
                "stock",
                "budget",
                "survival",
                "quality",
                "sheets")) {
            assertThat(elements(page.section(id), "p"))
                    .as(id)
                    .anySatisfy(p -> assertThat(p.getAttribute("class")).isEqualTo("nothing"));
        }
        assertThat(page.words("start")).contains("No row was read");
    }

    @Test
    void linksLeadSomewhereAndIdsAreUnique() {
        Page page = Page.of(SampleReport.realistic());
        List<String> ids =
                page.all("//*[@id]").stream().map(e -> e.getAttribute("id")).toList();
        Set<String> unique = new HashSet<>(ids);
        assertThat(ids).hasSameSizeAs(unique);
        assertThat(page.all("//a[@href]"))
                .isNotEmpty()
                .allSatisfy(
                        a -> assertThat(unique).contains(a.getAttribute("href").substring(1)));
        assertThat(page.all("//*[@aria-labelledby]"))
                .allSatisfy(e -> assertThat(unique).contains(e.getAttribute("aria-labelledby")));
    }

    /** WCAG 2.2, 1.3.1 (structure by markup) and 1.1.1 (text alternatives); techniques H39, H42 and H63. */
    @Test
    void readsWithoutSight() {
        Page page = Page.of(SampleReport.realistic());
        int level = 1;
        for (Element head : page.all(PRECEDING_HEADS)) {
            int now = head.getTagName().charAt(1) - '0';
            assertThat(now).as(head.getTextContent()).isLessThanOrEqualTo(level + 1);
            level = now;
        }
        assertThat(page.all("//table"))
                .allSatisfy(t -> assertThat(elements(t, "caption")).hasSize(1));
        assertThat(page.all("//th[not(@scope)]")).isEmpty();
        assertThat(page.all("//svg[not(@aria-hidden='true') and not(@role='img' and string-length(@aria-label) > 20)]"))
                .isEmpty();
        assertThat(page.all("//html[@lang='en']")).hasSize(1);
        assertThat(page.all("//a[@class='skip'][@href='#start']")).hasSize(1);
    }

    /** A chart must not be the only place of its figures (WCAG 2.2, 1.1.1). */
    @Test
    void everyChartHasItsFiguresInATable() {
        Page page = Page.of(SampleReport.realistic());
        assertThat(page.all("//section[@id='survival']//figure[.//*[@class='field']]"))
                .hasSize(3)
                .allSatisfy(f -> assertThat(elements(f, "table")).hasSize(1));
        assertThat(page.all("//section[@id='survival']//figure[.//*[contains(@class, 'cohort')]]//table/caption"))
                .extracting(Element::getTextContent)
                .containsExactly("Share ended by each cause by age, all sensors");
        assertThat(page.words("stock")).contains("All parts, depots and months as a table");
    }

    @Test
    void tellsAFailureOfTheTargetAsItIs() {
        Appendable full = new Appendable() {
            @Override
            public Appendable append(CharSequence s) throws IOException {
                throw new IOException("no space left");
            }

            @Override
            public Appendable append(CharSequence s, int start, int end) throws IOException {
                throw new IOException("no space left");
            }

            @Override
            public Appendable append(char c) throws IOException {
                throw new IOException("no space left");
            }
        };
        assertThatThrownBy(() -> HtmlReport.write(SampleReport.empty(), full))
                .isInstanceOf(IOException.class)
                .hasMessage("no space left");
    }

    static List<Element> elements(Element within, String tag) {
        List<Element> found = new ArrayList<>();
        for (int i = 0; i < within.getElementsByTagName(tag).getLength(); i++) {
            found.add((Element) within.getElementsByTagName(tag).item(i));
        }
        return found;
    }

    private static <T> List<T> mixed(List<T> list) {
        List<T> mixed = new ArrayList<>(list);
        Collections.shuffle(mixed, new Random(5));
        return mixed;
    }

    private static <T> Listed<T> mixed(Listed<T> list) {
        return new Listed<>(mixed(list.rows()), list.total());
    }
}
