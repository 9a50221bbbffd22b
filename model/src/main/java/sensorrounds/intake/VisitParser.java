package sensorrounds.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelReading;

/**
 * Turns the raw records of one file into rows that were understood and rows for quarantine. Not for two threads at once.
 *
 * <p>A flat file repeats the visit's columns on every line; the header read last is kept, so that a run of lines with the
 * same texts reads it once and shares it.
 */
public final class VisitParser {
    private static final Field[] VISIT_FIELDS = Field.OF_VISIT.toArray(Field[]::new);
    private static final Field[] WHEEL_FIELDS = Field.OF_WHEEL.toArray(Field[]::new);

    private final FieldReader in;
    private final HeaderParser headers;
    private final WheelParser wheels;
    private final IntakeCounts counts = new IntakeCounts();

    private final String[] lastTexts = new String[VISIT_FIELDS.length];
    private long lastNumbers;
    private long lastDays;
    private Header last;

    public VisitParser(Layout layout) {
        this.in = new FieldReader(layout);
        this.headers = new HeaderParser(in);
        this.wheels = new WheelParser(in, layout.ids());
    }

    /** A header that was read, or what stood in the way. */
    private record Header(
            VisitHeader visit,
            Units.Pressure pressure,
            Units.Temperature temperature,
            long notes,
            long evidence,
            FieldProblem problem) {}

    /** Notes over all rows accepted so far, and evidence over all rows. */
    public IntakeCounts counts() {
        return counts;
    }

    /** A line of a flat file: a wheel with its visit's columns, or a visit without wheels when the wheel's are blank. */
    public ParsedRow row(RawRecord row) {
        if (row.problem() != null) {
            return Rejection.of(row.problem(), row, row);
        }
        Header header = sameVisitAsBefore(row) ? last : header(row);
        last = header;
        if (header.problem() != null) {
            counts.addEvidence(header.evidence());
            return Rejection.of(header.problem(), row, row);
        }
        return hasWheel(row) ? wheel(header, row, row) : accepted(header, row, row, null);
    }

    /**
     * A nested visit. A problem in the visit's own fields sends every one of its rows to quarantine, a problem in a wheel
     * that wheel alone.
     */
    public List<ParsedRow> visit(RawRecord visit, List<? extends RawRecord> itsWheels) {
        Header header = visit.problem() != null ? failed(visit.problem(), 0) : header(visit);
        List<ParsedRow> rows = new ArrayList<>(Math.max(1, itsWheels.size()));
        if (header.problem() != null) {
            counts.addEvidence(header.evidence());
        }
        for (RawRecord wheel : itsWheels) {
            FieldProblem problem = header.problem() != null ? header.problem() : wheel.problem();
            rows.add(problem != null ? Rejection.of(problem, visit, wheel) : wheel(header, visit, wheel));
        }
        if (itsWheels.isEmpty()) {
            rows.add(
                    header.problem() != null
                            ? Rejection.of(header.problem(), visit, null)
                            : accepted(header, visit, visit, null));
        }
        return rows;
    }

    private ParsedRow wheel(Header header, RawRecord visit, RawRecord wheel) {
        in.begin(wheel);
        try {
            String raw = wheel.get(Field.POSITION);
            return accepted(
                    header,
                    visit,
                    wheel,
                    wheels.parse(raw == null ? null : raw.strip(), header.pressure(), header.temperature()));
        } catch (FieldProblem problem) {
            counts.addEvidence(header.evidence() | in.evidence());
            return Rejection.of(problem, visit, wheel);
        }
    }

    private ParsedRow accepted(Header header, RawRecord visit, RawRecord row, WheelReading wheel) {
        long later = visit.hasLaterNames() || row.hasLaterNames() ? Note.LATER_NAMES_LEFT_OUT.bit() : 0;
        counts.add(header.notes() | later | (wheel == null ? 0 : in.notes()));
        counts.addEvidence(header.evidence() | (wheel == null ? 0 : in.evidence()));
        return new ParsedRow.Accepted(new LoggedWheel(header.visit(), wheel, row.source()));
    }

    private Header header(RawRecord record) {
        in.begin(record);
        try {
            VisitHeader visit = headers.parse();
            return new Header(
                    visit, headers.pressureUnit(), headers.temperatureUnit(), in.notes(), in.evidence(), null);
        } catch (FieldProblem problem) {
            return failed(problem, in.evidence());
        }
    }

    private static Header failed(FieldProblem problem, long evidence) {
        return new Header(null, null, null, 0, evidence, problem);
    }

    private boolean sameVisitAsBefore(RawRecord row) {
        boolean same = last != null && row.numbers() == lastNumbers && row.days() == lastDays;
        lastNumbers = row.numbers();
        lastDays = row.days();
        for (int i = 0; i < VISIT_FIELDS.length; i++) {
            String text = row.get(VISIT_FIELDS[i]);
            if (same && !Objects.equals(text, lastTexts[i])) {
                same = false;
            }
            lastTexts[i] = text;
        }
        return same;
    }

    private boolean hasWheel(RawRecord row) {
        for (Field field : WHEEL_FIELDS) {
            String text = row.get(field);
            if (text != null && !text.isBlank()) {
                return true;
            }
        }
        return false;
    }
}
