package sensorrounds.intake;

import java.time.LocalDate;
import java.time.LocalDateTime;

/**
 * Days as spreadsheets count them, with the time as a fraction of the day (ECMA-376 part 1, 18.17.4.1). In the 1900 system
 * day 1 is 1 January 1900 and a 29 February 1900 is counted that never was, so that from March 1900 on day 0 is 30
 * December 1899; in the 1904 system day 0 is 1 January 1904. The same number is 1462 days apart.
 */
final class SerialDates implements DateForm {
    private static final long serialVersionUID = 1L;
    private static final String NAME_1900 = "serial1900";
    private static final String NAME_1904 = "serial1904";
    private static final int SECONDS = 24 * 60 * 60;
    private static final double MAX_DAY = 100_000;

    private final boolean from1904;

    private SerialDates(boolean from1904) {
        this.from1904 = from1904;
    }

    /** @return null for a name that is no system of days */
    static SerialDates of(String name) {
        return switch (name) {
            case NAME_1900 -> new SerialDates(false);
            case NAME_1904 -> new SerialDates(true);
            default -> null;
        };
    }

    /** To the nearest second, which is finer than anybody types and coarser than the last digit of the fraction. */
    @Override
    public LocalDateTime read(String text) {
        char mark = text.indexOf(',') >= 0 ? ',' : '.';
        double serial = Numbers.read(text, mark);
        // Below day 61 of the 1900 system days are one off; no log is that old.
        if (!(serial >= 61 && serial < MAX_DAY)) {
            return null;
        }
        LocalDate zero = from1904 ? LocalDate.of(1904, 1, 1) : LocalDate.of(1899, 12, 30);
        return zero.atStartOfDay().plusSeconds(Math.round(serial * SECONDS));
    }

    @Override
    public String pattern() {
        return "the day number of a spreadsheet (" + (from1904 ? NAME_1904 : NAME_1900)
                + "), such as 45678 or 45678.375";
    }

    @Override
    public boolean hasTime() {
        return true;
    }

    @Override
    public boolean hasTwoDigitYear() {
        return false;
    }

    @Override
    public DateForm exchanged() {
        return null;
    }

    @Override
    public long notes() {
        return Note.DATE_SERIAL.bit();
    }
}
