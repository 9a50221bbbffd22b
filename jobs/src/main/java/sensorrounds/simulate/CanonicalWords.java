package sensorrounds.simulate;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.FaultCode;

/** The words and signs of the canonical form of a log. */
final class CanonicalWords {
    private CanonicalWords() {}

    /** {@code SYSTEM_FAULT} is written {@code system-fault}; null stays null. */
    static String word(Enum<?> e) {
        return e == null ? null : e.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static String battery(BatteryReport b) {
        if (b == null) {
            return null;
        }
        return switch (b.kind()) {
            case OK -> "ok";
            case LOW -> "low";
            case PERCENT -> Decimals.text(b.value(), 0) + "%";
            case VOLTS -> Decimals.text(b.value(), 1) + "V";
            case MONTHS -> Decimals.text(b.value(), 0) + " months";
        };
    }

    static String codes(List<FaultCode> codes) {
        return codes.isEmpty()
                ? null
                : codes.stream()
                        .map(c -> c.code()
                                + (c.state() == null ? "" : "/" + word(c.state()))
                                + (c.position() == null
                                        ? ""
                                        : "@" + c.position().code()))
                        .collect(Collectors.joining(";"));
    }

    /** Week and year of a tyre's date code, two digits each. */
    static String tyreDate(LocalDate monday) {
        if (monday == null) {
            return null;
        }
        int week = monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
        int year = monday.get(IsoFields.WEEK_BASED_YEAR) % 100;
        return "" + (char) ('0' + week / 10) + (char) ('0' + week % 10) + (char) ('0' + year / 10)
                + (char) ('0' + year % 10);
    }
}
