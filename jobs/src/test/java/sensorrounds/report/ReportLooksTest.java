package sensorrounds.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Contrast of the colours in report.css, light, dark and on paper. Formula and thresholds: WCAG 2.2, definitions of relative
 * luminance and contrast ratio; 1.4.3 asks 4.5 for text, 1.4.11 asks 3 for graphics.
 */
class ReportLooksTest {
    private static final Pattern VARIABLE = Pattern.compile("--([a-z-]+):\\s*(#[0-9a-f]{6})\\b");

    /** 21 for black on white; 4.48 for #777777 on white, the well-known grey that just fails (value from memory). */
    @Test
    void reckonsContrastAsTheStandardDoes() {
        assertThat(contrast("#000000", "#ffffff")).isCloseTo(21, within(1e-9));
        assertThat(contrast("#777777", "#ffffff")).isCloseTo(4.48, within(0.005));
    }

    @Test
    void textAndGraphicsStandOutInEveryTheme() {
        List<Map<String, String>> themes = themes();
        assertThat(themes).hasSize(3);
        for (Map<String, String> theme : themes) {
            for (String paper : List.of("paper", "raised")) {
                for (String text : List.of("ink", "soft", "mark", "heed")) {
                    assertThat(contrast(theme.get(text), theme.get(paper)))
                            .as(text + " on " + paper + " of " + theme)
                            .isGreaterThanOrEqualTo(4.5);
                }
                assertThat(contrast(theme.get("edge"), theme.get(paper)))
                        .as("edge on " + paper)
                        .isGreaterThanOrEqualTo(3);
            }
            // The button that prints: paper on mark.
            assertThat(contrast(theme.get("paper"), theme.get("mark"))).isGreaterThanOrEqualTo(4.5);
        }
    }

    /** Curves are told apart by their strokes, not by colour alone (WCAG 2.2, 1.4.1). */
    @Test
    void everyCohortHasAStrokeOfItsOwn() {
        String css = HtmlReport.resource("report.css");
        Map<String, Integer> strokes = new HashMap<>();
        for (int i = 1; i <= CohortsChart.MOST; i++) {
            Matcher m = Pattern.compile("\\.style-" + i + " \\{([^}]*)}").matcher(css);
            assertThat(m.find()).as("style " + i).isTrue();
            Matcher dash = Pattern.compile("stroke-dasharray: ([0-9 ]+)").matcher(m.group(1));
            strokes.put(dash.find() ? dash.group(1) : "full", i);
        }
        assertThat(strokes).hasSize(CohortsChart.MOST);
    }

    private static List<Map<String, String>> themes() {
        return Pattern.compile(":root \\{([^}]*)}")
                .matcher(HtmlReport.resource("report.css"))
                .results()
                .map(r -> {
                    Map<String, String> colours = new HashMap<>();
                    VARIABLE.matcher(r.group(1)).results().forEach(v -> colours.put(v.group(1), v.group(2)));
                    return colours;
                })
                .toList();
    }

    private static double contrast(String a, String b) {
        double x = luminance(a);
        double y = luminance(b);
        return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
    }

    private static double luminance(String colour) {
        return 0.2126 * channel(colour, 1) + 0.7152 * channel(colour, 3) + 0.0722 * channel(colour, 5);
    }

    private static double channel(String colour, int at) {
        double c = Integer.parseInt(colour.substring(at, at + 2), 16) / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
}
