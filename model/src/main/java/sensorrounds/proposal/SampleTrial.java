package sensorrounds.proposal;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sensorrounds.intake.Field;
import sensorrounds.intake.IdForm;
import sensorrounds.intake.Layout;
import sensorrounds.intake.ParsedRow;
import sensorrounds.intake.RawRecord;
import sensorrounds.intake.Rejection;
import sensorrounds.intake.VisitParser;
import sensorrounds.visit.Side;
import sensorrounds.visit.Source;

/** Reads the sample by the proposed layout, as a run would: the sum of all decisions, tried. */
final class SampleTrial {
    private SampleTrial() {}

    /** @return null when an open entry stands in the way of reading anything */
    static String words(LayoutProposal proposal, Sample sample) {
        boolean formIsOpen = proposal.entries().containsValue(LayoutProposal.GAP)
                || proposal.constants().containsValue(LayoutProposal.GAP);
        if (formIsOpen) {
            return null;
        }
        VisitParser parser = new VisitParser(layout(proposal));
        Map<Field, Integer> columns = new EnumMap<>(Field.class);
        for (int i = 0; i < sample.headers().size(); i++) {
            String header = sample.headers().get(i);
            int column = i;
            Field.of(proposal.columns().getOrDefault(header, header)).ifPresent(f -> columns.put(f, column));
        }
        int accepted = 0;
        Map<String, Integer> rejected = new TreeMap<>();
        for (int i = 0; i < sample.rows().size(); i++) {
            ParsedRow row = parser.row(new SampleRow(sample.rows().get(i), columns, i + 2));
            if (row instanceof Rejection r) {
                String field = r.field() == null ? "" : " (" + r.field() + ")";
                rejected.merge(r.rule().words() + field, 1, Integer::sum);
            } else {
                accepted++;
            }
        }
        StringBuilder words = new StringBuilder("of " + sample.rows().size() + " rows of the sample " + accepted
                + " would be read, " + (sample.rows().size() - accepted) + " would go to quarantine");
        rejected.forEach((reason, rows) -> words.append(String.format("%n  %d rows: %s", rows, reason)));
        return words.toString();
    }

    private static Layout layout(LayoutProposal p) {
        Map<String, Field> columns = new HashMap<>();
        p.columns().forEach((header, name) -> Field.of(name).ifPresent(f -> columns.put(header, f)));
        Map<Field, String> constants = new EnumMap<>(Field.class);
        p.constants().forEach((name, value) -> constants.put(Field.of(name).orElseThrow(), value));
        Map<Field, Map<String, String>> words = new EnumMap<>(Field.class);
        p.words().forEach((name, map) -> {
            Map<String, String> known = new HashMap<>(map);
            known.values().removeIf(LayoutProposal.GAP::equals);
            words.put(Field.of(name).orElseThrow(), known);
        });
        Map<String, String> e = p.entries();
        String side = e.get("drivingSide");
        Set<String> ignore = new HashSet<>(p.ignore());
        ignore.removeAll(columns.keySet());
        return new Layout(
                "proposed",
                List.of(),
                ',',
                "UTF-8",
                e.getOrDefault("decimalMark", ".").charAt(0),
                e.get("dateFormat"),
                e.get("dateTimeFormat"),
                side == null ? null : side.equals("left") ? Side.LEFT : Side.RIGHT,
                columns,
                ignore,
                constants,
                words,
                new IdForm("decimal".equals(e.get("idBase")) ? IdForm.Base.DECIMAL : IdForm.Base.HEX, p.idDigits()),
                new HashSet<>(p.noTemperature()));
    }

    private record SampleRow(List<String> texts, Map<Field, Integer> columns, int line) implements RawRecord {
        @Override
        public String get(Field field) {
            Integer column = columns.get(field);
            return column == null || column >= texts.size() ? null : texts.get(column);
        }

        @Override
        public Source source() {
            return new Source("sample", line);
        }

        @Override
        public String text() {
            return String.join(",", texts);
        }
    }
}
