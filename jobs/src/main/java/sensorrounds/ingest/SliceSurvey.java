package sensorrounds.ingest;

import java.io.IOException;
import java.io.InputStream;
import java.io.Serializable;
import org.apache.hadoop.conf.Configuration;

/**
 * What must be known of a stretch of a file before the file is cut there: how many lines end in it, where the first one
 * ends, and whether every line end is the end of a record.
 *
 * @param lineEnds line feeds in the stretch
 * @param firstLineEnd byte of the first one, counted from the beginning of the file; −1 without one
 * @param cuttable false when a line end may lie inside a quoted field, or a line ends in some other way
 */
record SliceSurvey(long lineEnds, long firstLineEnd, boolean cuttable) implements Serializable {
    private static final int BUFFER = 1 << 16;

    /** A stretch of a file, anywhere in it. */
    record Stretch(LogFile file, long from, long to) implements Serializable {}

    /** Reads the stretch, and for CSV on to the end of its last line. */
    static SliceSurvey of(Stretch stretch, Configuration hadoop) {
        LogFile file = stretch.file();
        boolean csv = file.format() == LogFile.Format.CSV;
        Records records = new Records((byte) file.layout().delimiter());
        long ends = 0;
        long first = -1;
        long at = stretch.from();
        // A stretch in the middle begins inside a line, of which nothing can be told; its records begin after that.
        boolean inRecords = stretch.from() == 0;
        byte[] buffer = new byte[BUFFER];
        try (InputStream in = LogStreams.open(file.uri(), stretch.from(), hadoop)) {
            for (int size = in.read(buffer); size > 0; size = in.read(buffer)) {
                for (int i = 0; i < size; i++, at++) {
                    boolean end = buffer[i] == '\n';
                    if (at < stretch.to()) {
                        ends += end ? 1 : 0;
                        first = end && first < 0 ? at : first;
                    } else if (!csv || first < 0) {
                        return new SliceSurvey(ends, first, true);
                    }
                    if (csv && inRecords && !records.take(buffer[i])) {
                        return new SliceSurvey(ends, first, false);
                    }
                    inRecords |= end;
                    if (end && at >= stretch.to()) {
                        return new SliceSurvey(ends, first, true);
                    }
                }
            }
            return new SliceSurvey(ends, first, !csv || records.atRest());
        } catch (IOException e) {
            throw LogStreams.unreadable(file, 0, e);
        }
    }

    /**
     * Follows the records of a CSV file byte by byte, as RFC 4180 has them. It needs to know only that it begins with a
     * record: when every stretch, beginning after a line end, meets no line end inside quotes, then by induction every
     * stretch did begin with a record.
     */
    private static final class Records {
        private enum State {
            FIELD_START,
            PLAIN,
            QUOTED,
            QUOTE_CLOSED,
            CARRIAGE_RETURN
        }

        private final byte delimiter;
        private State state = State.FIELD_START;

        Records(byte delimiter) {
            this.delimiter = delimiter;
        }

        /** @return false when the file cannot be cut at any line end */
        boolean take(byte b) {
            if (state == State.QUOTED) {
                state = b == '"' ? State.QUOTE_CLOSED : State.QUOTED;
                return b != '\n' && b != '\r';
            }
            if (b == '\n' || b == delimiter) {
                boolean fits = state != State.CARRIAGE_RETURN || b == '\n';
                state = State.FIELD_START;
                return fits;
            }
            switch (state) {
                case CARRIAGE_RETURN -> {
                    return false;
                }
                case QUOTE_CLOSED -> {
                    state = b == '"' ? State.QUOTED : State.CARRIAGE_RETURN;
                    return b == '"' || b == '\r';
                }
                case FIELD_START -> state = b == '"' ? State.QUOTED : b == '\r' ? State.CARRIAGE_RETURN : State.PLAIN;
                default -> state = b == '\r' ? State.CARRIAGE_RETURN : State.PLAIN;
            }
            return true;
        }

        /** True where a file may end. */
        boolean atRest() {
            return state != State.QUOTED && state != State.CARRIAGE_RETURN;
        }
    }
}
