package sensorrounds.ingest;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sensorrounds.proposal.Decision;
import sensorrounds.proposal.LayoutProposal;

/** A proposed layout for the terminal: what was decided and on what counts, what to look at, what is left to decide. */
public final class ProposalReport {
    private static final String WORDS = "words.";
    private static final int EXAMPLE_SHOWN = 40;

    private ProposalReport() {}

    public static String text(SampleReader.Cut cut, LayoutProposal proposal) {
        StringBuilder out = new StringBuilder();
        line(
                out,
                "%d rows looked at, %d columns%s.",
                cut.sample().rows().size(),
                cut.sample().headers().size(),
                cut.sample().whole() ? "" : "; there are more rows in the files");
        if (!cut.leftOut().isEmpty()) {
            line(out, "Sheets with another header, not looked at: %s.", shown(String.join(", ", cut.leftOut())));
        }
        List<Decision> all = new ArrayList<>(cut.form());
        all.addAll(proposal.decisions());
        line(out, "%nDecided by what was counted:");
        Map<String, StringBuilder> words = new LinkedHashMap<>();
        for (Decision d : all) {
            if (!d.isOpen() && d.question() == null) {
                if (d.entry().startsWith(WORDS)) {
                    words(words, d);
                } else {
                    line(out, "  %s = %s  %s", d.entry(), shown(d.value()), counted(d));
                }
            }
        }
        words.forEach((field, list) -> line(out, "  %s%s: %s", WORDS, field, list));
        section(
                out,
                "Decided, but look at it:",
                all.stream().filter(d -> !d.isOpen() && d.question() != null).toList());
        section(out, "For you to decide; \"?\" stands in the mapping file until then:", proposal.open());
        if (proposal.trial() != null) {
            line(out, "%nTried: %s", proposal.trial());
        } else {
            line(out, "%nThe rows can be tried, with sensor-rounds check, once the open entries are settled.");
        }
        return out.toString();
    }

    private static void words(Map<String, StringBuilder> words, Decision d) {
        String[] parts = d.entry().split("\\.", 3);
        StringBuilder list = words.computeIfAbsent(parts[1], f -> new StringBuilder());
        list.append(list.isEmpty() ? "" : ", ")
                .append(shown(parts[2]))
                .append(" = ")
                .append(d.value())
                .append(" (")
                .append(d.inFavour())
                .append(')');
    }

    private static void section(StringBuilder out, String title, List<Decision> decisions) {
        if (decisions.isEmpty()) {
            return;
        }
        line(out, "%n%s", title);
        for (Decision d : decisions) {
            line(out, "  %s%s  %s", shown(d.entry()), d.isOpen() ? "" : " = " + shown(d.value()), counted(d));
            line(out, "      %s", d.question());
        }
    }

    private static String counted(Decision d) {
        String example = d.example() == null || d.example().equals(d.value()) ? "" : "; such as " + shown(d.example());
        return "[" + d.inFavour() + " for, " + d.against() + " against: " + d.basis() + example + "]";
    }

    /** A text of a file must not run over lines or move the cursor of the terminal. */
    private static String shown(String text) {
        String plain = text.equals("\t") ? "tab" : text.replaceAll("\\p{Cntrl}", "?");
        return plain.length() <= EXAMPLE_SHOWN ? plain : plain.substring(0, EXAMPLE_SHOWN) + "…";
    }

    private static void line(StringBuilder out, String form, Object... values) {
        out.append(String.format(Locale.ROOT, form, values)).append(System.lineSeparator());
    }
}
