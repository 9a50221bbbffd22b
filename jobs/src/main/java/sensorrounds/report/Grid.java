package sensorrounds.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;

/**
 * A table of the report: a caption, column heads, one row for each record. On a narrow screen the style sheet turns the
 * rows of a {@link Shape#CARDS} table into cards, which need each cell's head as {@code data-label}; the roles are spelled
 * out because a table laid out as blocks loses them for screen readers.
 */
final class Grid<T> {
    /** What becomes of the table where it is wider than the screen. */
    enum Shape {
        /** Rows become cards. */
        CARDS,
        /** The table scrolls inside its box. */
        SCROLLS
    }

    private enum Kind {
        TEXT,
        /** Text that is sorted by a figure. */
        MEASURED_TEXT,
        NUMBER
    }

    private record Column<T>(String head, Kind kind, Function<T, String> sortKey, BiConsumer<Html, T> cell) {
        String alignment() {
            return kind == Kind.NUMBER ? "number" : null;
        }

        String order() {
            return kind == Kind.TEXT ? null : "number";
        }
    }

    private final Shape shape;
    private final String caption;
    private final List<Column<T>> columns = new ArrayList<>();
    private Function<T, String[]> marks = row -> new String[0];
    private boolean tools;

    Grid(Shape shape, String caption) {
        this.shape = shape;
        this.caption = caption;
    }

    /** A column sorted by the text of its cells. */
    Grid<T> column(String head, BiConsumer<Html, T> cell) {
        columns.add(new Column<>(head, Kind.TEXT, null, cell));
        return this;
    }

    /** A column sorted by a text of its own, e.g. an ISO date. */
    Grid<T> column(String head, Function<T, String> sortKey, BiConsumer<Html, T> cell) {
        columns.add(new Column<>(head, Kind.TEXT, sortKey, cell));
        return this;
    }

    /** A column of figures, set to the right and sorted by value. */
    Grid<T> number(String head, ToDoubleFunction<T> value, BiConsumer<Html, T> cell) {
        columns.add(new Column<>(head, Kind.NUMBER, row -> Format.key(value.applyAsDouble(row)), cell));
        return this;
    }

    /** A column of words that is sorted by a figure among them. */
    Grid<T> measured(String head, ToDoubleFunction<T> value, BiConsumer<Html, T> cell) {
        columns.add(new Column<>(head, Kind.MEASURED_TEXT, row -> Format.key(value.applyAsDouble(row)), cell));
        return this;
    }

    /** A column of counts. */
    Grid<T> count(String head, ToLongFunction<T> value) {
        return number(head, value::applyAsLong, (h, row) -> h.text(Format.whole(value.applyAsLong(row))));
    }

    /** Attributes of a row, by which the reader can filter: {@code data-depot}, {@code data-advice}. */
    Grid<T> marks(Function<T, String[]> marks) {
        this.marks = marks;
        return this;
    }

    /** Lets the script put sorting and filters on the table. */
    Grid<T> withTools() {
        tools = true;
        return this;
    }

    void write(Html h, List<T> rows) {
        if (shape == Shape.CARDS) {
            h.open("div", "class", "box");
        } else {
            // A box that scrolls must be within reach of the keyboard.
            h.open("div", "class", "box scrolls", "tabindex", "0", "role", "group", "aria-label", caption);
        }
        h.open(
                "table",
                "role",
                "table",
                "class",
                shape == Shape.CARDS ? "cards" : null,
                "data-tools",
                tools ? "yes" : null);
        h.element("caption", caption).line();
        h.open("thead", "role", "rowgroup").open("tr", "role", "row");
        for (Column<T> c : columns) {
            h.element(
                    "th",
                    c.head(),
                    "scope",
                    "col",
                    "role",
                    "columnheader",
                    "class",
                    c.alignment(),
                    "data-order",
                    c.order());
        }
        h.close().close("thead").line();
        h.open("tbody", "role", "rowgroup").line();
        rows.forEach(row -> writeRow(h, row));
        h.close("tbody").close("table").close("div").line();
    }

    private void writeRow(Html h, T row) {
        List<String> attributes = new ArrayList<>(List.of("role", "row"));
        attributes.addAll(Arrays.asList(marks.apply(row)));
        h.open("tr", attributes.toArray(String[]::new));
        for (int i = 0; i < columns.size(); i++) {
            Column<T> c = columns.get(i);
            String sortKey = c.sortKey() == null ? null : c.sortKey().apply(row);
            h.open(
                    i == 0 ? "th" : "td",
                    "scope",
                    i == 0 ? "row" : null,
                    "role",
                    i == 0 ? "rowheader" : "cell",
                    "class",
                    c.alignment(),
                    "data-label",
                    c.head(),
                    "data-sort",
                    sortKey);
            // One box inside the cell, so that label and content stand side by side when the row is a card.
            h.open("div");
            c.cell().accept(h, row);
            h.close().close();
        }
        h.close("tr").line();
    }
}
