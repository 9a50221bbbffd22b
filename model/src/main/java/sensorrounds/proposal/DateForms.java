package sensorrounds.proposal;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The one form of dates and the one of times that a layout has room for, from the votes of all its date columns. */
final class DateForms {
    private static final String DATE = "dateFormat";
    private static final String TIME = "dateTimeFormat";

    private final Map<String, String> entries = new LinkedHashMap<>();
    private final List<Decision> decisions = new ArrayList<>();
    private final List<Column> columns = new ArrayList<>();
    private final List<DateVote> votes = new ArrayList<>();

    void add(Column column, DateVote vote) {
        columns.add(column);
        votes.add(vote);
    }

    /** Day numbers: the two systems differ by 1462 days, and nothing in a number says which it is. */
    void addSerial(Column column, int rows) {
        String first = column.first(DateVote::isSerial);
        int number = Integer.parseInt(first.substring(0, 5));
        entries.put(DATE, LayoutProposal.GAP);
        decisions.add(Decision.open(
                DATE,
                rows,
                "day numbers of a spreadsheet in \"" + column.header() + "\"",
                first,
                DateVote.SERIAL_1900 + " (" + LocalDate.of(1899, 12, 30).plusDays(number) + ") or "
                        + DateVote.SERIAL_1904 + " (" + LocalDate.of(1904, 1, 1).plusDays(number) + ")?"));
    }

    Map<String, String> entries() {
        return entries;
    }

    List<Decision> decisions() {
        return decisions;
    }

    void decide() {
        for (int i = 0; i < votes.size(); i++) {
            DateVote vote = votes.get(i);
            if (vote.pattern() == null) {
                continue;
            }
            String entry = vote.hasTime() ? TIME : DATE;
            Decision decision = decide(entry, vote, columns.get(i));
            String value = decision.isOpen() ? LayoutProposal.GAP : decision.value();
            String before = entries.putIfAbsent(entry, value);
            if (before == null || !before.equals(value)) {
                decisions.add(before == null ? decision : conflict(entry, before, value, columns.get(i)));
            }
        }
    }

    private Decision conflict(String entry, String before, String value, Column column) {
        entries.put(entry, LayoutProposal.GAP);
        return Decision.open(
                entry,
                column.written(),
                "\"" + column.header() + "\" is written as " + value + ", an earlier column as " + before,
                null,
                "a file has one form of dates: which? Write the other column anew");
    }

    private Decision decide(String entry, DateVote vote, Column column) {
        String where = "in \"" + column.header() + "\"";
        int odd = vote.of() - vote.read();
        String unread = odd == 0 ? "" : "; not read in this form: " + odd;
        if (!vote.ordered()) {
            return Decision.sure(
                    entry,
                    vote.pattern(),
                    vote.read(),
                    vote.of() - vote.read(),
                    "different texts read, " + where,
                    vote.example());
        }
        DateVote proof = vote.orderIsOpen() && vote.other() == 0 ? provenElsewhere(vote) : null;
        if (!vote.orderIsOpen() || proof != null) {
            DateVote by = proof == null ? vote : proof;
            return Decision.sure(
                    entry,
                    vote.pattern(),
                    by.proving(),
                    by.other(),
                    "different dates that only this order of day and month reads, " + where
                            + (proof == null ? "" : " and its neighbour") + "; " + vote.either() + " fit both orders"
                            + unread,
                    by.example());
        }
        long rising = falls(column, vote.pattern());
        long risingOther = falls(column, vote.exchanged());
        return Decision.open(
                entry,
                vote.either() + vote.proving() + vote.other(),
                "different dates " + where + ": " + vote.proving() + " only read as " + vote.pattern() + ", "
                        + vote.other()
                        + " only as " + vote.exchanged() + ", " + vote.either()
                        + " as both; down the file the date falls "
                        + rising + " times in the first order, " + risingOther + " times in the second",
                vote.example(),
                vote.pattern() + " or " + vote.exchanged() + "?");
    }

    /** Another column of the file that shows the order with the same separators. */
    private DateVote provenElsewhere(DateVote open) {
        String start = start(open.pattern());
        for (DateVote vote : votes) {
            if (vote != open
                    && vote.ordered()
                    && !vote.orderIsOpen()
                    && start(vote.pattern()).equals(start)) {
                return vote;
            }
            if (vote != open
                    && vote.ordered()
                    && !vote.orderIsOpen()
                    && start(vote.exchanged()).equals(start)) {
                return null;
            }
        }
        return null;
    }

    private static String start(String pattern) {
        return pattern.split("[ ']")[0].replace("dd", "d").replace("MM", "M");
    }

    /** How often the next row's date lies before this one's; technicians write day after day. */
    private static long falls(Column column, String pattern) {
        OrderedDates dates = new OrderedDates(pattern);
        long falls = 0;
        String last = null;
        for (int row = 0; row < column.rowCount(); row++) {
            String key = dates.key(column.text(row));
            if (key != null) {
                falls += last != null && key.compareTo(last) < 0 ? 1 : 0;
                last = key;
            }
        }
        return falls;
    }
}
