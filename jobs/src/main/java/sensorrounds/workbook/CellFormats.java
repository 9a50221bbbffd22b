package sensorrounds.workbook;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The formats of a workbook by the number of the style that cells name. */
final class CellFormats {
    private final List<CellFormat> byStyle = new ArrayList<>();

    /** Every cell as a workbook without styles has it. */
    CellFormats() {}

    CellFormats(Xml styles) throws IOException {
        Map<Integer, String> codes = new HashMap<>();
        boolean ofCells = false;
        while (styles.next()) {
            if (styles.starts("numFmt")) {
                codes.put(number(styles.attribute("numFmtId")), styles.attribute("formatCode"));
            } else if (styles.starts("cellXfs") || styles.ends("cellXfs")) {
                ofCells = styles.starts("cellXfs");
            } else if (ofCells && styles.starts("xf")) {
                int id = number(styles.attribute("numFmtId"));
                byStyle.add(CellFormat.of(id, codes.get(id)));
            }
        }
    }

    private static int number(String text) {
        try {
            return text == null ? 0 : Integer.parseInt(text);
        } catch (NumberFormatException e) {
            return 0;
        }
    }

    /** @param style as the cell has it, or null */
    CellFormat of(String style) {
        int index = style == null ? 0 : number(style);
        return index >= 0 && index < byStyle.size() ? byStyle.get(index) : CellFormat.GENERAL;
    }
}
