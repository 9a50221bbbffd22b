package sensorrounds.tables;

import java.util.Iterator;
import org.apache.spark.sql.catalyst.InternalRow;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Source;
import sensorrounds.visit.VisitHeader;

/**
 * Accepted rows, from the columns {@link LogRows#ofUnderstood} names. A line of a log holds one visit: rows in a row that
 * are of one line share its header, which is decoded once.
 */
public final class UnderstoodRows implements Iterator<LoggedWheel> {
    private final Iterator<InternalRow> rows;
    private final InnerRow cursor = new InnerRow();
    private LoggedWheel last;

    /** @param rows each may be the same object, filled anew */
    public UnderstoodRows(Iterator<InternalRow> rows) {
        this.rows = rows;
    }

    @Override
    public boolean hasNext() {
        return rows.hasNext();
    }

    @Override
    public LoggedWheel next() {
        InternalRow row = rows.next();
        cursor.on(row, LogRows.SOURCE);
        Source source = new Source(cursor.text(), cursor.count());
        String visitId = cursor.on(row, VisitColumns.VISIT_ID_AT).text();
        boolean sameVisit = last != null
                && last.source().equals(source)
                && last.visit().visitId().equals(visitId);
        VisitHeader visit = sameVisit ? last.visit() : VisitColumns.decode(cursor.on(row, 0));
        last = new LoggedWheel(
                visit, WheelColumns.decode(cursor.on(row, LogRows.WHEEL)), sameVisit ? last.source() : source);
        return last;
    }
}
