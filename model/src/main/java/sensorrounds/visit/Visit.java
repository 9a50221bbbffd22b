package sensorrounds.visit;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** A whole visit: its header and its wheels, one row per place, ordered by position. */
public record Visit(VisitHeader header, List<LoggedWheel> rows) implements Serializable {
    public Visit {
        rows = List.copyOf(rows);
    }

    /** The wheels looked at; empty for a visit without any. */
    public List<WheelReading> wheels() {
        List<WheelReading> wheels = new ArrayList<>(rows.size());
        for (LoggedWheel row : rows) {
            if (row.wheel() != null) {
                wheels.add(row.wheel());
            }
        }
        return Collections.unmodifiableList(wheels);
    }

    public LocalDate day() {
        return header.day();
    }
}
