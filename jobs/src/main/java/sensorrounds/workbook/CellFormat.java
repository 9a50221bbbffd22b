package sensorrounds.workbook;

/**
 * What the format of a cell says about its number (ECMA-376 part 1, 18.8.30 and 18.8.31).
 *
 * @param width digits shown at least, for a format of zeros only; 0 for others
 */
record CellFormat(Kind kind, int width) {
    static final CellFormat GENERAL = new CellFormat(Kind.GENERAL, 0);

    /** How a number is meant. */
    enum Kind {
        GENERAL,
        /** A day without its time. */
        DAY,
        /** A day with its time, or a time alone. */
        TIME,
        PERCENT
    }

    /** @param id number of the format @param code its code where the workbook gives one, or null */
    static CellFormat of(int id, String code) {
        return code == null ? builtIn(id) : ofCode(code);
    }

    /** Formats that have a number and no code; those of 27 to 36 and 50 to 58 are days in some languages. */
    private static CellFormat builtIn(int id) {
        if (id >= 14 && id <= 17 || id >= 27 && id <= 31 || id == 36 || id >= 50 && id <= 54 || id >= 57 && id <= 58) {
            return new CellFormat(Kind.DAY, 0);
        }
        if (id >= 18 && id <= 22 || id >= 32 && id <= 35 || id >= 45 && id <= 47 || id == 55 || id == 56) {
            return new CellFormat(Kind.TIME, 0);
        }
        return id == 9 || id == 10 ? new CellFormat(Kind.PERCENT, 0) : GENERAL;
    }

    private static CellFormat ofCode(String code) {
        String bare = bare(code);
        boolean time = bare.indexOf('h') >= 0 || bare.indexOf('s') >= 0;
        boolean day = bare.indexOf('y') >= 0 || bare.indexOf('d') >= 0 || bare.indexOf('m') >= 0;
        if (bare.contains("general")) {
            return GENERAL;
        }
        if (time || day) {
            return new CellFormat(time ? Kind.TIME : Kind.DAY, 0);
        }
        if (bare.indexOf('%') >= 0) {
            return new CellFormat(Kind.PERCENT, 0);
        }
        boolean zeros = bare.length() > 1 && bare.chars().allMatch(c -> c == '0');
        return zeros ? new CellFormat(Kind.GENERAL, bare.length()) : GENERAL;
    }

    /** The part for positive numbers, in small letters, without texts in quotes, single literals, colours and conditions. */
    private static String bare(String code) {
        StringBuilder bare = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < code.length(); i++) {
            char c = Character.toLowerCase(code.charAt(i));
            if (c == '"') {
                quoted = !quoted;
            } else if (quoted) {
                continue;
            } else if (c == '\\' || c == '_' || c == '*') {
                i++;
            } else if (c == '[') {
                int end = Math.max(i, code.indexOf(']', i));
                String inside = code.substring(i + 1, Math.max(i + 1, end)).toLowerCase(java.util.Locale.ROOT);
                // Hours, minutes or seconds in all stand in brackets too.
                bare.append(inside.matches("h+|m+|s+") ? "h" : "");
                i = end;
            } else if (c == ';') {
                break;
            } else {
                bare.append(c);
            }
        }
        return bare.toString();
    }
}
