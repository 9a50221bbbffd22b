package sensorrounds.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Shapes of a chart, written through {@link Html} so that they are escaped and nested like all else. Looks are classes of
 * the style sheet; lengths are in units of the view box, rounded to a tenth. SVG 2, chapters 9 and 10.
 */
final class Svg {
    private final Html h;

    private Svg(Html h) {
        this.h = h;
    }

    /** Opens a picture that scales with the page. {@code label} says in words what it shows; null hides it from readers. */
    static Svg open(Html h, double width, double height, String label, String cssClass) {
        h.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "viewBox",
                "0 0 " + n(width) + " " + n(height),
                "class",
                cssClass,
                "role",
                label == null ? null : "img",
                "aria-label",
                label,
                "aria-hidden",
                label == null ? "true" : null);
        return new Svg(h);
    }

    void close() {
        h.close("svg").line();
    }

    Svg line(double x1, double y1, double x2, double y2, String cssClass) {
        h.empty("line", "x1", n(x1), "y1", n(y1), "x2", n(x2), "y2", n(y2), "class", cssClass);
        return this;
    }

    Svg circle(double x, double y, double r, String cssClass) {
        h.empty("circle", "cx", n(x), "cy", n(y), "r", n(r), "class", cssClass);
        return this;
    }

    Svg rect(double x, double y, double width, double height, String cssClass) {
        h.empty("rect", "x", n(x), "y", n(y), "width", n(width), "height", n(height), "class", cssClass);
        return this;
    }

    /** An invisible field that shows {@code tip} under the pointer. */
    Svg field(double x, double y, double width, double height, String tip) {
        h.open("rect", "x", n(x), "y", n(y), "width", n(width), "height", n(height), "class", "field", "data-tip", tip);
        h.element("title", tip).close();
        return this;
    }

    /** @param anchor start, middle or end */
    Svg text(double x, double y, String anchor, String text, String cssClass) {
        h.element("text", text, "x", n(x), "y", n(y), "text-anchor", anchor, "class", cssClass);
        return this;
    }

    Svg path(Path path, String cssClass) {
        if (!path.isEmpty()) {
            h.empty("path", "d", path.d.toString(), "class", cssClass);
        }
        return this;
    }

    static String n(double x) {
        BigDecimal rounded =
                BigDecimal.valueOf(x).setScale(1, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    /** The commands of a path. */
    static final class Path {
        private final StringBuilder d = new StringBuilder();

        Path to(double x, double y) {
            d.append(d.isEmpty() ? "M" : "L").append(n(x)).append(' ').append(n(y));
            return this;
        }

        /** Goes over first, then up or down: a step curve. */
        Path stepTo(double x, double y) {
            if (d.isEmpty()) {
                return to(x, y);
            }
            d.append("H").append(n(x)).append("V").append(n(y));
            return this;
        }

        Path end() {
            d.append("Z");
            return this;
        }

        boolean isEmpty() {
            return d.isEmpty();
        }
    }
}
