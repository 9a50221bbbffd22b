package sensorrounds.proposal;

import java.util.List;
import java.util.Map;

/**
 * A layout as proposed from a sample. Every value is the text of the mapping file, so that a gap can stand as
 * {@value #GAP}, with which the file is refused until somebody fills it.
 *
 * @param entries simple entries by their key: decimalMark, dateFormat, drivingSide and others; absent ones keep their
 *     default
 * @param idDigits digits of every sensor ID; null when they may vary
 * @param noTemperature figures taken for no temperature
 * @param columns header → canonical name, or a gap
 * @param ignore headers left out
 * @param constants canonical name → value, or a gap
 * @param words canonical name → word in the file → canonical word, or a gap
 * @param decisions everything decided or left open, in the order of the mapping file
 * @param trial what would become of the rows of the sample, in words; null when a gap stands in the way
 */
public record LayoutProposal(
        Map<String, String> entries,
        Integer idDigits,
        List<Double> noTemperature,
        Map<String, String> columns,
        List<String> ignore,
        Map<String, String> constants,
        Map<String, Map<String, String>> words,
        List<Decision> decisions,
        String trial) {
    /** What stands in the mapping file where the sample does not decide. */
    public static final String GAP = "?";

    /** Decisions the user has to make before the layout can be used. */
    public List<Decision> open() {
        return decisions.stream().filter(Decision::isOpen).toList();
    }

    /** Decisions made, which the user should look at. */
    public List<Decision> doubtful() {
        return decisions.stream()
                .filter(d -> !d.isOpen() && d.question() != null)
                .toList();
    }
}
