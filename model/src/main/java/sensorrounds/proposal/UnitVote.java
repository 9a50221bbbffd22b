package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import sensorrounds.intake.Field;

/**
 * Units by the words of the headers and by where the figures lie. Ranges of gauge pressures on the road: psi 20 to 130, kPa
 * 140 to 1000, bar 1.4 to 10 (common practice, no source); psi and kPa meet near 100 to 150.
 */
final class UnitVote {
    private static final double ENOUGH = 0.9;
    /** An air or tyre temperature above this is no Celsius, save on a braking descent. */
    private static final double HOT = 60;
    /** Frost in Celsius; in Fahrenheit a cold that few fleets know. */
    private static final double FROST = 5;

    private final Map<Column, Field> fields;
    private final char mark;

    UnitVote(Map<Column, Field> fields, char decimalMark) {
        this.fields = fields;
        this.mark = decimalMark;
    }

    private record Range(String unit, double from, double to) {
        boolean holds(double value) {
            return value >= from && value <= to;
        }
    }

    private static final List<Range> PRESSURES =
            List.of(new Range("psi", 20, 130), new Range("kPa", 140, 1000), new Range("bar", 1.4, 10));

    /** Decisions for the units that the file needs and has no column for. */
    List<Decision> decisions() {
        List<Decision> decisions = new ArrayList<>();
        add(decisions, Field.PRESSURE_UNIT, FieldKinds.PRESSURES);
        add(decisions, Field.ODOMETER_UNIT, FieldKinds.DISTANCES);
        add(decisions, Field.TEMPERATURE_UNIT, FieldKinds.TEMPERATURES);
        return decisions;
    }

    private void add(List<Decision> decisions, Field unit, Set<Field> of) {
        List<Column> columns = fields.entrySet().stream()
                .filter(e -> of.contains(e.getValue()))
                .map(Map.Entry::getKey)
                .toList();
        if (columns.isEmpty() || fields.containsValue(unit)) {
            return;
        }
        Set<String> named = new TreeSet<>();
        columns.forEach(c -> {
            String word = new HeaderTokens(c.header()).unit();
            if (word != null) {
                named.add(word);
            }
        });
        String entry = "constants." + unit.key();
        String example = columns.get(0).first(t -> true);
        if (named.size() > 1) {
            decisions.add(Decision.open(
                    entry,
                    columns.size(),
                    "columns of one kind whose headers name " + String.join(" and ", named),
                    example,
                    "a visit has one unit for all: which? Otherwise write the other columns anew in it"));
            return;
        }
        String header = named.isEmpty() ? null : named.iterator().next();
        decisions.add(
                switch (unit) {
                    case PRESSURE_UNIT -> pressure(entry, header, figures(columns), example);
                    case TEMPERATURE_UNIT -> temperature(entry, header, figures(columns), example);
                    default -> distance(entry, header, figures(columns).size(), example);
                });
    }

    private static Decision pressure(String entry, String header, List<Double> figures, String example) {
        if ("kg/cm²".equals(header)) {
            return Decision.open(
                    entry,
                    figures.size(),
                    "headers name kg/cm², which is not read",
                    example,
                    "may the figures be read as bar, 2 % too high? Otherwise write them anew in bar");
        }
        StringBuilder counts = new StringBuilder("figures in the range of ");
        Range most = null;
        long highest = 0;
        long second = 0;
        for (Range range : PRESSURES) {
            long inside = figures.stream().filter(range::holds).count();
            counts.append(counts.length() > 24 ? ", " : "")
                    .append(range.unit())
                    .append(": ")
                    .append(inside);
            if (inside > highest) {
                second = highest;
                highest = inside;
                most = range;
            } else {
                second = Math.max(second, inside);
            }
        }
        String basis = counts + ", of " + figures.size();
        if (header != null) {
            Range range = PRESSURES.stream()
                    .filter(r -> r.unit().equals(header))
                    .findFirst()
                    .orElse(null);
            long inside =
                    range == null ? 0 : figures.stream().filter(range::holds).count();
            if (figures.isEmpty() || inside >= 0.8 * figures.size()) {
                return Decision.sure(
                        entry, header, inside, figures.size() - inside, "named by the headers; " + basis, example);
            }
            return Decision.open(
                    entry, figures.size(), "the headers name " + header + "; " + basis, example, "which unit is it?");
        }
        if (most == null || highest < ENOUGH * figures.size() || second > highest / 4) {
            return Decision.open(entry, figures.size(), basis, example, "psi, kPa or bar?");
        }
        Decision decision = Decision.sure(
                entry, most.unit(), highest, figures.size() - highest, "no header names it; " + basis, example);
        return most.unit().equals("bar")
                ? decision.asking("kg/cm² looks the same (2 % less): make sure of bar")
                : decision;
    }

    private static Decision temperature(String entry, String header, List<Double> figures, String example) {
        long hot = figures.stream().filter(v -> v > HOT).count();
        long frost = figures.stream().filter(v -> v < FROST).count();
        String basis = "figures above 60: " + hot + ", below 5: " + frost + ", of " + figures.size();
        boolean likeF = hot * 20 >= figures.size() && frost * 20 < figures.size();
        boolean likeC = frost * 20 >= figures.size() && hot * 50 < figures.size();
        if (header != null) {
            boolean against = header.equals("F") ? likeC : likeF;
            return against
                    ? Decision.open(
                            entry, figures.size(), "the headers name " + header + "; " + basis, example, "C or F?")
                    : Decision.sure(
                            entry,
                            header,
                            figures.size() - (header.equals("C") ? hot : 0),
                            header.equals("C") ? hot : 0,
                            "named by the headers; " + basis,
                            example);
        }
        return likeF == likeC
                ? Decision.open(entry, figures.size(), "no header names it; " + basis, example, "C or F?")
                : Decision.sure(
                                entry,
                                likeF ? "F" : "C",
                                likeF ? hot : frost,
                                likeF ? frost : hot,
                                "no header names it; " + basis,
                                example)
                        .asking("make sure of it: the figures speak, no header does");
    }

    private static Decision distance(String entry, String header, int figures, String example) {
        return header == null
                ? Decision.open(
                        entry, figures, "no header names the unit, and figures cannot tell", example, "km or mi?")
                : Decision.sure(entry, header, figures, 0, "named by the headers; figures", example);
    }

    /** Figures by row, zeros left out: a flat tyre is in no range. */
    private List<Double> figures(List<Column> columns) {
        List<Double> figures = new ArrayList<>();
        for (Column column : columns) {
            column.counts().forEach((text, rows) -> {
                double value = Figures.read(text, mark);
                for (int i = 0; i < rows && !Double.isNaN(value) && value != 0; i++) {
                    figures.add(value);
                }
            });
        }
        return figures;
    }
}
