package sensorrounds.simulate;

import java.util.List;

/** Who goes out and with what. */
public record Crew(List<Depot> depots, List<Technician> technicians, List<Reader> readers) {
    /** How a technician's visits are exported. */
    public enum Export {
        /** Canonical JSON lines. */
        JSON_LINES,
        /** Canonical CSV. */
        CANONICAL_CSV,
        /** Comma CSV in trade words, psi, miles, °F. */
        TRADE_CSV,
        /** Semicolon CSV with decimal comma, bar, windows-1252. */
        DECIMAL_COMMA_CSV
    }

    /** Form in which a reader shows the state of a battery. */
    public enum BatteryForm {
        FLAG,
        PERCENT,
        VOLTS
    }

    /**
     * A place vehicles belong to.
     *
     * @param drivingSide left or right
     * @param celsiusOffset warmer or colder than the region, °C
     */
    public record Depot(String name, String drivingSide, double celsiusOffset) {}

    /**
     * Somebody who makes visits.
     *
     * @param depots numbers of the depots served, the main one first
     */
    public record Technician(String id, List<Integer> depots, Export export) {
        public Technician {
            depots = List.copyOf(depots);
        }
    }

    /**
     * A hand-tool that wakes sensors.
     *
     * @param technicianId who carries it
     * @param share share of that technician's visits made with it
     * @param ease chance that a sound sensor at an easy place wakes at a try
     * @param patience tries before giving up
     */
    public record Reader(
            String id, String technicianId, double share, double ease, int patience, BatteryForm batteryForm) {}

    /** A technician with the reader taken along. */
    record Pair(Technician technician, Reader reader) {}

    public Crew {
        depots = List.copyOf(depots);
        technicians = List.copyOf(technicians);
        readers = List.copyOf(readers);
        for (Technician t : technicians) {
            if (readers.stream().noneMatch(r -> r.technicianId().equals(t.id()))) {
                throw new IllegalArgumentException("technician " + t.id() + " has no reader: give one at least");
            }
        }
        for (int d = 0; d < depots.size(); d++) {
            int depot = d;
            if (technicians.stream().noneMatch(t -> t.depots().contains(depot))) {
                throw new IllegalArgumentException(
                        "depot " + depots.get(d).name() + " has no technician: give one at least");
            }
        }
    }

    /** Somebody for this depot: those whose main depot it is come four times as often as those who help out. */
    Pair pick(int depot, Dice dice) {
        double all = 0;
        for (Technician t : technicians) {
            all += willingness(t, depot);
        }
        double at = dice.uniform() * all;
        for (Technician t : technicians) {
            at -= willingness(t, depot);
            if (at < 0) {
                return new Pair(t, readerOf(t, dice.uniform()));
            }
        }
        throw new IllegalStateException("no technician picked for depot " + depot);
    }

    Pair pair(String readerId) {
        Reader reader = readers.stream()
                .filter(r -> r.id().equals(readerId))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no reader " + readerId + " in this crew"));
        Technician technician = technicians.stream()
                .filter(t -> t.id().equals(reader.technicianId()))
                .findFirst()
                .orElseThrow();
        return new Pair(technician, reader);
    }

    private static double willingness(Technician t, int depot) {
        int at = t.depots().indexOf(depot);
        return at < 0 ? 0 : at == 0 ? 4 : 1;
    }

    private Reader readerOf(Technician t, double at) {
        double left = at;
        Reader last = null;
        for (Reader r : readers) {
            if (r.technicianId().equals(t.id())) {
                last = r;
                left -= r.share();
                if (left < 0) {
                    return r;
                }
            }
        }
        return last;
    }
}
