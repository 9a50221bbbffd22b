package sensorrounds.intake;

import java.io.Serializable;
import java.time.LocalDateTime;

/** One way in which a file writes days and times. */
interface DateForm extends Serializable {
    /** @throws IllegalArgumentException for a form that is not supported, with those that are */
    static DateForm of(String form) {
        SerialDates serial = SerialDates.of(form);
        return serial != null ? serial : DatePattern.of(form);
    }

    /** @return the time, at the start of the day for a day alone; null when the text has another form */
    LocalDateTime read(String text);

    /** The form in words, for messages. */
    String pattern();

    boolean hasTime();

    boolean hasTwoDigitYear();

    /** The same form with day and month exchanged; null when there is no such form. */
    DateForm exchanged();

    /** What is counted for a row read in this form. */
    long notes();
}
