package sensorrounds.ingest;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayDeque;
import sensorrounds.intake.IntakeCounts;
import sensorrounds.intake.ParsedRow;
import sensorrounds.intake.VisitParser;
import sensorrounds.visit.Source;

/** The rows of a file with one nested visit per line: one per wheel, and one for a visit without wheels. */
final class JsonRows implements RowSource {
    private final LogFile file;
    private final Reader text;
    private final TextLines lines;
    private final VisitParser parser;
    private final ArrayDeque<ParsedRow> ready = new ArrayDeque<>();

    JsonRows(LogSlice slice, Reader text) {
        this.file = slice.file();
        this.text = text;
        this.lines = new TextLines(text, file.name(), slice.linesBefore());
        this.parser = new VisitParser(file.layout());
    }

    @Override
    public ParsedRow next() throws IOException {
        while (ready.isEmpty()) {
            String line = lines.next();
            if (line == null) {
                return null;
            }
            if (!line.isBlank()) {
                JsonVisit visit = JsonVisit.read(line, new Source(file.name(), lines.line()));
                ready.addAll(parser.visit(visit.visit(), visit.wheels()));
            }
        }
        return ready.poll();
    }

    @Override
    public long line() {
        return lines.line();
    }

    @Override
    public IntakeCounts counts() {
        return parser.counts();
    }

    @Override
    public void close() throws IOException {
        text.close();
    }
}
