package sensorrounds.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;

/**
 * Reads the calendar forms of ISO 8601 that logs use: {@code 2025-03-04}, {@code 2025-03-04T09:05}, with seconds, with a
 * decimal fraction (kept to the microsecond), with {@code Z} or an offset. The offset is checked and left out.
 */
final class IsoDateTimes {
    private static final int DATE_LENGTH = 10;
    private static final int MICRO_DIGITS = 6;

    private IsoDateTimes() {}

    /** @return the date, or null when the text is none */
    static LocalDate date(String text) {
        return text.length() == DATE_LENGTH ? leadingDate(text) : null;
    }

    /** @return the wall-clock time, the start of the day for a date alone, or null when the text is neither */
    static LocalDateTime dateTime(String text) {
        LocalDate day = text.length() < DATE_LENGTH ? null : leadingDate(text);
        if (day == null || text.length() == DATE_LENGTH) {
            return day == null ? null : day.atStartOfDay();
        }
        int end = offsetStart(text);
        char separator = text.charAt(DATE_LENGTH);
        if (separator != 'T' && separator != 't' || !offsetFits(text, end)) {
            return null;
        }
        LocalTime time = time(text, DATE_LENGTH + 1, end);
        return time == null ? null : LocalDateTime.of(day, time);
    }

    static boolean hasOffset(String text) {
        return text.length() > DATE_LENGTH && offsetStart(text) < text.length();
    }

    private static LocalDate leadingDate(String text) {
        int year = digits(text, 0, 4);
        int month = digits(text, 5, 2);
        int day = digits(text, 8, 2);
        if (year < 0 || month < 0 || day < 0 || text.charAt(4) != '-' || text.charAt(7) != '-') {
            return null;
        }
        try {
            return LocalDate.of(year, month, day);
        } catch (DateTimeException e) {
            return null;
        }
    }

    private static LocalTime time(String text, int from, int to) {
        int hour = digits(text, from, 2);
        int minute = to >= from + 5 && text.charAt(from + 2) == ':' ? digits(text, from + 3, 2) : -1;
        int second = 0;
        int micros = 0;
        int at = from + 5;
        if (at < to) {
            second = text.charAt(at) == ':' && to >= at + 3 ? digits(text, at + 1, 2) : -1;
            at += 3;
        }
        if (at < to) {
            micros = fraction(text, at, to);
        }
        boolean fits =
                hour >= 0 && hour < 24 && minute >= 0 && minute < 60 && second >= 0 && second < 60 && micros >= 0;
        return fits ? LocalTime.of(hour, minute, second, micros * 1000) : null;
    }

    private static int fraction(String text, int mark, int to) {
        if (text.charAt(mark) != '.' && text.charAt(mark) != ',' || to == mark + 1) {
            return -1;
        }
        int micros = 0;
        for (int k = 0; k < MICRO_DIGITS; k++) {
            int at = mark + 1 + k;
            int digit = at < to ? text.charAt(at) - '0' : 0;
            if (digit < 0 || digit > 9) {
                return -1;
            }
            micros = micros * 10 + digit;
        }
        for (int at = mark + 1 + MICRO_DIGITS; at < to; at++) {
            if (text.charAt(at) < '0' || text.charAt(at) > '9') {
                return -1;
            }
        }
        return micros;
    }

    private static int offsetStart(String text) {
        for (int i = DATE_LENGTH + 1; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == 'Z' || c == 'z' || c == '+' || c == '-') {
                return i;
            }
        }
        return text.length();
    }

    private static boolean offsetFits(String text, int from) {
        int length = text.length() - from;
        if (length == 0 || length == 1) {
            return length == 0 || text.charAt(from) == 'Z' || text.charAt(from) == 'z';
        }
        int hours = digits(text, from + 1, 2);
        int minutes = switch (length) {
            case 3 -> 0;
            case 5 -> digits(text, from + 3, 2);
            case 6 -> text.charAt(from + 3) == ':' ? digits(text, from + 4, 2) : -1;
            default -> -1;
        };
        boolean signed = text.charAt(from) == '+' || text.charAt(from) == '-';
        return signed && hours >= 0 && hours <= 18 && minutes >= 0 && minutes < 60;
    }

    private static int digits(String text, int from, int count) {
        if (from + count > text.length()) {
            return -1;
        }
        int value = 0;
        for (int i = from; i < from + count; i++) {
            char c = text.charAt(i);
            if (c < '0' || c > '9') {
                return -1;
            }
            value = value * 10 + (c - '0');
        }
        return value;
    }
}
