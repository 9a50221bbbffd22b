package sensorrounds.workbook;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;

/**
 * Texts for the numbers of cells. A file holds them as written by a program that reckons in binary, {@code
 * 7.2999999999999998} for 7.3; spreadsheet programs keep and show fifteen digits, and so does this.
 */
final class NumberText {
    private static final MathContext FIFTEEN_DIGITS = new MathContext(15, RoundingMode.HALF_EVEN);
    /** Below this every whole number has at most fifteen digits. */
    private static final BigDecimal SURE = new BigDecimal("1E15");

    /** Programs write seventeen digits and an exponent; reckoning with very many would take for ever. */
    private static final int MOST_LENGTH = 400;

    private static final int MOST_ZEROS = 20;
    private static final int SECONDS = 24 * 60 * 60;
    /** Of the 31st of December 9999, in the later system of days; far above any day of either. */
    private static final BigDecimal LAST_DAY = new BigDecimal("2958465");

    private static final DateTimeFormatter TO_MINUTES = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");
    private static final DateTimeFormatter TO_SECONDS = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss");

    private NumberText() {}

    /** @throws NumberFormatException for what is no number */
    static Cell cell(String raw, CellFormat format, boolean from1904) {
        if (raw.length() > MOST_LENGTH) {
            throw new NumberFormatException("a number of " + raw.length() + " characters");
        }
        BigDecimal number = new BigDecimal(raw.strip());
        boolean day = format.kind() == CellFormat.Kind.DAY || format.kind() == CellFormat.Kind.TIME;
        if (day && number.signum() >= 0 && number.compareTo(LAST_DAY) <= 0) {
            return new Cell(Cell.Kind.DAY, day(number, format, from1904));
        }
        String text = format.kind() == CellFormat.Kind.PERCENT
                ? plain(number.scaleByPowerOfTen(2)) + "%"
                : zeros(plain(number), format.width());
        return new Cell(Cell.Kind.NUMBER, text);
    }

    private static String plain(BigDecimal number) {
        BigDecimal rounded = number.round(FIFTEEN_DIGITS).stripTrailingZeros();
        if (rounded.signum() == 0) {
            return "0";
        }
        if (rounded.abs().compareTo(SURE) < 0 && rounded.scale() <= MOST_ZEROS) {
            return rounded.toPlainString();
        }
        // As spreadsheet programs show it: the digits after these are lost.
        String digits = rounded.unscaledValue().abs().toString();
        int exponent = rounded.precision() - rounded.scale() - 1;
        return (rounded.signum() < 0 ? "-" : "") + digits.charAt(0) + (digits.length() > 1 ? "." : "")
                + digits.substring(1) + "E" + (exponent < 0 ? "-" : "+") + Math.abs(exponent);
    }

    /** Zeros in front that the format shows and the number has not. */
    private static String zeros(String text, int width) {
        boolean digits = text.chars().allMatch(c -> c >= '0' && c <= '9');
        return digits && text.length() < width ? "0".repeat(width - text.length()) + text : text;
    }

    /**
     * Days as spreadsheets count them (ECMA-376 part 1, 18.17.4.1), to the nearest second, which is finer than anybody types
     * and coarser than the last digit of the fraction. Below day 61 of the 1900 system days are one off; no log is that old.
     */
    private static String day(BigDecimal number, CellFormat format, boolean from1904) {
        LocalDate zero = from1904 ? LocalDate.of(1904, 1, 1) : LocalDate.of(1899, 12, 30);
        LocalDateTime time = zero.atStartOfDay().plusSeconds(Math.round(number.doubleValue() * SECONDS));
        if (format.kind() == CellFormat.Kind.DAY
                && time.equals(time.toLocalDate().atStartOfDay())) {
            return time.toLocalDate().toString();
        }
        return time.format(time.getSecond() == 0 ? TO_MINUTES : TO_SECONDS);
    }
}
