package sensorrounds.intake;

/** What a text looks like without telling what it says: capitals as A, other letters as a, digits as 9, all else as it is. */
public final class TextShape {
    private TextShape() {}

    /** @return {@code AA99 aaa} for {@code QX41 abc}; null for null */
    public static String of(String text) {
        return text == null
                ? null
                : text.replaceAll("[\\p{L}&&[^\\p{Lu}]]", "a")
                        .replaceAll("\\p{Lu}", "A")
                        .replaceAll("\\p{Nd}", "9");
    }
}
