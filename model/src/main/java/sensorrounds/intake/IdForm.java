package sensorrounds.intake;

import java.io.Serializable;

/**
 * How a file writes sensor IDs. It holds for a whole file, since single IDs cannot tell: one in forty-three of eight
 * hexadecimal digits has decimal digits only, (10/16)^8.
 *
 * @param digits digits every ID has, zeros in front included; null when they may vary. In the decimal base, digits of the
 *     hexadecimal ID that is stored
 */
public record IdForm(Base base, Integer digits) implements Serializable {
    /** Base of the figures. */
    public enum Base {
        HEX,
        DECIMAL
    }

    /** As in the canonical form: 6 to 8 hexadecimal digits. */
    public static final IdForm CANONICAL = new IdForm(Base.HEX, null);

    static final int MIN_DIGITS = 6;
    static final int MAX_DIGITS = 8;

    public IdForm {
        if (digits != null && (digits < MIN_DIGITS || digits > MAX_DIGITS)) {
            throw new IllegalArgumentException(
                    "idDigits " + digits + "; expected " + MIN_DIGITS + " to " + MAX_DIGITS + " hexadecimal digits");
        }
    }
}
