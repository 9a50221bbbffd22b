package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sensorrounds.intake.Evidence;
import sensorrounds.intake.Field;
import sensorrounds.intake.FieldTrial;

/**
 * How a column writes days or times, found by reading all its distinct texts in every form that comes into question.
 *
 * @param pattern the form; null for ISO 8601
 * @param hasTime true when the texts have a time of day
 * @param read distinct texts that the form reads
 * @param of distinct texts
 * @param proving texts that only this order of day and month reads
 * @param either texts that both orders read
 * @param other texts that only the other order reads
 * @param example a text that decides the order; any text when none does
 */
record DateVote(
        String pattern, boolean hasTime, int read, int of, long proving, long either, long other, String example) {
    private static final List<String> ORDERS =
            List.of("d-M-yyyy", "M-d-yyyy", "yyyy-M-d", "d-M-yy", "M-d-yy", "yy-M-d");
    private static final List<String> TIMES = List.of("", " HH:mm", " HH:mm:ss", " H:mm", "'T'HH:mm", "'T'HH:mm:ss");
    private static final String SEPARATORS = "./- ";
    private static final int MOST_TRIED = 2000;

    static final String SERIAL_1900 = "serial1900";
    static final String SERIAL_1904 = "serial1904";

    /** @return null when fewer than half of the texts are days or times in any form */
    static DateVote of(Column column) {
        List<String> texts = column.counts().keySet().stream().limit(MOST_TRIED).toList();
        if (texts.isEmpty() || !texts.get(0).matches(".*\\d.*")) {
            return null;
        }
        DateVote best = vote(null, texts);
        for (int s = 0; s < SEPARATORS.length() && best.read() < texts.size(); s++) {
            for (String order : ORDERS) {
                for (String time : TIMES) {
                    DateVote vote = vote(written(order, SEPARATORS.charAt(s), texts) + time, texts);
                    best = vote.betterThan(best) ? vote : best;
                }
            }
        }
        return best.read() * 2 >= texts.size() ? best : null;
    }

    /** True for the day numbers of a spreadsheet, from 1990 to 2099 in one of the two systems. */
    static boolean isSerial(String text) {
        return text.matches("\\d{5}([.,]\\d+)?")
                && Integer.parseInt(text.substring(0, 5)) >= 31_000
                && Integer.parseInt(text.substring(0, 5)) < 74_000;
    }

    /** True when day and month could be exchanged and nothing shows which is which, or texts show both. */
    boolean orderIsOpen() {
        return ordered() && either + proving + other > 0 && (proving == 0 || other > 0);
    }

    /** True for a form in which day and month can be mistaken; nobody writes year, day, month. */
    boolean ordered() {
        return pattern != null && !pattern.startsWith("y");
    }

    /** The form with day and month exchanged. */
    String exchanged() {
        StringBuilder other = new StringBuilder(pattern);
        for (int i = 0; i < other.length(); i++) {
            char c = other.charAt(i);
            other.setCharAt(i, c == 'd' ? 'M' : c == 'M' ? 'd' : c);
        }
        return other.toString();
    }

    private boolean betterThan(DateVote best) {
        int mine = read();
        return mine > best.read() || mine == best.read() && proving > best.proving() && other < best.other();
    }

    /** The order with this separator, and two letters where every text has two digits. */
    private static String written(String order, char separator, List<String> texts) {
        String pattern = order.replace('-', separator);
        boolean padded = texts.stream()
                .limit(200)
                .noneMatch(
                        t -> t.matches("(?s)\\d[./ -].*|\\d+[./ -]\\d[./ -].*|\\d{4}[./ -]\\d\\d?[./ -]\\d(\\D.*)?"));
        return padded ? pattern.replaceAll("\\bd\\b", "dd").replaceAll("\\bM\\b", "MM") : pattern;
    }

    private static DateVote vote(String pattern, List<String> texts) {
        boolean time = pattern == null ? texts.get(0).length() > 10 : pattern.indexOf('H') >= 0;
        FieldTrial trial =
                pattern == null ? Trials.canonical() : Trials.dates(time ? null : pattern, time ? pattern : null);
        int read = 0;
        String example = texts.get(0);
        long proofs = 0;
        List<String> unread = new ArrayList<>();
        for (String text : texts) {
            if (trial.takes(Field.VISITED_AT, text)) {
                read++;
            } else {
                unread.add(text);
            }
            long now = count(trial, Evidence.DATE_PROVES_ORDER);
            if (now > proofs) {
                proofs = now;
                example = proofs == 1 ? text : example;
            }
            if (read == 0 && unread.size() > 50) {
                break;
            }
        }
        return new DateVote(
                pattern,
                time,
                read,
                texts.size(),
                proofs,
                count(trial, Evidence.DATE_EITHER_ORDER),
                count(trial, Evidence.DATE_OTHER_ORDER),
                example);
    }

    private static long count(FieldTrial trial, Evidence kind) {
        Map<Evidence, Long> evidence = trial.evidence();
        return evidence.getOrDefault(kind, 0L);
    }
}
