package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import sensorrounds.intake.Field;

/** Which column holds which field: by the words of its header and by its texts, never by the header against the texts. */
final class FieldMatcher {
    private static final double TEXTS_SHOULD_FIT = 0.9;
    /** Two columns this near in score are told apart by nobody. */
    private static final double TIE = 0.05;
    /** Fields that their texts alone can show. */
    private static final List<Field> BY_TEXTS = List.of(Field.POSITION, Field.SENSOR_ID, Field.VIN, Field.FAULT_CODES);

    private static final int TEXTS_THAT_SHOW = 5;

    private final List<Column> columns;
    private final FieldFit fit;
    private final Map<Column, Field> fields = new LinkedHashMap<>();
    private final Map<Column, Decision> decisions = new LinkedHashMap<>();
    private final List<String> ignore = new ArrayList<>();

    FieldMatcher(List<Column> columns, FieldFit fit) {
        this.columns = columns;
        this.fit = fit;
    }

    private record Candidate(Column column, Field field, double score, int fitting) {}

    void match() {
        List<Candidate> candidates = new ArrayList<>();
        for (Column column : columns) {
            HeaderTokens header = new HeaderTokens(column.header());
            for (Field field : Field.values()) {
                Candidate candidate = candidate(column, header, field);
                if (candidate != null) {
                    candidates.add(candidate);
                }
            }
        }
        candidates.sort(Comparator.comparingDouble((Candidate c) -> -c.score())
                .thenComparingInt(c -> columns.indexOf(c.column()))
                .thenComparing(Candidate::field));
        Set<Field> taken = new HashSet<>();
        for (Candidate best : candidates) {
            if (!decisions.containsKey(best.column()) && !taken.contains(best.field())) {
                settle(best, rivals(best, candidates, taken), taken);
            }
        }
        columns.stream().filter(c -> !decisions.containsKey(c)).forEach(this::leftOver);
    }

    Map<Column, Field> fields() {
        return fields;
    }

    List<String> ignore() {
        return ignore;
    }

    /** One decision per column, in the order of the columns. */
    List<Decision> decisions() {
        return columns.stream().map(decisions::get).toList();
    }

    Column column(Field field) {
        return fields.entrySet().stream()
                .filter(e -> e.getValue() == field)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(null);
    }

    private Candidate candidate(Column column, HeaderTokens header, Field field) {
        boolean canonical = column.header().equals(field.key());
        HeaderWords.Match match = HeaderWords.match(header, field);
        if (!canonical && match == null && !BY_TEXTS.contains(field)) {
            return null;
        }
        int fitting = fit.rows(column, field);
        double share = column.written() == 0 ? 1 : (double) fitting / column.written();
        if (canonical) {
            return new Candidate(column, field, 4 + share, fitting);
        }
        boolean ofWords = FieldKinds.WORDS.contains(field) || field == Field.POSITION;
        boolean shown =
                !FieldKinds.FREE.contains(field) && column.written() >= TEXTS_THAT_SHOW && share >= TEXTS_SHOULD_FIT;
        if (match != null && match.left() == 0 && (share >= 0.5 || ofWords)) {
            return new Candidate(column, field, 2 + 0.1 * match.words() + share, fitting);
        }
        if (match != null && shown) {
            return new Candidate(column, field, 1 - 0.2 * match.left() + share, fitting);
        }
        boolean several = column.counts().size() >= TEXTS_THAT_SHOW
                || field == Field.POSITION && column.counts().size() > 1;
        return match == null && shown && several && BY_TEXTS.contains(field) && lettersToo(column, field)
                ? new Candidate(column, field, share - 0.5, fitting)
                : null;
    }

    /** Digits alone are any number. */
    private static boolean lettersToo(Column column, Field field) {
        return field != Field.SENSOR_ID && field != Field.POSITION
                || 2 * column.rows(t -> t.matches(".*[A-Za-z].*")) >= column.written();
    }

    private List<Candidate> rivals(Candidate best, List<Candidate> all, Set<Field> taken) {
        return all.stream()
                .filter(c -> c != best && best.score() - c.score() < TIE)
                .filter(c -> !decisions.containsKey(c.column()) && !taken.contains(c.field()))
                .filter(c -> c.field() == best.field() ^ c.column() == best.column())
                .toList();
    }

    private void settle(Candidate best, List<Candidate> rivals, Set<Field> taken) {
        List<Candidate> otherFields =
                rivals.stream().filter(c -> c.column() == best.column()).toList();
        List<Candidate> otherColumns =
                rivals.stream().filter(c -> c.field() == best.field()).toList();
        if (!otherFields.isEmpty()) {
            String names = best.field().key() + " or "
                    + otherFields.stream().map(c -> c.field().key()).collect(Collectors.joining(" or "));
            open(best.column(), best.fitting(), "its texts fit both", "is it " + names + "?");
            return;
        }
        if (!otherColumns.isEmpty() && !otherColumns.stream().allMatch(c -> oneToOne(best.column(), c.column()))) {
            taken.add(best.field());
            String names = otherColumns.stream()
                    .map(c -> "\"" + c.column().header() + "\"")
                    .collect(Collectors.joining(", "));
            open(
                    best.column(),
                    best.fitting(),
                    "header and texts fit",
                    "is " + best.field().key() + " here or in " + names + "?");
            otherColumns.forEach(c -> open(
                    c.column(),
                    c.fitting(),
                    "header and texts fit",
                    "is " + c.field().key() + " here or in \"" + best.column().header() + "\"?"));
            return;
        }
        taken.add(best.field());
        accept(best);
        otherColumns.forEach(c -> {
            ignore.add(c.column().header());
            decisions.put(
                    c.column(),
                    new Decision(
                            "ignore",
                            c.column().header(),
                            c.fitting(),
                            0,
                            "rows in which it goes one to one with \""
                                    + best.column().header() + "\"",
                            null,
                            "it would do as " + c.field().key() + " just as well; choose the one that never changes"));
        });
    }

    private void accept(Candidate best) {
        Column column = best.column();
        Field field = best.field();
        fields.put(column, field);
        int against = column.written() - best.fitting();
        String basis = column.written() == 0
                ? "by its header; blank in the whole sample"
                : FieldKinds.FREE.contains(field)
                        ? "by its header; rows written"
                        : "by " + (best.score() < 1 ? "its texts alone" : "header and texts")
                                + "; rows whose text is one";
        Decision decision = Decision.sure(
                "columns." + column.header(), field.key(), best.fitting(), against, basis, example(column, field));
        boolean doubt = against > best.fitting() / 10 || best.score() < 2;
        decisions.put(
                column,
                doubt && column.written() > 0
                        ? decision.asking("make sure that the column is " + field.key())
                        : decision);
    }

    private String example(Column column, Field field) {
        String text = column.first(t -> FieldKinds.DATES.contains(field) || fit.takes(field, t));
        return text == null ? null : field.isPersonal() ? Texts.shape(text) : text;
    }

    private void leftOver(Column column) {
        if (column.written() == 0) {
            ignored(column, 0, "blank in the whole sample", "make sure that nothing of use will ever stand in it");
        } else if (HeaderWords.notForUs(new HeaderTokens(column.header()))) {
            ignored(column, column.written(), "by its header it serves the office; rows written", null);
        } else {
            open(
                    column,
                    column.written(),
                    "neither its header nor its " + column.counts().size() + " different texts are known",
                    "which field is it? Name one of docs/visit-log.md, or move the header to ignore");
        }
    }

    private void ignored(Column column, int rows, String basis, String question) {
        ignore.add(column.header());
        decisions.put(column, new Decision("ignore", column.header(), rows, 0, basis, null, question));
    }

    private void open(Column column, int rows, String basis, String question) {
        String text = column.first(t -> true);
        decisions.put(
                column,
                Decision.open(
                        "columns." + column.header(), rows, basis, text == null ? null : Texts.shape(text), question));
    }

    private static boolean oneToOne(Column a, Column b) {
        Map<String, String> there = new LinkedHashMap<>();
        Map<String, String> back = new LinkedHashMap<>();
        int rows = a.rowCount();
        for (int row = 0; row < rows; row++) {
            String x = a.text(row);
            String y = b.text(row);
            if (!y.equals(there.computeIfAbsent(x, k -> y)) || !x.equals(back.computeIfAbsent(y, k -> x))) {
                return false;
            }
        }
        return true;
    }
}
