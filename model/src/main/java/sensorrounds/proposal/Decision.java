package sensorrounds.proposal;

/**
 * One entry of a proposed layout with the evidence behind it. Evidence is always counted; an entry that the file cannot
 * decide stays open.
 *
 * @param entry the entry of the layout, such as {@code dateFormat} or {@code columns.Plate}
 * @param value what is proposed; null when it is open
 * @param inFavour rows of the sample that speak for it
 * @param against rows that speak against it
 * @param basis what was counted, in words
 * @param example a text that shows it, personal ones by their shape only; null for none
 * @param question what the user has to decide, or to look at when a value is proposed; null when nothing is unsure
 */
public record Decision(
        String entry, String value, long inFavour, long against, String basis, String example, String question) {
    public Decision {
        if (value == null && question == null) {
            throw new IllegalArgumentException(entry + " has neither a value nor a question");
        }
    }

    static Decision sure(String entry, String value, long inFavour, long against, String basis, String example) {
        return new Decision(entry, value, inFavour, against, basis, example, null);
    }

    static Decision open(String entry, long rows, String basis, String example, String question) {
        return new Decision(entry, null, rows, 0, basis, example, question);
    }

    /** The same decision, to be looked at by the user. */
    Decision asking(String question) {
        return new Decision(entry, value, inFavour, against, basis, example, question);
    }

    /** True when the file does not decide it and the layout keeps a gap. */
    public boolean isOpen() {
        return value == null;
    }
}
