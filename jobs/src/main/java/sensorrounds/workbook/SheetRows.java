package sensorrounds.workbook;

import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The rows of one sheet that are not blank, read one at a time. */
public final class SheetRows implements Closeable {
    private final Xml xml;
    private final CellTexts texts;
    private final CellFormats formats;
    private final boolean from1904;
    private final MergedCells merged;
    private int line;

    SheetRows(Xml xml, CellTexts texts, CellFormats formats, boolean from1904, MergedCells merged) {
        this.xml = xml;
        this.texts = texts;
        this.formats = formats;
        this.from1904 = from1904;
        this.merged = merged;
    }

    /** @return the next row that has a value of its own, or null after the last */
    public SheetRow next() throws IOException {
        while (xml.next()) {
            if (xml.starts("row")) {
                List<Cell> cells = row();
                boolean blank = cells.stream().allMatch(c -> c == null);
                int filled = blank ? 0 : merged.fill(line, cells);
                merged.begin(line, cells);
                if (!blank) {
                    return new SheetRow(line, cells, filled);
                }
            }
        }
        return null;
    }

    private List<Cell> row() throws IOException {
        String number = xml.attribute("r");
        line = number == null ? line + 1 : place("A" + number).row();
        List<Cell> cells = new ArrayList<>();
        while (xml.next() && !xml.ends("row")) {
            if (xml.starts("c")) {
                String name = xml.attribute("r");
                int column = name == null ? cells.size() : place(name).column();
                Cell cell = cell();
                while (cells.size() <= column) {
                    cells.add(null);
                }
                cells.set(column, cell);
            }
        }
        return cells;
    }

    private static CellPlace place(String name) throws IOException {
        return CellPlace.of(name);
    }

    /** @return null for a blank cell */
    private Cell cell() throws IOException {
        String type = xml.attribute("t");
        String style = xml.attribute("s");
        String value = null;
        String inline = null;
        while (xml.next() && !xml.ends("c")) {
            if (xml.starts("v")) {
                value = xml.text();
            } else if (xml.starts("is")) {
                inline = CellTexts.read(xml, "is");
            }
        }
        String raw = inline != null ? inline : value;
        return raw == null || raw.isBlank() ? null : cell(type == null ? "n" : type, raw, style);
    }

    private Cell cell(String type, String raw, String style) throws IOException {
        return switch (type) {
            case "n" -> number(raw, style);
            case "s" -> text(texts.get(raw));
            case "b" -> new Cell(Cell.Kind.FLAG, raw.strip().equals("1") ? "true" : "false");
            case "e" -> new Cell(Cell.Kind.ERROR, raw.strip());
            case "d" -> new Cell(Cell.Kind.DAY, raw.strip());
            case "str" -> text(CellTexts.plain(raw));
            default -> text(raw);
        };
    }

    private static Cell text(String text) {
        return text.isBlank() ? null : new Cell(Cell.Kind.TEXT, text);
    }

    private Cell number(String raw, String style) throws IOException {
        try {
            return NumberText.cell(raw, formats.of(style), from1904);
        } catch (NumberFormatException | ArithmeticException e) {
            throw WorkbookProblem.damaged("the number \"" + raw + "\" in row " + line);
        }
    }

    @Override
    public void close() throws IOException {
        xml.close();
    }
}
