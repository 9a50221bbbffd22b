package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sensorrounds.intake.Field;
import sensorrounds.intake.FieldTrial;
import sensorrounds.visit.Side;

/**
 * Proposes a layout for files whose layout is not known. Each entry comes with its counted evidence; what the sample does
 * not decide stays a gap with a question. Texts are judged by the intake's own reading.
 */
public final class LayoutProposer {
    private static final int ROWS_PER_VISIT = 2;

    private final Side drivingSide;
    private final List<Decision> decisions = new ArrayList<>();
    private final Map<String, String> entries = new LinkedHashMap<>();
    private final Map<String, String> constants = new LinkedHashMap<>();

    private LayoutProposer(Side drivingSide) {
        this.drivingSide = drivingSide;
    }

    /**
     * @param drivingSide side of the road these vehicles drive on; null when it is not known
     * @throws IllegalArgumentException for a sample without columns or rows
     */
    public static LayoutProposal propose(Sample sample, Side drivingSide) {
        if (sample.headers().isEmpty() || sample.rows().isEmpty()) {
            throw new IllegalArgumentException("a sample of " + sample.headers().size() + " columns and "
                    + sample.rows().size() + " rows; expected at least one of each");
        }
        return new LayoutProposer(drivingSide).propose(sample);
    }

    private LayoutProposal propose(Sample sample) {
        List<Column> columns = Column.of(sample);
        char mark = decimalMark(columns);
        FieldFit fit = new FieldFit(columns, mark);
        FieldMatcher matcher = new FieldMatcher(columns, fit);
        matcher.match();
        dates(matcher, fit);
        IdVote ids = ids(matcher);
        NoValueVote noValues = new NoValueVote();
        noValues.look(of(matcher, FieldKinds.TEMPERATURES), mark);
        decisions.addAll(noValues.decisions());
        decisions.addAll(matcher.decisions());
        Map<String, String> mapped = columns(matcher);
        missing(matcher);
        units(matcher, mark);
        Map<String, Map<String, String>> words = words(matcher, mark);
        onePerVisit(matcher);
        LayoutProposal draft = new LayoutProposal(
                entries, ids.digits(), noValues.values(), mapped, matcher.ignore(), constants, words, decisions, null);
        return new LayoutProposal(
                entries,
                ids.digits(),
                noValues.values(),
                mapped,
                matcher.ignore(),
                constants,
                words,
                List.copyOf(decisions),
                SampleTrial.words(draft, sample));
    }

    private char decimalMark(List<Column> columns) {
        Decision decision = DecimalVote.of(columns);
        decisions.add(decision);
        entry("decimalMark", decision);
        return decision.isOpen() ? '.' : decision.value().charAt(0);
    }

    private void dates(FieldMatcher matcher, FieldFit fit) {
        DateForms forms = new DateForms();
        for (Column column : of(matcher, FieldKinds.DATES)) {
            DateVote vote = fit.dates(column);
            int serials = column.rows(DateVote::isSerial);
            if (vote != null) {
                forms.add(column, vote);
            } else if (serials * 2 > column.written()) {
                forms.addSerial(column, serials);
            }
        }
        forms.decide();
        forms.entries().forEach(entries::put);
        decisions.addAll(forms.decisions());
    }

    private IdVote ids(FieldMatcher matcher) {
        IdVote ids = IdVote.of(of(matcher, FieldKinds.IDS));
        if (of(matcher, FieldKinds.IDS).isEmpty()) {
            return ids;
        }
        decisions.addAll(ids.decisions());
        entries.put("idBase", ids.base() == null ? LayoutProposal.GAP : ids.base());
        return ids;
    }

    private static Map<String, String> columns(FieldMatcher matcher) {
        Map<String, String> mapped = new LinkedHashMap<>();
        Map<String, Field> byHeader = new HashMap<>();
        matcher.fields().forEach((column, field) -> byHeader.put(column.header(), field));
        for (Decision decision : matcher.decisions()) {
            if (decision.entry().startsWith("columns.")) {
                String header = decision.entry().substring("columns.".length());
                Field field = byHeader.get(header);
                if (field == null) {
                    mapped.put(header, LayoutProposal.GAP);
                } else if (!field.key().equals(header)) {
                    mapped.put(header, field.key());
                }
            }
        }
        return mapped;
    }

    /** Fields without which nothing is read. */
    private void missing(FieldMatcher matcher) {
        for (Field field : List.of(Field.VISIT_ID, Field.VISITED_AT, Field.VEHICLE_ID, Field.POSITION, Field.READ)) {
            if (matcher.column(field) == null) {
                constants.put(field.key(), LayoutProposal.GAP);
                decisions.add(
                        Decision.open(
                                "constants." + field.key(),
                                0,
                                "no column is clearly " + field.key() + ", which every row needs",
                                null,
                                "name its column under columns and take this entry out, or give the value that holds for all rows"));
            }
        }
    }

    private void units(FieldMatcher matcher, char mark) {
        for (Decision decision : new UnitVote(matcher.fields(), mark).decisions()) {
            decisions.add(decision);
            constants.put(
                    decision.entry().substring("constants.".length()),
                    decision.isOpen() ? LayoutProposal.GAP : decision.value());
        }
    }

    private Map<String, Map<String, String>> words(FieldMatcher matcher, char mark) {
        Map<String, Map<String, String>> words = new LinkedHashMap<>();
        Column position = matcher.column(Field.POSITION);
        if (position != null) {
            PlaceMapper places = new PlaceMapper(drivingSide);
            places.map(position, matcher.column(Field.VISIT_ID));
            decisions.addAll(places.decisions());
            if (places.side() != null) {
                entries.put("drivingSide", places.side());
            }
            if (!places.places().isEmpty()) {
                words.put(Field.POSITION.key(), places.places());
            }
        }
        FieldTrial trial = Trials.decimalMark(mark);
        WordMapper mapper = new WordMapper(trial);
        Map<Field, Column> byField = new EnumMap<>(Field.class);
        matcher.fields().forEach((column, field) -> byField.put(field, column));
        byField.forEach((field, column) -> {
            if (FieldKinds.WORDS.contains(field)) {
                mapper.map(column, field);
            }
        });
        decisions.addAll(mapper.decisions());
        words.putAll(mapper.words());
        return words;
    }

    /** What stands once per visit should not change within one: a column that does is something else. */
    private void onePerVisit(FieldMatcher matcher) {
        Column visits = matcher.column(Field.VISIT_ID);
        if (visits == null) {
            return;
        }
        matcher.fields().forEach((column, field) -> {
            if (field.ofWheel() || column == visits || column.written() == 0) {
                return;
            }
            Map<String, Set<String>> texts = new HashMap<>();
            Map<String, Integer> rows = new HashMap<>();
            for (int row = 0; row < visits.rowCount(); row++) {
                texts.computeIfAbsent(visits.text(row), v -> new HashSet<>()).add(column.text(row));
                rows.merge(visits.text(row), 1, Integer::sum);
            }
            long several =
                    rows.values().stream().filter(n -> n >= ROWS_PER_VISIT).count();
            long differing = texts.values().stream().filter(t -> t.size() > 1).count();
            if (differing * 20 > several && several > 0) {
                decisions.add(new Decision(
                        "columns." + column.header() + " per visit",
                        field.key(),
                        several - differing,
                        differing,
                        "visits of several rows with one text, against visits with several",
                        null,
                        "is it " + field.key() + " of the visit, or something of each wheel?"));
            }
        });
    }

    private static List<Column> of(FieldMatcher matcher, Set<Field> kind) {
        return matcher.fields().entrySet().stream()
                .filter(e -> kind.contains(e.getValue()))
                .map(Map.Entry::getKey)
                .toList();
    }

    private void entry(String key, Decision decision) {
        entries.put(key, decision.isOpen() ? LayoutProposal.GAP : decision.value());
    }
}
