package sensorrounds.workbook;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A workbook of the form .xlsx (ECMA-376, ISO/IEC 29500), as rows of cells. It knows nothing of what the rows mean. Formulas
 * are not reckoned: their cells have the value they had when the file was saved. Rows and sheets that are hidden count like
 * others.
 */
public final class Workbook implements Closeable {
    private static final String MAIN = "xl/workbook.xml";

    private final ZipParts parts;
    private final Map<String, String> sheets = new HashMap<>();
    private final List<String> names = new ArrayList<>();
    private boolean from1904;
    private String stylesPart;
    private String textsPart;
    private CellFormats formats;
    private CellTexts texts;

    private Workbook(ZipParts parts) {
        this.parts = parts;
    }

    /**
     * @param bytes the whole file
     * @throws WorkbookProblem for what is no workbook, or cannot be read
     */
    public static Workbook open(byte[] bytes) throws IOException {
        Workbook workbook = new Workbook(ZipParts.of(bytes));
        try {
            workbook.read();
            return workbook;
        } catch (IOException | RuntimeException e) {
            workbook.close();
            throw e;
        }
    }

    private record Relation(String type, String target) {}

    private void read() throws IOException {
        String main = relations("").values().stream()
                .filter(r -> r.type().equals("officeDocument"))
                .map(Relation::target)
                .findFirst()
                .orElse(MAIN);
        if (main.endsWith(".bin") || !parts.has(main)) {
            throw new WorkbookProblem(
                    "not a workbook of the form .xlsx",
                    main.endsWith(".bin") ? "the binary form .xlsb" : "an archive without " + main,
                    "the form .xlsx",
                    "open it with a spreadsheet program and save it as .xlsx, or export the sheet as CSV");
        }
        Map<String, Relation> related = relations(main);
        try (Xml xml = new Xml(parts.open(main))) {
            while (xml.next()) {
                if (xml.starts("workbookPr")) {
                    String flag = xml.attribute("date1904");
                    from1904 = "1".equals(flag) || "true".equals(flag);
                } else if (xml.starts("sheet")) {
                    add(xml.attribute("name"), related.get(xml.reference()));
                }
            }
        }
        for (Relation relation : related.values()) {
            if (relation.type().equals("styles")) {
                stylesPart = relation.target();
            } else if (relation.type().equals("sharedStrings")) {
                textsPart = relation.target();
            }
        }
    }

    /** Sheets of charts hold no rows. */
    private void add(String name, Relation relation) throws IOException {
        if (name == null || relation == null) {
            throw WorkbookProblem.damaged("a sheet without a name or a place");
        }
        if (relation.type().equals("worksheet") && sheets.put(name, relation.target()) == null) {
            names.add(name);
        }
    }

    /** What a part refers to, by the number it uses for it; targets as full names. */
    private Map<String, Relation> relations(String part) throws IOException {
        String folder = part.substring(0, part.lastIndexOf('/') + 1);
        String name = folder + "_rels/" + part.substring(folder.length()) + ".rels";
        Map<String, Relation> relations = new HashMap<>();
        if (parts.has(name)) {
            try (Xml xml = new Xml(parts.open(name))) {
                while (xml.next()) {
                    if (xml.starts("Relationship") && xml.attribute("Target") != null) {
                        String type = String.valueOf(xml.attribute("Type"));
                        relations.put(
                                xml.attribute("Id"),
                                new Relation(
                                        type.substring(type.lastIndexOf('/') + 1),
                                        resolved(folder, xml.attribute("Target"))));
                    }
                }
            }
        }
        return relations;
    }

    private static String resolved(String folder, String target) {
        if (target.startsWith("/")) {
            return target.substring(1);
        }
        String base = folder;
        String rest = target;
        while (rest.startsWith("../") && !base.isEmpty()) {
            rest = rest.substring("../".length());
            base = base.substring(0, base.lastIndexOf('/', base.length() - 2) + 1);
        }
        return base + rest;
    }

    /** Names of the sheets that can hold rows, in their order. */
    public List<String> sheets() {
        return List.copyOf(names);
    }

    /**
     * @param sheet a name of {@link #sheets}
     * @throws WorkbookProblem when it cannot be read
     */
    public SheetRows rows(String sheet) throws IOException {
        String part = part(sheet);
        MergedCells merged = new MergedCells();
        boolean any;
        try (InputStream in = parts.open(part)) {
            any = MergedCells.areIn(in);
        }
        if (any) {
            try (Xml xml = new Xml(parts.open(part))) {
                merged.read(xml);
            }
        }
        return new SheetRows(new Xml(parts.open(part)), texts(), formats(), from1904, merged);
    }

    /** As {@link #rows}, without looking through the whole sheet for merged cells: enough to find a header. */
    public SheetRows firstRows(String sheet) throws IOException {
        return new SheetRows(new Xml(parts.open(part(sheet))), texts(), formats(), from1904, new MergedCells());
    }

    private String part(String sheet) throws IOException {
        String part = sheets.get(sheet);
        if (part == null) {
            throw WorkbookProblem.damaged("no sheet " + sheet);
        }
        return part;
    }

    private CellTexts texts() throws IOException {
        if (texts == null && textsPart != null && parts.has(textsPart)) {
            try (Xml xml = new Xml(parts.open(textsPart))) {
                texts = new CellTexts(xml);
            }
        }
        return texts == null ? new CellTexts() : texts;
    }

    private CellFormats formats() throws IOException {
        if (formats == null && stylesPart != null && parts.has(stylesPart)) {
            try (Xml xml = new Xml(parts.open(stylesPart))) {
                formats = new CellFormats(xml);
            }
        }
        return formats == null ? new CellFormats() : formats;
    }

    @Override
    public void close() throws IOException {
        parts.close();
    }
}
