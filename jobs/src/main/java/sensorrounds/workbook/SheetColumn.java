package sensorrounds.workbook;

import java.time.LocalDate;
import java.util.function.Function;

/**
 * One column of a sheet that is written.
 *
 * @param value how it is read off a row: a text, a number or a day as {@code form} says; null or not a number for a blank
 */
public record SheetColumn<T>(String header, Form form, Function<T, ?> value) {
    /** What its cells hold, how they are shown, and how wide it is, in characters. */
    public enum Form {
        /** A key, a name or a few words. */
        TEXT(null, 18),
        /** A sentence or two. */
        SENTENCE(null, 70),
        WHOLE("#,##0", 11),
        TENTHS("0.0", 11),
        /** A chance, held as such and shown in whole per cent; what would round to 0 or 100 is not shown as certain. */
        CHANCE("[>0.99]\">\u00a099%\";[<0.01]\"<\u00a01%\";0%", 11),
        DAY("yyyy-mm-dd", 12);

        private final String format;
        private final int width;

        Form(String format, int width) {
            this.format = format;
            this.width = width;
        }

        String format() {
            return format;
        }

        int width() {
            return width;
        }
    }

    public static <T> SheetColumn<T> text(String header, Function<T, String> value) {
        return new SheetColumn<>(header, Form.TEXT, value);
    }

    public static <T> SheetColumn<T> sentence(String header, Function<T, String> value) {
        return new SheetColumn<>(header, Form.SENTENCE, value);
    }

    public static <T> SheetColumn<T> whole(String header, Function<T, ? extends Number> value) {
        return new SheetColumn<>(header, Form.WHOLE, value);
    }

    public static <T> SheetColumn<T> tenths(String header, Function<T, ? extends Number> value) {
        return new SheetColumn<>(header, Form.TENTHS, value);
    }

    public static <T> SheetColumn<T> chance(String header, Function<T, ? extends Number> value) {
        return new SheetColumn<>(header, Form.CHANCE, value);
    }

    public static <T> SheetColumn<T> day(String header, Function<T, LocalDate> value) {
        return new SheetColumn<>(header, Form.DAY, value);
    }
}
