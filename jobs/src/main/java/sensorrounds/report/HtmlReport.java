package sensorrounds.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;

/**
 * Writes the report: one page that stands on its own, with nothing fetched from anywhere. It reads without scripts; a small
 * script adds sorting, filters and pointer read-outs. The page is HTML that is also well-formed XML, and holds no time of
 * writing, so equal data gives equal bytes.
 */
public final class HtmlReport {
    private static final List<Section> SECTIONS = List.of(
            new SummarySection(),
            new UnmonitoredSection(),
            new ReplacementSection(),
            new RecurringSection(),
            new FollowUpSection(),
            new HeldSection(),
            new WatchSection(),
            new StockSection(),
            new BudgetSection(),
            new SurvivalSection(),
            new CalendarSection(),
            new AheadSection(),
            new EffectsSection(),
            new QualitySection(),
            new CautionsSection(),
            new SheetsSection());

    private HtmlReport() {}

    /** Writes the whole page, with every list as long as it is given. */
    public static void write(ReportData data, Appendable out) throws IOException {
        write(data, Integer.MAX_VALUE, out);
    }

    /**
     * Writes the whole page.
     *
     * @param listRows lines shown of each of the long lists
     * @param out takes the page as UTF-8 text when written to a file
     * @throws IOException when {@code out} fails
     */
    public static void write(ReportData data, int listRows, Appendable out) throws IOException {
        String title = "Sensor Rounds: report as of " + data.run().asOf();
        new PageFrame(title, resource("report.css"), resource("report.js"))
                .write(out, h -> body(h, data, data.top(listRows)));
    }

    private static void body(Html h, ReportData data, ReportData shown) {
        h.open("body");
        h.element("a", "Skip to the report", "href", "#start", "class", "skip").line();
        h.open("header");
        h.element("p", "Sensor Rounds", "class", "house");
        h.element("h1", "Tyre-pressure sensors as of " + data.run().asOf());
        h.open("p", "class", "under");
        h.text(Format.count(data.run().vehicles(), "vehicle") + ", "
                + Format.count(data.run().sensorsInService(), "sensor") + " in service, visits from ");
        Cells.day(h, data.run().firstVisit());
        h.text(" to ");
        Cells.day(h, data.run().lastVisit());
        h.text(". Run ").data(data.run().runId()).text(".").close("p");
        h.close("header").line();
        h.open("nav", "aria-label", "Sections").open("ol");
        SECTIONS.forEach(
                s -> h.open("li").element("a", s.title(), "href", "#" + s.id()).close());
        h.close("ol").close("nav").line();
        h.open("main").line();
        SECTIONS.forEach(s -> section(h, s, s.needsWholeLists() ? data : shown));
        h.close("main").line();
        h.close("body").line();
    }

    private static void section(Html h, Section s, ReportData data) {
        h.open("section", "id", s.id(), "aria-labelledby", s.id() + "-title");
        h.element("h2", s.title(), "id", s.id() + "-title");
        h.element("p", s.question(), "class", "question");
        h.element("p", s.howToRead(data), "class", "how").line();
        s.body(h, data);
        h.close("section").line();
    }

    static String hash(String content) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256")
                    .digest(Html.wrapRaw(content).getBytes(StandardCharsets.UTF_8));
            return "sha256-" + Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    static String resource(String name) {
        try (InputStream in = HtmlReport.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program's own file " + name + " is missing from its jar");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("\r\n", "\n")
                    .strip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
