package sensorrounds.ingest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import sensorrounds.proposal.LayoutProposal;

/** A proposed layout as the text of its mapping file. Open questions stand in it, so that nobody uses it by mistake. */
public final class LayoutFile {
    static final String UNDECIDED = "undecided";

    private static final ObjectMapper JSON = new ObjectMapper();

    private LayoutFile() {}

    /**
     * @param name how the layout is called
     * @param appliesTo globs of the files it is for
     * @param cut form of the files, with decisions on delimiter and encoding
     */
    public static String text(String name, List<String> appliesTo, SampleReader.Cut cut, LayoutProposal proposal) {
        ObjectNode root = JSON.createObjectNode();
        root.put("name", name);
        appliesTo.forEach(root.putArray("appliesTo")::add);
        root.put("format", cut.format().word());
        cut.form().forEach(d -> root.put(d.entry(), d.value()));
        proposal.entries().forEach(root::put);
        if (proposal.idDigits() != null) {
            root.put("idDigits", proposal.idDigits());
        }
        if (!proposal.noTemperature().isEmpty()) {
            proposal.noTemperature().forEach(root.putArray("noTemperature")::add);
        }
        put(root.putObject("columns"), proposal.columns());
        proposal.ignore().forEach(root.putArray("ignore")::add);
        put(root.putObject("constants"), proposal.constants());
        ObjectNode words = root.putObject("words");
        proposal.words().forEach((field, map) -> put(words.putObject(field), map));
        if (!proposal.open().isEmpty()) {
            ArrayNode questions = root.putArray(UNDECIDED);
            proposal.open().forEach(d -> questions.add(d.entry() + ": " + d.question()));
        }
        try {
            DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
            DefaultIndenter indent = new DefaultIndenter("  ", "\n");
            printer.indentObjectsWith(indent);
            printer.indentArraysWith(indent);
            return JSON.writer(printer).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("writing to memory", e);
        }
    }

    private static void put(ObjectNode node, Map<String, String> entries) {
        entries.forEach(node::put);
    }
}
