package sensorrounds.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A doubt about the form of a whole file: what its rows say together and none of them says alone. Nothing is changed
 * because of it.
 *
 * @param what what was found, with counts
 * @param remedy the way out
 */
public record FileDoubt(String file, Kind kind, String what, String remedy) {
    /** What is doubted. */
    public enum Kind {
        ID_BASE,
        DATE_ORDER,
        DATE_ORDER_UNPROVEN,
        LAST_LINE_OPEN
    }

    /** Under 5 IDs chance makes digits of all of them about once in 10^7 files or more often: 0.023^4. */
    private static final long IDS_THAT_PROVE = 5;
    /** Of dates all over a year, some 60 % have a day above 12; of 12 such dates hardly none has. */
    private static final long DATES_THAT_SHOULD_PROVE = 12;

    /** The doubts about one file. */
    public static List<FileDoubt> of(FileCount file) {
        List<FileDoubt> doubts = new ArrayList<>();
        Map<Evidence, Long> seen = file.evidence();
        long digits = seen.getOrDefault(Evidence.ID_DIGITS_ONLY, 0L);
        long letters = seen.getOrDefault(Evidence.ID_WITH_LETTER, 0L);
        if (letters == 0 && digits >= IDS_THAT_PROVE) {
            doubts.add(new FileDoubt(
                    file.file(),
                    Kind.ID_BASE,
                    "all " + digits + " sensor IDs have decimal digits only, and were read as hexadecimal",
                    "if the reader writes decimal numbers, give idBase \"decimal\" in a layout"));
        }
        long proving = seen.getOrDefault(Evidence.DATE_PROVES_ORDER, 0L);
        long either = seen.getOrDefault(Evidence.DATE_EITHER_ORDER, 0L);
        long other = seen.getOrDefault(Evidence.DATE_OTHER_ORDER, 0L);
        if (other > 0) {
            doubts.add(new FileDoubt(
                    file.file(),
                    Kind.DATE_ORDER,
                    other + " dates can only be read with day and month exchanged, " + proving
                            + " only as the layout says, and " + either + " either way",
                    proving == 0
                            ? "exchange day and month in dateFormat and dateTimeFormat of the layout"
                            : "the file mixes two orders of day and month: split it, or mend it at its source"));
        } else if (proving == 0 && either >= DATES_THAT_SHOULD_PROVE) {
            doubts.add(new FileDoubt(
                    file.file(),
                    Kind.DATE_ORDER_UNPROVEN,
                    "none of " + either + " dates shows which figure is the day and which the month",
                    "make sure of dateFormat and dateTimeFormat in the layout"));
        }
        if (seen.containsKey(Evidence.LAST_LINE_OPEN)) {
            doubts.add(new FileDoubt(
                    file.file(),
                    Kind.LAST_LINE_OPEN,
                    "line " + file.lines() + ", the last, has no line end: the file may have been cut inside it",
                    "if the file was still being copied or written, read it again when it is whole; there is nothing to"
                            + " do where its writer never ends the last line"));
        }
        return doubts;
    }
}
