package sensorrounds.ingest;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sensorrounds.intake.Field;
import sensorrounds.intake.Layout;

/** Which column of a file with one row per wheel holds which field, found once per file. */
final class CsvHeader {
    private static final int NONE = -1;

    private final int[] columnOf = new int[Field.values().length];
    private final int width;
    private final Map<Integer, String> laterColumns = new TreeMap<>();

    private CsvHeader(int width) {
        this.width = width;
        Arrays.fill(columnOf, NONE);
    }

    /** Fields a line must have. */
    int width() {
        return width;
    }

    /** @return index of the field's column, or −1 */
    int column(Field field) {
        return columnOf[field.ordinal()];
    }

    /**
     * Columns that are not known, in a file that names its version of the contract: of a later minor version they are left
     * out, of any other they are slips.
     */
    Map<Integer, String> laterColumns() {
        return laterColumns;
    }

    /** @throws RefusedInput when a column is neither known nor ignored, stands twice, or a key has no column */
    static CsvHeader of(List<String> names, LogFile file) {
        return of(names, file, file.name() + ", line 1");
    }

    /** As {@link #of(List, LogFile)}, of a header that stands somewhere in the file. */
    static CsvHeader of(List<String> names, LogFile file, String where) {
        Layout layout = file.layout();
        CsvHeader header = new CsvHeader(names.size());
        List<String> unknown = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i).strip();
            if (layout.ignore().contains(name)) {
                continue;
            }
            Field field = field(name, layout);
            if (field == null) {
                // Spreadsheets leave a nameless column behind a trailing delimiter.
                if (!name.isEmpty() || i < names.size() - 1) {
                    unknown.add(name.isEmpty() ? "(no name, column " + (i + 1) + ")" : name);
                    header.laterColumns.put(i, name);
                }
            } else if (!seen.add(field.key())) {
                throw new RefusedInput(
                        "two columns for one field",
                        where,
                        "\"" + name + "\" is " + field.key() + " a second time",
                        "one column per field",
                        "rename one of the two, or put it under ignore in a layout");
            } else {
                header.columnOf[field.ordinal()] = i;
            }
        }
        boolean versioned = header.column(Field.CONTRACT_VERSION) != NONE
                || layout.constants().containsKey(Field.CONTRACT_VERSION);
        if (versioned) {
            unknown.clear();
        }
        refuseIfNoLog(names, file, where, header, unknown);
        return header;
    }

    /** @return the field a column of this name holds, or null */
    static Field field(String name, Layout layout) {
        Field mapped = layout.columns().get(name);
        return mapped != null ? mapped : Field.of(name).orElse(null);
    }

    private static void refuseIfNoLog(
            List<String> names, LogFile file, String where, CsvHeader header, List<String> unknown) {
        List<String> missing = new ArrayList<>();
        for (Field key : Field.KEYS) {
            if (header.column(key) == NONE && !file.layout().constants().containsKey(key)) {
                missing.add(key.key());
            }
        }
        String layout = file.layout().name() == null
                ? "a layout in layouts/ whose appliesTo matches this file"
                : "layout \"" + file.layout().name() + "\"";
        if (missing.size() == Field.KEYS.size()) {
            throw new RefusedInput(
                    "not a visit log",
                    where,
                    header.shown(names),
                    "a header with the columns visitId, visitedAt and vehicleId, or a layout that maps to them",
                    "move the file out of the folder of logs, or map its columns in " + layout);
        }
        if (!unknown.isEmpty()) {
            throw new RefusedInput(
                    "columns that are neither mapped nor ignored",
                    where,
                    header.shown(unknown),
                    "canonical names (docs/visit-log.md), or names that a layout maps or ignores",
                    "add them to columns or to ignore in " + layout);
        }
        if (!missing.isEmpty()) {
            throw new RefusedInput(
                    "a key of the visit has no column",
                    where,
                    "no column for " + String.join(", ", missing),
                    "columns for visitId, visitedAt and vehicleId",
                    "add the column, or map one to it in " + layout);
        }
    }

    /** Without a known name among them they may be the values of a line, which may tell of people. */
    private String shown(List<String> names) {
        return Arrays.stream(columnOf).anyMatch(c -> c != NONE) ? shortened(names) : UnknownNames.ofFirstLine(names);
    }

    private static String shortened(List<String> names) {
        String all = String.join(", ", names);
        return all.length() > 400 ? all.substring(0, 400) + " …" : all;
    }
}
