package sensorrounds.story;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Writes a page for the terminal: plain text, no colours, no line longer than the terminal is wide. */
public final class PageText {
    /** Width where the terminal does not tell its own. */
    public static final int WIDTH = 100;

    private static final int NARROWEST = 40;
    /** Longer lines tire the eye. */
    private static final int WIDEST = 120;

    private static final Pattern UNIT = Pattern.compile("(?<=\\d) (%|km|°C|kPa|min|V|days|years|tries)(?=\\W|$)");

    private final StringBuilder out = new StringBuilder();

    private final int width;

    private PageText(int width) {
        this.width = width;
    }

    /** The page as text of the common width, ending with a line break. */
    public static String of(Page page) {
        return of(page, WIDTH);
    }

    /** @param columns of the terminal; 40 to 120 are used */
    public static String of(Page page, int columns) {
        PageText text = new PageText(Math.max(NARROWEST, Math.min(WIDEST, columns)));
        text.line("Vehicle " + harmless(page.vehicleId()));
        text.wrapped(page.under(), "", "");
        for (Page.Part part : page.parts()) {
            text.line("");
            text.line(part.title());
            text.line("-".repeat(part.title().length()));
            part.blocks().forEach(text::block);
        }
        return text.out.toString();
    }

    /** The same sentence, in which no unit leaves the line of its figure. */
    public static String tied(String text) {
        return UNIT.matcher(text).replaceAll("\u00a0$1");
    }

    private void block(Block block) {
        if (block instanceof Block.Prose p) {
            wrapped(p.text(), "", "");
        } else if (block instanceof Block.Items items) {
            items(items);
        } else if (block instanceof Block.Grid grid) {
            grid(grid);
        }
    }

    private void items(Block.Items items) {
        int n = 0;
        for (Block.Item item : items.items()) {
            n++;
            String mark = items.order() == Block.Order.NUMBERED ? String.format("%2d. ", n) : "  ";
            String hang = " ".repeat(mark.length());
            wrapped(item.lead() + (item.lead().isEmpty() ? "" : ": ") + item.text(), mark, hang);
            item.details().forEach(d -> wrapped(d, hang + "  ", hang + "  "));
        }
    }

    /** Columns side by side; those that do not fit go to a second block, where as many columns as name a row are repeated. */
    private void grid(Block.Grid grid) {
        int[] widths = new int[grid.heads().size()];
        for (int c = 0; c < widths.length; c++) {
            int column = c;
            widths[c] = Math.max(
                    grid.heads().get(c).length(),
                    grid.rows().stream()
                            .mapToInt(r -> harmless(r.get(column)).length())
                            .max()
                            .orElse(0));
        }
        int keys = keys(grid);
        int from = keys;
        while (from < widths.length) {
            List<Integer> columns = new ArrayList<>();
            int width = -2;
            for (int c = 0; c < keys; c++) {
                columns.add(c);
                width += 2 + widths[c];
            }
            while (from < widths.length && (columns.size() == keys || width + 2 + widths[from] <= this.width - 2)) {
                width += 2 + widths[from];
                columns.add(from++);
            }
            row(grid.heads(), columns, widths);
            grid.rows().forEach(r -> row(r, columns, widths));
            if (from < widths.length) {
                line("");
            }
        }
    }

    /** Columns that tell each row from the others: one, or two where one does not do. */
    private static int keys(Block.Grid grid) {
        long told = grid.rows().stream().map(r -> r.get(0)).distinct().count();
        return told < grid.rows().size() && grid.heads().size() > 2 ? 2 : 1;
    }

    private void row(List<String> cells, List<Integer> columns, int[] widths) {
        StringBuilder row = new StringBuilder("  ");
        for (int c : columns) {
            String cell = harmless(cells.get(c));
            row.append(cell).append(" ".repeat(widths[c] - cell.length() + 2));
        }
        line(row.toString());
    }

    private void wrapped(String text, String first, String hang) {
        StringBuilder row = new StringBuilder(first);
        int start = row.length();
        for (String word : tied(harmless(text)).split(" ")) {
            String rest = word;
            if (row.length() > start && row.length() + 1 + rest.length() > width) {
                line(row.toString());
                row = new StringBuilder(hang);
                start = row.length();
            }
            if (row.length() > start) {
                row.append(' ');
            }
            while (row.length() + rest.length() > width) {
                int room = width - row.length();
                line(row + rest.substring(0, room));
                rest = rest.substring(room);
                row = new StringBuilder(hang);
                start = row.length();
            }
            row.append(rest);
        }
        line(row.toString());
    }

    /** What was typed into a log must not steer the terminal: control and direction characters become a full stop. */
    private static String harmless(String text) {
        return text.replaceAll("[\\p{Cc}\\p{Cf}\\u2028\\u2029]", ".");
    }

    private void line(String text) {
        out.append(text.replace('\u00a0', ' ').stripTrailing()).append('\n');
    }
}
