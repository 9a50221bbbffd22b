package sensorrounds.tables;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.function.Function;

/** Reads the columns of a row in their stored order; a null column gives null. */
interface RowCursor {
    String text();

    Double number();

    Integer whole();

    Long count();

    LocalDate day();

    /** A wall-clock time. */
    LocalDateTime time();

    Boolean flag();

    <E extends Enum<E>> E word(Class<E> type);

    /** A text turned into something else, null staying null. */
    default <V> V map(Function<String, V> decode) {
        String text = text();
        return text == null ? null : decode.apply(text);
    }
}
