package sensorrounds.proposal;

import java.util.Locale;

/** Dates as texts that sort by time, for telling whether a file runs forward in time in one order of day and month. */
final class OrderedDates {
    private final String[] parts;

    OrderedDates(String pattern) {
        this.parts = pattern.split("[^yMd]+");
    }

    /** @return null for what is no three figures, or no month */
    String key(String text) {
        String[] figures = text.split("[^0-9]+");
        if (figures.length < 3) {
            return null;
        }
        int year = 0;
        int month = 0;
        int day = 0;
        for (int i = 0; i < 3; i++) {
            if (figures[i].isEmpty() || figures[i].length() > 4) {
                return null;
            }
            int value = Integer.parseInt(figures[i]);
            switch (parts[i].charAt(0)) {
                case 'y' -> year = value;
                case 'M' -> month = value;
                default -> day = value;
            }
        }
        return month < 1 || month > 12 ? null : String.format(Locale.ROOT, "%04d%02d%02d", year, month, day);
    }
}
